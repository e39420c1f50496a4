/**
 * The problem of choosing days, stated once, free of crops and cans.
 *
 * Given: the days on which the grower can feed, and for each course of feedings (one planting, one
 * route) the span in which the first feeding belongs, the gaps that later feedings keep, and the
 * day to which the course must be covered.
 *
 * Wanted: days so that, in this order,
 * 1. what cannot be met is least (days outside windows, summed over feedings);
 * 2. distinct days (rounds) are fewest;
 * 3. feedings are fewest;
 * 4. gaps are nearest their target (sum of squared differences, in days);
 * 5. days are earliest (lexicographically, round by round).
 */
import type { Day } from "../dates.js";

export interface ScheduleProblem {
  /** Sorted, distinct. The only days a feeding may be put on. */
  readonly allowedDays: readonly Day[];
  readonly courses: readonly Course[];
}

export interface Course {
  readonly id: string;
  /** Where the first feeding belongs. Both ends count. */
  readonly first: { readonly earliest: Day; readonly latest: Day };
  /** Gap bounds by time; phases are sorted, without holes, the first begins at or before `first.earliest`. A gap takes the bounds of the phase that holds the feeding it starts from. */
  readonly phases: readonly GapPhase[];
  /** The course is done once the last feeding + that feeding's longest gap > coverTo. No feeding lies after it. */
  readonly coverTo: Day;
}

export interface GapPhase {
  readonly from: Day;
  readonly shortestDays: number;
  readonly targetDays: number;
  readonly longestDays: number;
}

export interface Schedule {
  /** Sorted by day, then course id. */
  readonly feedings: readonly ScheduledFeeding[];
  /** Windows that no allowed day could serve, each named. */
  readonly unmet: readonly UnmetWindow[];
}

export interface ScheduledFeeding {
  readonly course: string;
  readonly day: Day;
  /** The window it was meant for; `day` lies outside it only when `unmet` names it. */
  readonly window: { readonly earliest: Day; readonly latest: Day };
}

/** `fedOn` is the nearest feasible day, absent when there is none before the course ends. */
export interface UnmetWindow {
  readonly course: string;
  readonly window: { readonly earliest: Day; readonly latest: Day };
  readonly fedOn?: Day;
}
