import type { Day } from "../dates.js";
import { quoted } from "../legible.js";
import type { Plan } from "../season/index.js";
import { byText } from "../values.js";
import { type CalendarEvent, isWatering } from "./calendar-event.js";
import { nameOfLine, ownLines, textOfValue, unfoldedLines, valueIn } from "./content-line.js";
import type { EarlierCalendar } from "./earlier-calendar.js";
import { matchEvents } from "./match-events.js";
import { missEvent, writeEvent, type WrittenEvent } from "./vevent.js";

/** What an earlier file said of an event. */
export interface EarlierEvent extends EventNow {
  readonly uid: string;
}

/** What the next file says of an event. */
type EventNow = Pick<CalendarEvent, "day" | "summary">;

/** What becomes of one entry of a published calendar. */
export type CalendarChange =
  | { readonly change: "new"; readonly event: EventNow }
  /** Another day; `properties` names what else differs, as in iCalendar. */
  | {
      readonly change: "moved" | "changed";
      readonly event: EventNow;
      readonly was: EarlierEvent;
      readonly properties: readonly string[];
      /** Lines of the description that are in one alone; absent where it is the same. */
      readonly said?: { readonly was: readonly string[]; readonly now: readonly string[] };
      /** A watering day that keeps its day and time and tells other amounts. */
      readonly amountsAlone?: true;
    }
  | { readonly change: "gone"; readonly was: EarlierEvent };

/**
 * What a new plan would change in an earlier calendar, by day; what stays as it is is left out, and
 * so are entries before today that leave it.
 */
export function calendarChanges(
  earlier: EarlierCalendar,
  plan: Plan,
  today: Day,
): CalendarChange[] {
  const { events, missed, gone } = matchEvents(earlier.events, plan, today);
  const changes = events.flatMap(({ event, was }) =>
    was === undefined || was.cancelled
      ? [{ change: "new", event } as const]
      : changeOf(was, writeEvent(event, was)),
  );
  const ended = gone
    .filter(({ cancelled, day }) => !cancelled && day >= today)
    .map((was): CalendarChange => ({ change: "gone", was: earlierEvent(was) }));
  return [
    ...changes,
    ...missed.flatMap((was) => changeOf(was, missEvent(was, was))),
    ...ended,
  ].sort((a, b) => byText(dayOf(a), dayOf(b)));
}

function changeOf(was: WrittenEvent, now: WrittenEvent): CalendarChange[] {
  const properties = differing(was, now);
  if (properties.length === 0 && now.day === was.day) return [];
  const change = now.day === was.day ? "changed" : "moved";
  const amountsAlone =
    change === "changed" &&
    isWatering(now.key) &&
    properties.every((name) => ["SUMMARY", "DESCRIPTION"].includes(name));
  return [
    {
      change,
      event: earlierEvent(now),
      was: earlierEvent(was),
      properties,
      ...(properties.includes("DESCRIPTION") ? { said: saidAnew(was, now) } : {}),
      ...(amountsAlone ? { amountsAlone } : {}),
    },
  ];
}

function saidAnew(was: WrittenEvent, now: WrittenEvent): { was: string[]; now: string[] } {
  const [before, after] = [was, now].map(
    ({ text }) =>
      new Set(textOfValue(valueIn(unfoldedLines(text), "DESCRIPTION") ?? "").split("\n")),
  );
  const only = (lines = new Set<string>(), others = new Set<string>()): string[] =>
    [...lines].filter((line) => line !== "" && !others.has(line));
  return { was: only(before, after), now: only(after, before) };
}

/** Names of properties, beside the day, that are not the same in both; `VALARM` for reminders. */
function differing(a: WrittenEvent, b: WrittenEvent): string[] {
  const [before, after] = [comparedLines(a.text), comparedLines(b.text)];
  const only = (lines: readonly string[], others: readonly string[]) =>
    lines.filter((line) => !others.includes(line)).map(nameOfLine);
  const names = new Set([...only(before, after), ...only(after, before)]);
  for (const name of ["X-FEEDROUND-KEY", "X-FEEDROUND-LOG"]) names.delete(name);
  if (a.day !== b.day) for (const name of ["DTSTART", "DTEND"]) names.delete(name);
  return [...names];
}

/** An alarm counts by its trigger alone, for its text is the summary again. */
function comparedLines(text: string): string[] {
  const lines = unfoldedLines(text);
  const own = ownLines(lines);
  const triggers = lines.filter((line) => nameOfLine(line) === "TRIGGER");
  return [...own, ...triggers.map((trigger) => `VALARM:${trigger}`)];
}

function earlierEvent(was: WrittenEvent): EarlierEvent {
  const summary = textOfValue(valueIn(unfoldedLines(was.text), "SUMMARY") ?? "");
  return { uid: was.uid, day: was.day, summary: quoted(summary) };
}

function dayOf(change: CalendarChange): Day {
  return change.change === "gone" ? change.was.day : change.event.day;
}
