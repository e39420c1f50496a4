/**
 * A course as a graph over the allowed days: which day may follow which, once late days are least.
 *
 * Late days are least when every course alone has its least, for all allowed days may be rounds. So
 * steps that would cost a course more late days than it must bear are left out here, and what
 * remains to choose is free of lateness: every way from start to end is equally punctual.
 */
import { dayNumber } from "../dates.js";
import type { Course } from "./schedule-problem.js";

export interface CourseGraph {
  readonly course: Course;
  readonly phases: readonly GapBounds[];
  /** Day number of `lastFed`. */
  readonly lastFedNo: number | undefined;
  /** Allowed days, by index, that can be the next feeding at the start; sorted. */
  readonly starts: readonly number[];
  /** Owes no feeding, or can have none. */
  readonly endsAtStart: boolean;
  /** By index of a feeding: the indexes that can come next; sorted. Empty where it is never fed. */
  readonly next: readonly (readonly number[])[];
  /** By index of a feeding: whether the course may end with it. */
  readonly ends: readonly boolean[];
  /** By index: whether a feeding of this course is published on that day. */
  readonly published: readonly boolean[];
}

/** The window that a feeding, or the start (day undefined), opens. Day numbers, both ends count. */
export interface DueWindow {
  readonly earliest: number;
  readonly latest: number;
}

/** The bounds of a gap that starts at a feeding. */
interface GapBounds {
  readonly fromNo: number;
  readonly shortestDays: number;
  readonly targetDays: number;
  readonly longestDays: number;
}

/** The phases with their first days as numbers. */
export function gapPhases(course: Course): readonly GapBounds[] {
  if (course.phases.length === 0) throw new RangeError(`course ${course.id} has no phase`);
  return course.phases.map((phase) => ({ ...phase, fromNo: dayNumber(phase.from) }));
}

export function boundsAt(phases: readonly GapBounds[], dayNo: number): GapBounds {
  let found = phases[0] as GapBounds;
  for (const phase of phases) if (phase.fromNo <= dayNo) found = phase;
  return found;
}

export function windowAfter(phases: readonly GapBounds[], dayNo: number): DueWindow {
  const bounds = boundsAt(phases, dayNo);
  return { earliest: dayNo + bounds.shortestDays, latest: dayNo + bounds.longestDays };
}

export function startWindow(course: Course, phases: readonly GapBounds[]): DueWindow {
  if (course.lastFed !== undefined) return windowAfter(phases, dayNumber(course.lastFed));
  const earliest = dayNumber(course.first.earliest);
  const coverTo = dayNumber(course.coverTo);
  if (earliest > coverTo) return { earliest, latest: Infinity };
  return { earliest, latest: Math.min(dayNumber(course.first.latest), coverTo) };
}

/** More than the windows a course can have: late days count first, then late windows. */
const lateDayWeight = 1024;

function lateness(lateDays: number): number {
  return lateDays > 0 ? lateDays * lateDayWeight + 1 : 0;
}

/** `dayNos` are the allowed days as day numbers, sorted. */
export function courseGraph(course: Course, dayNos: readonly number[]): CourseGraph {
  const phases = gapPhases(course);
  const end = dayNumber(course.coverTo) + 1;
  const avoided = new Set(course.avoidDays?.map(dayNumber));
  const kept = new Set(course.keepDays?.map(dayNumber));
  const usable = dayNos.map((d) => d < end && !avoided.has(d));
  const firstAtOrAfter = (d: number): number => {
    let low = 0;
    let high = dayNos.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((dayNos[middle] as number) < d) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  /** Least lateness from a feeding to the end, filled from the last day backwards. */
  const least = new Array<number>(dayNos.length).fill(0);
  const stepsFrom = (w: DueWindow): { cost: number; next: number[]; ends: boolean } => {
    const endCost = lateness(end - w.latest);
    let cost = endCost;
    let next: number[] = [];
    for (let j = firstAtOrAfter(w.earliest); j < dayNos.length; j++) {
      const late = lateness((dayNos[j] as number) - w.latest);
      if (late > cost || (dayNos[j] as number) >= end) break;
      if (!usable[j]) continue;
      const through = late + (least[j] as number);
      if (through < cost) next = [];
      if (through <= cost) next.push(j);
      cost = Math.min(cost, through);
    }
    return { cost, next, ends: endCost === cost };
  };
  const next = new Array<readonly number[]>(dayNos.length).fill([]);
  const ends = new Array<boolean>(dayNos.length).fill(false);
  for (let i = dayNos.length - 1; i >= 0; i--) {
    if (!usable[i]) continue;
    const steps = stepsFrom(windowAfter(phases, dayNos[i] as number));
    least[i] = steps.cost;
    next[i] = steps.next;
    ends[i] = steps.ends;
  }
  const start = stepsFrom(startWindow(course, phases));
  return {
    course,
    phases,
    lastFedNo: course.lastFed === undefined ? undefined : dayNumber(course.lastFed),
    starts: start.next,
    endsAtStart: start.ends,
    next,
    ends,
    published: dayNos.map((d, i) => kept.has(d) && usable[i] === true),
  };
}
