import type { Day } from "../dates.js";
import type { Result } from "../problem.js";
import type { Plan } from "../season/index.js";
import { calendarMeta } from "./calendar-event.js";
import { calendarFile } from "./calendar-file.js";
import {
  type CalendarProblem,
  type EarlierCalendar,
  readEarlierCalendar,
} from "./earlier-calendar.js";
import { type CalendarUse, mergeCalendar } from "./merge-calendar.js";
import { planEvents } from "./plan-events.js";
import { dayOfStamp, type Stamp, stampOf, startOfDay } from "./stamp.js";
import { writeEvent } from "./vevent.js";

/** How a calendar is written; without any it is the first file of a garden. */
export interface CalendarTextOptions {
  /**
   * When it is made: ISO 8601, UTC. Without it the season's first day at midnight, or the latest time
   * in the earlier file: the same input gives the same bytes.
   */
  readonly stamp?: string;
  /** Text of the file that this one replaces. */
  readonly previous?: string;
  /** How the file reaches its reader; `import` unless given. */
  readonly for?: CalendarUse;
  /** What lies before it is past and stands as it was published; the day of the stamp unless given. */
  readonly today?: Day;
  /** Leaves out the published state, so that no later plan takes the file for what was told. */
  readonly isCopy?: boolean;
}

/**
 * The calendar of a plan as iCalendar text (RFC 5545, RFC 7986), over an earlier file if there is
 * one. Problems, all of the earlier file: see {@link readEarlierCalendar}. Throws RangeError for a
 * bad stamp or two events with one UID.
 */
export function calendarText(
  plan: Plan,
  options: CalendarTextOptions = {},
): Result<string, CalendarProblem> {
  const pieces = calendarPieces(plan, options);
  return pieces.ok ? { ok: true, value: [...pieces.value].join("") } : pieces;
}

/** As {@link calendarText}, in pieces to be written one after the other, once. */
export function calendarPieces(
  plan: Plan,
  options: CalendarTextOptions = {},
): Result<Iterable<string>, CalendarProblem> {
  const meta = calendarMeta(plan);
  const published = options.isCopy === true ? undefined : plan.published;
  const asked = stampOf(options.stamp ?? startOfDay(meta.season.from));
  if (options.previous === undefined) {
    const first = { sequence: 0, created: asked, modified: asked };
    const written = planEvents(plan).map((event) =>
      writeEvent(event, { uid: event.uid, ...first }),
    );
    return { ok: true, value: calendarFile(meta, written, [], published) };
  }
  const earlier = readEarlierCalendar(options.previous, meta.gardenId);
  if (!earlier.ok) return earlier;
  const stamp = options.stamp === undefined ? latestStamp(asked, earlier.value) : asked;
  const merged = mergeCalendar(earlier.value, plan, {
    for: options.for ?? "import",
    stamp,
    today: options.today ?? dayOfStamp(stamp),
  });
  return { ok: true, value: calendarFile(meta, merged.events, merged.retired, published) };
}

function latestStamp(asked: Stamp, { events, retired }: EarlierCalendar): Stamp {
  return [...events, ...retired].reduce(
    (latest, { modified }) => (modified > latest ? modified : latest),
    asked,
  );
}
