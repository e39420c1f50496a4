// @ts-nocheck
import { v5 } from "uuid";
import { addDays, type Day, later } from "../dates.js";
import type { Plan } from "../season/index.js";
import type { CalendarEvent } from "./calendar-event.js";
import type { RetiredUid } from "./calendar-file.js";
import { unfoldedLines } from "./content-line.js";
import type { EarlierCalendar } from "./earlier-calendar.js";
import { matchEvents } from "./match-events.js";
import { dayOfStamp, type Stamp, stampNotAfter } from "./stamp.js";
import {
  cancelEvent,
  missEvent,
  restampEvent,
  type Revision,
  writeEvent,
  type WrittenEvent,
} from "./vevent.js";

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
 * byte for byte; changed ones keep UID and CREATED, raise SEQUENCE, and get the time of this revision.
 * What has a time later than that was written by a clock that went wrong: it gets this one, as a
 * revision of its own.
 *
 * Entries before today stand until 60 days after the season, unless the log tells something else of
 * them. Other gone ones are cancelled in a file for import, kept until 60 days after their day or
 * their cancelling, whichever is later; in a file for subscription they are absent. A UID that is no
 * longer in the file is remembered with its last SEQUENCE ({@link RetiredUid}), for a client may know
 * it still: when it comes back it goes on from there.
 */
export function mergeCalendar(
  earlier: EarlierCalendar,
  plan: Plan,
  options: MergeOptions,
): Pick<EarlierCalendar, "events" | "retired"> {
  const { stamp, today } = options;
  const inTime = earlier.events.map((was) => notAhead(was, stamp));
  const { events: matches, standing, missed, gone } = matchEvents(inTime, plan, today);

  const left = gone.map((was) => leave(was, options));
  const kept = [
    ...standing,
    ...missed.map((was) => revised(was, stamp, (next) => missEvent(was, next))),
    ...left.flatMap((l) => ("text" in l ? [l] : [])),
  ];
  const retired = new Map(
    [...earlier.retired, ...left.filter((l) => !("text" in l))].map((r) => [r.uid, r]),
  );

  const used = new Set(kept.map(({ uid }) => uid));
  for (const { was } of matches) if (was) used.add(was.uid);
  const written = matches.map(({ event, was }) => {
    if (was) return revised(was, stamp, (next) => writeEvent(event, next));
    const uid = freeUid(event, used);
    used.add(uid);
    const before = retired.get(uid);
    const first = { uid, sequence: 0, created: stamp, modified: stamp };
    return writeEvent(event, before === undefined ? first : nextRevision(before, stamp));
  });
  return {
    events: [...written, ...kept],
    retired: [...retired.values()]
      .filter(({ uid, day }) => !used.has(uid) && today <= addDays(day, retiredKeptDays))
      .map((one) => ({ ...one, ...timesOf(one, stamp) })),
  };
}

function notAhead(was: WrittenEvent, stamp: Stamp): WrittenEvent {
  const isAhead = was.modified > stamp || was.created > stamp;
  return isAhead ? restampEvent(was, nextRevision(was, stamp)) : was;
}

/** Unchanged as it was, or its next revision. */
function revised(
  was: WrittenEvent,
  stamp: Stamp,
  write: (revision: Revision) => WrittenEvent,
): WrittenEvent {
  // Where lines are folded is no change.
  const unfolded = ({ text }: WrittenEvent) => unfoldedLines(text).join("\n");
  return unfolded(write(was)) === unfolded(was) ? was : write(nextRevision(was, stamp));
}

/** What becomes of an event that is no longer planned; what is past was never called off. */
function leave(
  was: WrittenEvent,
  { for: use, stamp, today }: MergeOptions,
): WrittenEvent | RetiredUid {
  const { uid, sequence, created, day, cancelled, modified } = was;
  if (use === "import") {
    if (!cancelled && day >= today) return cancelEvent(was, nextRevision(was, stamp));
    if (cancelled && today <= addDays(later(day, dayOfStamp(modified)), cancelledKeptDays))
      return was;
  }
  return { uid, sequence, created, modified: stamp, day };
}

function nextRevision(was: Revision, stamp: Stamp): Revision {
  const { created } = timesOf(was, stamp);
  return { uid: was.uid, sequence: was.sequence + 1, created, modified: stamp };
}

function timesOf(
  { created, modified }: Pick<Revision, "created" | "modified">,
  stamp: Stamp,
): Pick<Revision, "created" | "modified"> {
  return {
    created: stampNotAfter(created, stamp),
    modified: stampNotAfter(modified, stamp),
  };
}

/** The event's own UID; one derived from it when a moved event bears that still. */
function freeUid({ uid }: CalendarEvent, used: ReadonlySet<string>): string {
  if (!used.has(uid)) return uid;
  let n = 2;
  while (used.has(v5(String(n), uid))) n++;
  return v5(String(n), uid);
}
