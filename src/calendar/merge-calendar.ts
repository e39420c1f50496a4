import { v5 } from "uuid";
import { addDays, type Day, later } from "../dates.js";
import type { CalendarEvent } from "./calendar-event.js";
import type { RetiredUid } from "./calendar-file.js";
import { unfoldedLines } from "./content-line.js";
import type { EarlierCalendar } from "./earlier-calendar.js";
import { matchEvents } from "./match-events.js";
import { dayOfStamp, type Stamp, stampAfter } from "./stamp.js";
import { cancelEvent, type Revision, writeEvent, type WrittenEvent } from "./vevent.js";

/** A file that is imported must say what is cancelled; one that is subscribed to is the whole truth. */
export type CalendarUse = "import" | "subscription";

export interface MergeOptions {
  readonly for: CalendarUse;
  /** When this revision is made. */
  readonly stamp: Stamp;
  readonly today: Day;
}

const cancelledKeptDays = 60;
/** Our choice: no plan reaches back so far. */
const retiredKeptDays = 400;

/**
 * The events of a new plan as revisions of those in an earlier file. Unchanged ones keep their text,
 * byte for byte; changed ones keep UID and CREATED, raise SEQUENCE, and get a later LAST-MODIFIED.
 *
 * Gone ones are cancelled in a file for import, kept until 60 days after their day or their
 * cancelling, whichever is later, and dropped at once when their day is already that long past.
 * In a file for subscription they are absent. A UID that is no longer in the file is remembered with its
 * last SEQUENCE ({@link RetiredUid}), for a client may know it still: when it comes back it goes on from
 * there.
 */
export function mergeCalendar(
  earlier: EarlierCalendar,
  events: readonly CalendarEvent[],
  options: MergeOptions,
): Pick<EarlierCalendar, "events" | "retired"> {
  const { stamp, today } = options;
  const { events: matches, gone } = matchEvents(earlier.events, events);

  const left = gone.map((was) => leave(was, options));
  const cancelled = left.flatMap((l) => ("text" in l ? [l] : []));
  const retired = new Map(
    [...earlier.retired, ...left.filter((l) => !("text" in l))].map((r) => [r.uid, r]),
  );

  const used = new Set(cancelled.map(({ uid }) => uid));
  for (const { was } of matches) if (was) used.add(was.uid);
  const written = matches.map(({ event, was }) => {
    if (was) return revise(event, was, stamp);
    const uid = freeUid(event, used);
    used.add(uid);
    const before = retired.get(uid);
    const first = { uid, sequence: 0, created: stamp, modified: stamp };
    return writeEvent(event, before === undefined ? first : nextRevision(before, stamp));
  });
  return {
    events: [...written, ...cancelled],
    retired: [...retired.values()].filter(
      ({ uid, day }) => !used.has(uid) && today <= addDays(day, retiredKeptDays),
    ),
  };
}

/** Unchanged as it was, or its next revision. */
function revise(event: CalendarEvent, was: WrittenEvent, stamp: Stamp): WrittenEvent {
  // Where lines are folded is no change.
  const unfolded = ({ text }: WrittenEvent) => unfoldedLines(text).join("\n");
  const isSame = unfolded(writeEvent(event, was)) === unfolded(was);
  return isSame ? was : writeEvent(event, nextRevision(was, stamp));
}

/** What becomes of an event that is no longer planned. */
function leave(
  was: WrittenEvent,
  { for: use, stamp, today }: MergeOptions,
): WrittenEvent | RetiredUid {
  const { uid, sequence, created, modified, day, cancelled } = was;
  const keptFor = cancelled ? later(day, dayOfStamp(modified)) : day;
  if (use === "import" && today <= addDays(keptFor, cancelledKeptDays)) {
    return cancelled ? was : cancelEvent(was, nextRevision(was, stamp));
  }
  return { uid, sequence, created, modified: stampAfter(modified, stamp), day };
}

function nextRevision({ uid, sequence, created, modified }: Revision, stamp: Stamp): Revision {
  return { uid, sequence: sequence + 1, created, modified: stampAfter(modified, stamp) };
}

/** The event's own UID; one derived from it when a moved event bears that still. */
function freeUid({ uid }: CalendarEvent, used: ReadonlySet<string>): string {
  if (!used.has(uid)) return uid;
  let n = 2;
  while (used.has(v5(String(n), uid))) n++;
  return v5(String(n), uid);
}
