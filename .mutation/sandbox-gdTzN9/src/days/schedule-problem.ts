/**
 * The problem of choosing days, stated once, free of crops and cans.
 *
 * Given: the days on which the grower can feed, and for each course of feedings (one planting, one
 * route) the span in which the first feeding belongs, the gaps that later feedings keep, and the
 * day to which the course must be covered.
 *
 * A course is fed on days d1 < d2 < ... Each feeding has a window:
 * - the first: `first`, its latest cut to `coverTo`. A course with `lastFed` goes on from that day
 *   instead, as if it were its last feeding: `first` is not used. A course whose `first` opens
 *   after `coverTo` owes nothing.
 * - the one after a feeding on d: [d + shortest, d + longest], with the bounds of the phase that
 *   holds d (the last one that begins by d; the first phase for any earlier day). It is counted
 *   from the day really chosen, also when that day was late.
 * A course is done by a feeding on d when d + longest > coverTo: no further window falls due. A
 * course with `feedings` is done by that many as well, wherever `coverTo` lies; with 0 it owes
 * nothing. So it gets all of them where `coverTo` lies far enough off, and fewer before a near one.
 *
 * Feasible: every feeding lies on an allowed day that the course does not avoid, at or before
 * `coverTo`, and never before its window opens (feeding sooner than the shortest gap may harm). It
 * may lie after its window's latest day; then it is late. No course has more than its `feedings`.
 * A course with `heldDays` is fed on each of them, done before or not, and on no other day before the
 * last of them.
 *
 * Unmet: a feeding on day d is late by d - latest days if that is positive. A course that stops
 * undone leaves its next window unserved, which is as late as a feeding on the day after `coverTo`.
 * So the late days are the days, up to `coverTo`, on which a course stands overdue while it still owes
 * a feeding; no wish below robs a course of one that is owed.
 *
 * Wanted: days so that, in this order,
 * 1. late days, summed over the courses, are least, and of such schedules the fewest windows are
 *    served late or not at all;
 * 2. distinct days (rounds) are fewest, or at most `keepExtraRounds` more when that keeps more of 3;
 * 3. published days are kept: first the fewest rounds fall on a day that is not in the problem's
 *    `keepDays`, if it has any that are still allowed; then the fewest feedings fall on a day that is
 *    not in their course's `keepDays`, counting only courses that have any they can still be fed
 *    on; then, when extra rounds were allowed, rounds are fewest;
 * 4. feedings are fewest;
 * 5. gaps are nearest their target: the sum of (gap - target)^2, in days, over each feeding that has
 *    one before it (or `lastFed`), with the target of the phase that holds the earlier one;
 * 6. days are earliest: the sorted rounds compare lexicographically, and then each course's own
 *    days, in the order of ids.
 * This leaves exactly one schedule. It does not depend on the order of `courses`.
 *
 * Stability: given an earlier schedule as `keepDays`, of the problem and of each course, no feeding of
 * an unchanged course leaves its day unless that serves a day on which something would stand
 * overdue, saves a round, or lets another round or feeding stay where it was published. So when one
 * course is added, moved or taken away, the others stay as they are unless that costs a round.
 *
 * `chooseDays` keeps 1 always, and 2 to 6 as far as its two walks can look; see there.
 */
// @ts-nocheck

import type { Day } from "../dates.js";

export interface ScheduleProblem {
  /** Sorted, distinct. The only days a feeding may be put on. */
  readonly allowedDays: readonly Day[];
  /** Ids are distinct. */
  readonly courses: readonly Course[];
  /** Rounds already published, to be kept where that costs nothing that stands before it. */
  readonly keepDays?: readonly Day[];
  /** Rounds above the fewest that may be spent on keeping published days; 0 when absent. */
  readonly keepExtraRounds?: number;
}

export interface Course {
  readonly id: string;
  /** Where the first feeding belongs. Both ends count. */
  readonly first: { readonly earliest: Day; readonly latest: Day };
  /** A feeding already given, from which the next window is counted. */
  readonly lastFed?: Day;
  /** Gap bounds by time, sorted by `from`, without holes, at least one. */
  readonly phases: readonly GapPhase[];
  /**
   * How many feedings it owes at most from here on: with that many it is done, wherever `coverTo` lies.
   * No limit where absent.
   */
  readonly feedings?: number;
  /** The last day to be covered. No feeding lies after it. */
  readonly coverTo: Day;
  /** Days this course may not be fed on, such as those too near another feed. */
  readonly avoidDays?: readonly Day[];
  /**
   * Its first feedings from here on: sorted, each an allowed day that isn't avoided, not before its
   * window opens, at or before `coverTo`, no more than `feedings`.
   */
  readonly heldDays?: readonly Day[];
  /** Days on which a feeding of this course is already published. */
  readonly keepDays?: readonly Day[];
}

/** Whole days, 1 <= shortest <= longest. */
export interface GapPhase {
  readonly from: Day;
  readonly shortestDays: number;
  readonly targetDays: number;
  readonly longestDays: number;
}

export interface Schedule {
  /** Sorted by day, then course id. */
  readonly feedings: readonly ScheduledFeeding[];
  /** Windows served late or not at all, sorted by their latest day, then course id. */
  readonly unmet: readonly UnmetWindow[];
}

export interface ScheduledFeeding {
  readonly course: string;
  readonly day: Day;
  /** The window it was meant for; `day` lies after it only when `unmet` names it. */
  readonly window: { readonly earliest: Day; readonly latest: Day };
}

export interface UnmetWindow {
  readonly course: string;
  readonly window: { readonly earliest: Day; readonly latest: Day };
  /** The late feeding that served it after all; absent when the course ends without one. */
  readonly fedOn?: Day;
  /** From the window's latest day to `fedOn`, or to the day after `coverTo`. */
  readonly lateDays: number;
}
