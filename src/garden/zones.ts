import { IANAZone } from "luxon";
import { nearest } from "../suggest.js";

/** The IANA name in its right spelling, or undefined when there is no such zone. */
export function knownZone(name: string): string | undefined {
  const canonical = Intl.supportedValuesOf("timeZone").find(
    (zone) => zone.toLowerCase() === name.toLowerCase(),
  );
  if (canonical !== undefined) return canonical;
  // Older names such as Asia/Calcutta, and UTC, are valid without being listed.
  return /^[A-Z]/.test(name) && IANAZone.isValidZone(name) ? name : undefined;
}

/** The zone a misspelt name most likely means; a city alone is enough. */
export function suggestZone(name: string): string | undefined {
  const zones = Intl.supportedValuesOf("timeZone");
  const city = name.split("/").at(-1)?.replaceAll(" ", "_").toLowerCase();
  return (
    zones.find((zone) => zone.split("/").at(-1)?.toLowerCase() === city) ?? nearest(name, zones)
  );
}
