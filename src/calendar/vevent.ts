import { addDays, type Day } from "../dates.js";
import { given } from "../values.js";
import { cancelledTitle, notGivenTitle } from "../words/index.js";
import type { CalendarEvent, EventTime } from "./calendar-event.js";
import {
  cleanText,
  foldedLines,
  nameOfLine,
  ownLines,
  textOfValue,
  textValue,
  unfoldedLines,
  valueIn,
  valueOfLine,
} from "./content-line.js";
import { type Stamp, stampText } from "./stamp.js";
import { isShownTwice, momentOf } from "./zone-time.js";
import {
  ICalAlarmType,
  ICalCalendar,
  ICalEvent,
  ICalEventBusyStatus,
  type ICalEventData,
  ICalEventTransparency,
} from "ical-generator";
import { DateTime } from "luxon";

/** Where an event stands in its history (RFC 5545 section 3.8.7). */
export interface Revision {
  readonly uid: string;
  readonly sequence: number;
  readonly created: Stamp;
  /** LAST-MODIFIED, and DTSTAMP too: section 3.8.7.2 for files without METHOD. */
  readonly modified: Stamp;
}

/** A VEVENT as it stands in a file. */
export interface WrittenEvent extends Revision {
  readonly key: string;
  readonly day: Day;
  readonly cancelled: boolean;
  /** TZID of its start; absent for all-day and UTC. */
  readonly timezone?: string;
  /** Its exact text, BEGIN to END with the last CRLF. */
  readonly text: string;
}

/** ical-generator prints an event only in a calendar; it must have no time zone, or stamps lose their Z. */
const noCalendar = new ICalCalendar();

export function writeEvent(event: CalendarEvent, revision: Revision): WrittenEvent {
  const times = event.time && timesOf(event.day, event.time);
  const timezone = times?.zone === "UTC" ? undefined : times?.zone;
  const { uid, sequence, created, modified } = revision;
  return {
    uid,
    sequence,
    created,
    modified,
    key: event.key,
    day: event.day,
    cancelled: false,
    ...given({ timezone }),
    // Made when it is asked for: texts of a very large calendar would fill the memory side by side.
    get text() {
      return foldedLines(veventLines(event, times ? timed(times) : allDay(event.day), revision));
    },
  };
}

function veventLines(event: CalendarEvent, times: ICalEventData, revision: Revision): string[] {
  const vevent = new ICalEvent(
    {
      id: revision.uid,
      sequence: revision.sequence,
      stamp: revision.modified,
      created: revision.created,
      lastModified: revision.modified,
      ...times,
      summary: cleanText(event.summary),
      description: cleanText(event.description.join("\n")),
      categories: event.categories.map((name) => ({ name: cleanText(name) })),
      transparency: ICalEventTransparency.TRANSPARENT,
      busystatus: ICalEventBusyStatus.FREE,
      x: [
        ["X-FEEDROUND-KEY", event.key],
        ...(event.logId === undefined ? [] : [[logName, event.logId] as [string, string]]),
      ],
    },
    noCalendar,
  );
  for (const minutes of event.remindersMinBefore) {
    // `relatesTo` is ignored in the data object, and without it a trigger after the start counts from the end.
    vevent
      .createAlarm({ type: ICalAlarmType.display, trigger: Math.round(minutes * 60) })
      .relatesTo("START");
  }
  return repaired(vevent.toString(), event.color);
}

function allDay(day: Day): ICalEventData {
  // Midnight UTC, which no zone of the machine or the garden is asked to shift.
  const midnight = (d: Day) => `${d}T00:00:00Z`;
  return { allDay: true, start: midnight(day), end: midnight(addDays(day, 1)) };
}

/**
 * RFC 5545 section 3.3.5 reads a local time that comes twice as the first of the two, but programs
 * differ: some take the second, and refuse the file where it is later than the end. So what begins or
 * ends on such a time is written in UTC.
 */
function timesOf(day: Day, { timeOfDay, timezone, durationMin }: EventTime) {
  const startMs = momentOf(day, timeOfDay, timezone);
  // RFC 5545 section 3.8.2.2: the end is later than the start.
  const endMs = startMs + Math.max(1, durationMin) * 60_000;
  const zone = [startMs, endMs].some((ms) => isShownTwice(ms, timezone)) ? "UTC" : timezone;
  return { zone, startMs, endMs };
}

function timed({ zone, startMs, endMs }: ReturnType<typeof timesOf>): ICalEventData {
  const [start, end] = [startMs, endMs].map((ms) => DateTime.fromMillis(ms, { zone }));
  return { timezone: zone, start, end } as ICalEventData;
}

/** Adds COLOR (RFC 7986 section 5.9), and puts the alarms after all properties (RFC 5545 section 3.6.1). */
function repaired(text: string, color: string): string[] {
  const lines = text.split("\r\n").slice(1, -2);
  const firstAlarm = lines.indexOf("BEGIN:VALARM");
  const lastAlarm = lines.lastIndexOf("END:VALARM");
  const alarms = firstAlarm === -1 ? [] : lines.splice(firstAlarm, lastAlarm + 1 - firstAlarm);
  return ["BEGIN:VEVENT", ...lines, `COLOR:${cleanText(color)}`, ...alarms, "END:VEVENT"];
}

/** The text of an event with all lines of its history, some of which another program has left out. */
export function wholeEvent(lines: readonly string[], revision: Revision): string {
  const there = new Set(ownLines(lines).map(nameOfLine));
  const lacking = historyNames.filter((name) => !there.has(name));
  const whole = lines.flatMap((line, i) =>
    i === 0 ? [line, ...lacking.map((name) => `${name}:`)] : [line],
  );
  return foldedLines(whole.map((line) => revisedLine(line, revision)));
}

const historyNames = ["SEQUENCE", "DTSTAMP", "CREATED", "LAST-MODIFIED"];

/** The same event at a later point of its history. */
export function restampEvent(was: WrittenEvent, revision: Revision): WrittenEvent {
  const lines = unfoldedLines(was.text).map((line) => revisedLine(line, revision));
  return { ...was, ...revision, text: foldedLines(lines) };
}

/** The same event called off (RFC 5545 section 3.8.1.11): no reminder, and its summary says so for clients that do not show STATUS. */
export function cancelEvent(was: WrittenEvent, revision: Revision): WrittenEvent {
  const cancelled = withSummary(was, (summary) => [
    `SUMMARY:${textValue(cancelledTitle(textOfValue(summary)))}`,
    "STATUS:CANCELLED",
  ]);
  return restampEvent({ ...was, cancelled: true, text: cancelled }, revision);
}

/** What a summary begins with where the log tells that it was done, or was not. */
const logged = /^(?:Given|Not given):? /;

/** In an entry that was written from what the log told. */
const logName = "X-FEEDROUND-LOG";

/** Whether it was written from what the log told. */
export function isLogged(was: WrittenEvent): boolean {
  return (
    logIdIn(was) !== undefined || logged.test(valueIn(unfoldedLines(was.text), "SUMMARY") ?? "")
  );
}

export function logIdIn({ text }: WrittenEvent): string | undefined {
  return valueIn(unfoldedLines(text), logName);
}

/** The same event, past, of which the log says that it was not done: it stands, and its summary says so. */
export function missEvent(was: WrittenEvent, revision: Revision): WrittenEvent {
  const missed = withSummary(was, (summary) => [
    `SUMMARY:${textValue(notGivenTitle(textOfValue(summary)))}`,
  ]);
  return restampEvent({ ...was, text: missed }, revision);
}

/** An event's text without its reminders, and with other lines for its summary, whether it had one or not. */
function withSummary(
  { text }: WrittenEvent,
  linesFor: (summary: string) => readonly string[],
): string {
  const own = ownLines(unfoldedLines(text));
  const at = own.findIndex((line) => nameOfLine(line) === "SUMMARY");
  const lines =
    at === -1
      ? [...own, ...linesFor("")]
      : own.flatMap((line, i) => (i === at ? linesFor(valueOfLine(line)) : [line]));
  return foldedLines([...lines, "END:VEVENT"]);
}

function revisedLine(line: string, { sequence, created, modified }: Revision): string {
  switch (nameOfLine(line)) {
    case "SEQUENCE":
      return `SEQUENCE:${sequence}`;
    case "CREATED":
      return `CREATED:${stampText(created)}`;
    case "DTSTAMP":
    case "LAST-MODIFIED":
      return `${nameOfLine(line)}:${stampText(modified)}`;
    default:
      return line;
  }
}
