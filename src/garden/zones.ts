import { DateTime, IANAZone } from "luxon";
import { day, type Day } from "../dates.js";
import { nearest } from "../suggest.js";

let zonesByName: ReadonlyMap<string, string> | undefined;

/** The IANA name in its right spelling, or undefined when there is no such zone. */
export function knownZone(name: string): string | undefined {
  if (/^[A-Z]/.test(name) && isCanonical(name)) return name;
  zonesByName ??= new Map(
    Intl.supportedValuesOf("timeZone").map((zone) => [zone.toLowerCase(), zone]),
  );
  const canonical = zonesByName.get(name.toLowerCase());
  if (canonical !== undefined) return canonical;
  // Older names such as Asia/Calcutta, and UTC, are valid without being listed.
  return /^[A-Z]/.test(name) && IANAZone.isValidZone(name) ? name : undefined;
}

/** Without asking for the whole list, which takes time. */
function isCanonical(name: string): boolean {
  if (!IANAZone.isValidZone(name)) return false;
  return new Intl.DateTimeFormat("en", { timeZone: name }).resolvedOptions().timeZone === name;
}

/** The zone a misspelt name most likely means; a city alone is enough. */
export function suggestZone(name: string): string | undefined {
  const zones = Intl.supportedValuesOf("timeZone");
  const city = name.split("/").at(-1)?.replaceAll(" ", "_").toLowerCase();
  return (
    zones.find((zone) => zone.split("/").at(-1)?.toLowerCase() === city) ?? nearest(name, zones)
  );
}

/** The calendar day in a zone at a moment, ms since 1970. */
export function todayAt(nowMs: number, timezone: string): Day {
  return day(DateTime.fromMillis(nowMs, { zone: timezone }).toFormat("yyyy-MM-dd"));
}
