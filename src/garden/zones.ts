import { day, type Day } from "../dates.js";
import { nearest } from "../suggest.js";
import { remembering } from "../values.js";

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
  return /^[A-Z]/.test(name) && zoneAsCalled(name) !== undefined ? name : undefined;
}

/** Without asking for the whole list, which takes time. */
function isCanonical(name: string): boolean {
  return zoneAsCalled(name) === name;
}

/** What the engine calls a zone; none where it knows no such zone. */
function zoneAsCalled(name: string): string | undefined {
  try {
    return new Intl.DateTimeFormat("en", { timeZone: name }).resolvedOptions().timeZone;
  } catch {
    return undefined;
  }
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
  const parts = dayFormat(timezone).formatToParts(nowMs);
  const part = (type: string): string => parts.find((one) => one.type === type)?.value ?? "";
  return day(`${part("year")}-${part("month")}-${part("day")}`);
}

const dayFormat = remembering(
  100,
  (timeZone: string) => timeZone,
  (timeZone) =>
    new Intl.DateTimeFormat("en", { timeZone, year: "numeric", month: "2-digit", day: "2-digit" }),
);

/** Minutes east of UTC that a zone's clocks are at a moment, ms since 1970. */
export function offsetMinAt(ms: number, timezone: string): number {
  const format = new Intl.DateTimeFormat("en", { timeZone: timezone, timeZoneName: "longOffset" });
  const told = format.formatToParts(ms).find(({ type }) => type === "timeZoneName")?.value ?? "";
  const [, sign, hours = 0, minutes = 0] = /([+-])(\d+):(\d+)/.exec(told) ?? [];
  return (sign === "-" ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
}
