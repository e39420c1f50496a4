import { type Day, earlier, parseDay } from "../dates.js";
import { knownZone } from "../garden/index.js";
import { mended, quoted } from "../legible.js";
import type { Problem, Result } from "../problem.js";
import {
  nothingPublished,
  type Published,
  readRecord,
  type RecordLine,
} from "../published/index.js";
import { byText, given } from "../values.js";
import { productId, recordNames, type RetiredUid } from "./calendar-file.js";
import {
  nameOfLine,
  ownLines,
  textOfValue,
  textValue,
  valueIn,
  valueOfLine,
} from "./content-line.js";
import { dayOfStamp, parseStamp } from "./stamp.js";
import { type ContentLine, physicalLines, unfold } from "./read-lines.js";
import { wholeEvent, type WrittenEvent } from "./vevent.js";

/** What is wrong with an earlier calendar file; the caller knows the file's name. */
export type CalendarProblem = Omit<Problem, "file">;

/** A file we wrote before, with each event's exact text. */
export interface EarlierCalendar {
  readonly gardenId: string;
  readonly events: readonly WrittenEvent[];
  readonly retired: readonly RetiredUid[];
  /** What it tells the next plan; absent in a file of an earlier version and in a copy. */
  readonly published?: Published;
}

const writersMend =
  "write the calendar under another name, or move this file away if you no longer need it";

/** For those who only read the file. */
export const readersMend = "name a calendar that `feedround calendar --out` wrote";

/**
 * Reads a file that {@link calendarFile} wrote: a file of another program, of another garden, or one
 * that is cut off or edited out of shape is refused with the reason. What editors, syncing and other
 * programs do to its form alone is taken: line ends, blank lines, small letters, a missing SEQUENCE
 * or time of writing, an event twice. Such an event has the text that we would give it.
 *
 * Without `gardenId` any garden will do, for those who only read. Problem codes: `not-a-calendar`, `not-ours`, `other-garden`, `damaged`.
 */
export function readEarlierCalendar(
  text: string,
  gardenId?: string,
): Result<EarlierCalendar, CalendarProblem> {
  try {
    return { ok: true, value: read(text, gardenId) };
  } catch (error) {
    if (error instanceof Refused) {
      const mend = error.mend ?? (gardenId === undefined ? readersMend : writersMend);
      return { ok: false, problems: [{ ...error.problem, mend }] };
    }
    throw error;
  }
}

/** The rounds of a file without a record, known by their days alone: first told when they were written. */
export function daysTold({ events }: Pick<EarlierCalendar, "events">): Published {
  const first = new Map<Day, Day>();
  for (const { key, cancelled, day, created } of events)
    if (!cancelled && key.startsWith("feeding/"))
      first.set(day, earlier(first.get(day) ?? dayOfStamp(created), dayOfStamp(created)));
  const rounds = [...first].sort(([a], [b]) => byText(a, b));
  return {
    ...nothingPublished,
    rounds: rounds.map(([day, told]) => ({ day, first: told, mixes: [] })),
  };
}

/** Never leaves this file. */
class Refused extends Error {
  readonly problem: Omit<CalendarProblem, "mend">;
  readonly mend: string | undefined;
  constructor(code: string, line: number, message: string, mend?: string) {
    super(message);
    this.problem = { code, at: { line: line + 1, column: 1 }, message };
    this.mend = mend;
  }
}

function damaged(line: number, what: string): Refused {
  return new Refused("damaged", line, `this calendar file is damaged: ${what}`);
}

function read(text: string, gardenId: string | undefined): EarlierCalendar {
  const physical = physicalLines(text);
  if (!/^BEGIN:VCALENDAR$/i.test(physical[0] ?? ""))
    throw new Refused("not-a-calendar", 0, "this file is not a calendar");
  const [, maker] = /^PRODID:(.*)/im.exec(physical.join("\n").replace(/\n[ \t]/g, "")) ?? [];
  if (maker !== productId) {
    const by = maker === undefined ? "" : `, "${quoted(maker)}"`;
    throw new Refused("not-ours", 0, `this calendar was written by another program${by}`);
  }
  const last = physical.findLastIndex((line) => line !== "");
  if (!/^END:VCALENDAR$/i.test(physical[last] ?? "")) throw damaged(last, "its end is missing");
  const lines = unfold(physical, (first) => damaged(first, "this is not a calendar line"));
  const { head, events: all } = structure(lines);
  const events = withoutCopies(all);
  const headTexts = head.map((line) => line.text);
  const garden = textOfValue(valueIn(headTexts, "X-FEEDROUND-GARDEN") ?? "");
  if (garden === "") throw damaged(0, "it does not say which garden it is for");
  if (gardenId !== undefined && garden !== textOfValue(textValue(gardenId))) {
    const message = `this calendar belongs to the garden "${quoted(garden)}", not to "${gardenId}"`;
    const mend = `if it is the same garden by another name, add \`id: ${quoted(garden)}\` to the garden file; otherwise ${writersMend}`;
    throw new Refused("other-garden", 0, message, mend);
  }
  const written = events.map((lines) => eventOf(lines, physical));
  refuseDoubles(written, events);
  const published = publishedIn(head);
  return {
    gardenId: gardenId ?? garden,
    events: written,
    retired: head.filter(({ text }) => nameOfLine(text) === "X-FEEDROUND-RETIRED").map(retiredOf),
    ...given({ published }),
  };
}

/** The calendar's own properties, and the lines of each VEVENT from BEGIN to END. */
function structure(lines: readonly ContentLine[]): {
  readonly head: readonly ContentLine[];
  readonly events: readonly (readonly ContentLine[])[];
} {
  const head: ContentLine[] = [];
  const events: ContentLine[][] = [];
  const open: string[] = [];
  for (const line of lines) {
    const name = nameOfLine(line.text);
    const value = valueOfLine(line.text);
    if (open.length === 0 && line.first > 0)
      throw damaged(line.first, "there is more after its end");
    if (name === "BEGIN") open.push(value);
    const [, component] = open;
    if (component === "VEVENT") {
      if (name === "BEGIN" && open.length === 2) events.push([]);
      events.at(-1)?.push(line);
    } else if (open.length === 1 && name !== "BEGIN" && name !== "END") {
      head.push(line);
    }
    if (name === "END" && open.pop() !== value) {
      throw damaged(line.first, `END:${quoted(value)} closes what was not open`);
    }
  }
  if (open.length > 0)
    throw damaged(
      lines.at(-1)?.first ?? 0,
      `${quoted(`END:${open.join(" and END:")}`)} is missing`,
    );
  return { head, events };
}

function eventOf(lines: readonly ContentLine[], physical: readonly string[]): WrittenEvent {
  const first = lines[0]?.first ?? 0;
  const own = ownLines(lines.map((line) => line.text));
  const oneAtMost = <T>(name: string, parse: (value: string) => T | undefined): T | undefined => {
    const values = own.filter((text) => nameOfLine(text) === name).map(valueOfLine);
    if (values.length === 0) return undefined;
    const value = values.length === 1 ? parse(values[0] ?? "") : undefined;
    if (value === undefined) throw notRight(name, first);
    return value;
  };
  const one = <T>(name: string, parse: (value: string) => T | undefined): T => {
    const value = oneAtMost(name, parse);
    if (value === undefined) throw notRight(name, first);
    return value;
  };
  const { key, day } = one("X-FEEDROUND-KEY", (value) => keyAndDay(mended(textOfValue(value))));
  const start = own.find((text) => nameOfLine(text) === "DTSTART") ?? "";
  one("DTSTART", (value) => (/^\d{8}(T\d{6}Z?)?$/.test(value) ? value : undefined));
  const timezone = /;TZID=([^;:]+)/.exec(start)?.[1];
  if (timezone !== undefined && knownZone(timezone) === undefined)
    throw damaged(first, "the event that begins here is in no time zone that is known");
  // Other programs leave some of these out; each of the times can stand for the others.
  const [sequence, stamp] = [oneAtMost("SEQUENCE", numberOf), oneAtMost("DTSTAMP", parseStamp)];
  const [made, changed] = ["CREATED", "LAST-MODIFIED"].map((name) => oneAtMost(name, parseStamp));
  const [created, modified] = [made ?? stamp ?? changed, changed ?? stamp ?? made];
  if (created === undefined || modified === undefined) throw notRight("DTSTAMP", first);
  const uid = one("UID", (value) => (isUuid(value) ? value : undefined));
  const revision = { uid, sequence: sequence ?? 0, created, modified };
  const isWhole = [sequence, stamp, made, changed].every((value) => value !== undefined);
  const isIntact = isWhole && lines.slice(0, -1).every((line) => line.isIntact);
  return {
    ...revision,
    key,
    day,
    cancelled: valueIn(own, "STATUS") === "CANCELLED",
    ...given({ timezone }),
    text: isIntact
      ? `${physical.slice(first, lines.at(-1)?.next).join("\r\n")}\r\n`
      : wholeEvent(
          lines.map((line) => line.text),
          revision,
        ),
  };
}

function notRight(name: string, first: number): Refused {
  return damaged(first, `the event that begins here has no right ${name}`);
}

/** None where no line tells of it. */
function publishedIn(head: readonly ContentLine[]): Published | undefined {
  const kinds = Object.entries(recordNames) as [RecordLine["kind"], string][];
  const lines = head.flatMap((line) => {
    const kind = kinds.find(([, name]) => name === nameOfLine(line.text))?.[0];
    return kind === undefined ? [] : [{ line, kind, text: textOfValue(valueOfLine(line.text)) }];
  });
  const [first] = lines;
  if (first === undefined) return undefined;
  const published = readRecord(lines);
  if (published === undefined)
    throw damaged(first.line.first, "the record of what was published is not whole");
  return published;
}

function retiredOf(line: ContentLine): RetiredUid {
  const [uid = "", ...rest] = valueOfLine(line.text).split(" ");
  const [number = "", made = "", changed = "", last = ""] = rest;
  const [sequence, day] = [numberOf(number), parseDay(last)];
  const [created, modified] = [parseStamp(made), parseStamp(changed)];
  if (!isUuid(uid) || sequence === undefined || !created || !modified || !day) {
    throw damaged(line.first, "the record of a former event is not whole");
  }
  return { uid, sequence, created, modified, day };
}

/** Syncing may leave an event twice; to the letter the same, it is one. */
function withoutCopies(
  events: readonly (readonly ContentLine[])[],
): readonly (readonly ContentLine[])[] {
  const seen = new Set<string>();
  return events.filter((lines) => {
    const text = lines.map((line) => line.text).join("\n");
    return !seen.has(text) && seen.add(text);
  });
}

function refuseDoubles(
  written: readonly WrittenEvent[],
  events: readonly (readonly ContentLine[])[],
): void {
  const seen = new Set<string>();
  written.forEach(({ uid, key }, i) => {
    for (const name of [uid, key]) {
      if (seen.has(name))
        throw damaged(events[i]?.[0]?.first ?? 0, "two events have the same name");
      seen.add(name);
    }
  });
}

function keyAndDay(key: string): Pick<WrittenEvent, "key" | "day"> | undefined {
  const match = /^[^/]+\/.*\/(\d{4}-\d{2}-\d{2})$/s.exec(key);
  const day = parseDay(match?.[1] ?? "");
  return day && { key, day };
}

function numberOf(text: string): number | undefined {
  return /^\d{1,9}$/.test(text) ? Number(text) : undefined;
}

function isUuid(text: string): boolean {
  return /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(text);
}
