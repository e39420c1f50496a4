import { ICalCalendar } from "ical-generator";
import { type Day, type DaySpan, earlier, later } from "../dates.js";
import { type Published, type RecordLine, recordLines } from "../published/index.js";
import { byText } from "../values.js";
import { type CalendarMeta, gardenUid } from "./calendar-event.js";
import { foldedLines, textValue } from "./content-line.js";
import { type Stamp, stampText } from "./stamp.js";
import type { WrittenEvent } from "./vevent.js";
import { vtimezoneLines } from "./vtimezone.js";

/** PRODID of our files. */
export const productId = "-//Feedround//Feedround//EN";

/** The last revision of an event that is no longer in the file, so that its UID never falls back. */
export interface RetiredUid {
  readonly uid: string;
  readonly sequence: number;
  readonly created: Stamp;
  readonly modified: Stamp;
  /** The day it last stood on. */
  readonly day: Day;
}

const about =
  "Calcium feedings planned by Feedround. Feeding is no cure where watering is uneven or the soil holds enough calcium. Local rules, your certifier and a soil test come first.";

/**
 * The whole file in pieces, to be joined or written one after the other: header, the published state,
 * time zones in use, events by day. Every line ends in CRLF. Throws RangeError when two events share a
 * UID.
 */
export function calendarFile(
  meta: CalendarMeta,
  events: readonly WrittenEvent[],
  retired: readonly RetiredUid[] = [],
  published?: Published,
): Iterable<string> {
  refuseSharedUids(events);
  const inOrder = [...events].sort(
    (a, b) => byText(a.day, b.day) || byText(a.key, b.key) || byText(a.uid, b.uid),
  );
  const head = [
    header(meta, [...events, ...retired]),
    foldedLines(retired.map(retiredLine)),
    foldedLines(published === undefined ? [] : recordLines(published).map(recordLine)),
    foldedLines(timezoneLines(events)),
  ];
  return pieces(head, inOrder);
}

/**
 * Our choice: some hundred kilobytes, since each write takes its time. With four times as many the
 * texts of a piece outlive the young generation of the heap, and a large file fills the memory.
 */
const eventsOfPiece = 50;

function* pieces(head: readonly string[], events: readonly WrittenEvent[]): Generator<string> {
  yield head.join("");
  for (let i = 0; i < events.length; i += eventsOfPiece)
    yield events
      .slice(i, i + eventsOfPiece)
      .map(({ text }) => text)
      .join("");
  yield "END:VCALENDAR\r\n";
}

/** Properties only: ical-generator would print its X- properties after the events (RFC 5545 section 3.7 wants them before). */
function header(meta: CalendarMeta, revised: readonly { readonly modified: Stamp }[]): string {
  const calendar = new ICalCalendar({
    // It prints a hyphen before the text.
    prodId: productId.slice(1),
    // It prints these two raw.
    name: textValue(meta.name),
    description: textValue(about),
    ttl: Math.max(1, Math.round(meta.refreshHours * 3600)),
  });
  const lastModified = revised
    .map(({ modified }) => modified)
    .sort()
    .at(-1);
  return (
    calendar.toString().replace(/END:VCALENDAR$/, "") +
    foldedLines([
      `UID:${gardenUid(meta.gardenId)}`,
      `DESCRIPTION:${textValue(about)}`,
      ...(lastModified === undefined ? [] : [`LAST-MODIFIED:${stampText(lastModified)}`]),
      `COLOR:${textValue(meta.color)}`,
      `X-FEEDROUND-GARDEN:${textValue(meta.gardenId)}`,
    ])
  );
}

/** Names of the lines of the published state: in the head, so that no event changes with them. */
export const recordNames: Readonly<Record<RecordLine["kind"], string>> = {
  round: "X-FEEDROUND-ROUND",
  feed: "X-FEEDROUND-FEED",
  batch: "X-FEEDROUND-BATCH",
  shells: "X-FEEDROUND-SHELLS",
};

function recordLine({ kind, text }: RecordLine): string {
  return `${recordNames[kind]}:${textValue(text)}`;
}

function retiredLine({ uid, sequence, created, modified, day }: RetiredUid): string {
  return `X-FEEDROUND-RETIRED:${uid} ${sequence} ${stampText(created)} ${stampText(modified)} ${day}`;
}

function timezoneLines(events: readonly WrittenEvent[]): string[] {
  const spans = new Map<string, DaySpan>();
  for (const { timezone, day } of events) {
    if (timezone === undefined) continue;
    const { from, to } = spans.get(timezone) ?? { from: day, to: day };
    spans.set(timezone, { from: earlier(from, day), to: later(to, day) });
  }
  return [...spans]
    .sort(([a], [b]) => byText(a, b))
    .flatMap(([timezone, span]) => vtimezoneLines(timezone, span));
}

function refuseSharedUids(events: readonly WrittenEvent[]): void {
  const seen = new Set<string>();
  for (const { uid, key } of events) {
    if (seen.has(uid)) throw new RangeError(`two events have the UID ${uid}, one of them ${key}`);
    seen.add(uid);
  }
}
