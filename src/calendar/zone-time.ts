import { IANAZone } from "luxon";
import { type Day, dayFromNumber, dayNumber } from "../dates.js";
import { remembering } from "../values.js";

const msPerMin = 60_000;
const msPerDay = 86_400_000;

/** One change of a zone's offset from UTC. */
export interface OffsetChange {
  /** The moment it happens, ms since 1970-01-01T00:00Z. */
  readonly atMs: number;
  readonly fromMin: number;
  readonly toMin: number;
}

/**
 * The moment, ms since 1970-01-01T00:00Z, at which clocks in a zone show a time. A time that a clock
 * change repeats is its first occurrence, one that it leaves out is read with the offset before the
 * gap (RFC 5545 section 3.3.5). `DateTime.fromObject` of luxon looks at the present offset for the
 * first case, so it is not used.
 */
export function momentOf(day: Day, timeOfDay: string, timezone: string): number {
  const zone = IANAZone.create(timezone);
  const [hour = 0, minute = 0] = timeOfDay.split(":").map(Number);
  const wallMs = dayNumber(day) * msPerDay + (hour * 60 + minute) * msPerMin;
  const before = zone.offset(wallMs - msPerDay) * msPerMin;
  const after = zone.offset(wallMs + msPerDay) * msPerMin;
  if (before === after) return wallMs - before;
  const moments = [before, after].map((offset) => wallMs - offset).sort((a, b) => a - b);
  const shows = (ms: number) => ms + zone.offset(ms) * msPerMin === wallMs;
  return moments.find(shows) ?? wallMs - before;
}

/** Whether a change of the clocks in a zone lets them show the time of a moment (ms since 1970-01-01T00:00Z) twice. */
export function isShownTwice(ms: number, timezone: string): boolean {
  // With a day of room before New Year; the span of a VTIMEZONE, whose changes are remembered.
  const year = new Date(ms + msPerDay).getUTCFullYear();
  const changes = offsetChanges(timezone, newYear(year - 1), newYear(year + 1));
  return changes.some(({ atMs, fromMin, toMin }) => {
    const repeatedMs = (fromMin - toMin) * msPerMin;
    return ms >= atMs - repeatedMs && ms < atMs + repeatedMs;
  });
}

/** Also of a year in which no garden lies. */
export function newYear(year: number): Day {
  return dayFromNumber(Date.UTC(year, 0, 1) / msPerDay);
}

/** When a day begins in a zone: ISO 8601, UTC. */
export function midnightIn(day: Day, timezone: string): string {
  return new Date(momentOf(day, "00:00", timezone)).toISOString();
}

/** Changes of offset after the start of one UTC day and up to the start of another, in order. */
export const offsetChanges = remembering(
  1000,
  (timezone: string, from: Day, to: Day) => `${timezone} ${from} ${to}`,
  changesBetween,
);

function changesBetween(timezone: string, from: Day, to: Day): readonly OffsetChange[] {
  const zone = IANAZone.create(timezone);
  const changes: OffsetChange[] = [];
  let fromMin = zone.offset(dayNumber(from) * msPerDay);
  for (let n = dayNumber(from) + 1; n <= dayNumber(to); n++) {
    const toMin = zone.offset(n * msPerDay);
    if (toMin === fromMin) continue;
    changes.push({
      atMs: firstWith(zone, toMin, (n - 1) * msPerDay, n * msPerDay),
      fromMin,
      toMin,
    });
    fromMin = toMin;
  }
  return changes;
}

/** The first second in (lowMs, highMs] with that offset, which holds at highMs and not at lowMs. */
function firstWith(zone: IANAZone, offset: number, lowMs: number, highMs: number): number {
  let [low, high] = [lowMs / 1000, highMs / 1000];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (zone.offset(middle * 1000) === offset) high = middle;
    else low = middle;
  }
  return high * 1000;
}
