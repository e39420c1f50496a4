import { FixedOffsetZone, IANAZone } from "luxon";
import { type Day, dayNumber, type DaySpan, yearOf } from "../dates.js";
import { remembering } from "../values.js";
import { newYear, type OffsetChange, offsetChanges } from "./zone-time.js";

/**
 * A VTIMEZONE component (RFC 5545 section 3.6.5), unfolded lines, right for the years of a span: each
 * change of offset stands as an observance of its own, so no rule has to be guessed. TZNAME is left
 * out: it is optional, and its text depends on the language data of the machine.
 */
export function vtimezoneLines(timezone: string, span: DaySpan): string[] {
  const firstYear = yearOf(span.from);
  const lastYear = yearOf(span.to);
  // From the year before, so that an observance has begun when the first event does.
  const from = newYear(firstYear - 1);
  const changes = offsetChanges(timezone, from, newYear(lastYear + 1));
  const firstMin = IANAZone.create(timezone).offset(dayNumber(from) * 86_400_000);
  const standardMin = Math.min(firstMin, ...changes.map(({ toMin }) => toMin));
  return [
    "BEGIN:VTIMEZONE",
    `TZID:${timezone}`,
    ...(begunBefore(changes, span.from)
      ? []
      : onset("STANDARD", "19700101T000000", firstMin, firstMin)),
    ...changes.flatMap((change) => observance(change, standardMin)),
    "END:VTIMEZONE",
  ];
}

function begunBefore(changes: readonly OffsetChange[], first: Day): boolean {
  // A day of room: the first event may begin up to 14 hours before its day does in UTC.
  return changes.some(({ atMs }) => atMs < (dayNumber(first) - 1) * 86_400_000);
}

function observance({ atMs, fromMin, toMin }: OffsetChange, standardMin: number): string[] {
  const local = new Date(atMs + fromMin * 60_000).toISOString().slice(0, 19).replace(/[-:]/g, "");
  return onset(toMin > standardMin ? "DAYLIGHT" : "STANDARD", local, fromMin, toMin);
}

function onset(kind: string, local: string, fromMin: number, toMin: number): string[] {
  return [
    `BEGIN:${kind}`,
    `DTSTART:${local}`,
    `TZOFFSETFROM:${offsetText(fromMin)}`,
    `TZOFFSETTO:${offsetText(toMin)}`,
    `END:${kind}`,
  ];
}

/** UTC-OFFSET, RFC 5545 section 3.3.14: `+0530`; `-0000` is not allowed. */
const offsetText = remembering(100, String, (minutes: number) =>
  FixedOffsetZone.instance(minutes).formatOffset(0, "techie"),
);
