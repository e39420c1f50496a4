/**
 * A course as a graph over the allowed days: which day may follow which, once late days are least.
 *
 * Its nodes are days, by index. Where a course may not have as many feedings as would fit, a node is a
 * day and how many feedings came before it: one layer of days for each number of them. A step leads
 * to the layer after (`layerAfter`).
 *
 * Late days are least when every course alone has its least, for all allowed days may be rounds. So
 * steps that would cost a course more late days than it must bear are left out here, and what
 * remains to choose is free of lateness: every way from start to end is equally punctual.
 */
// @ts-nocheck

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
  /** One where feedings needn't be counted. */
  readonly layers: number;
  /** By node (`nodeOf`): the days that can come next; sorted. Empty where it is never fed. */
  readonly next: readonly (readonly number[])[];
  /** By node: whether the course may end with it. */
  readonly ends: readonly boolean[];
  /** By index: whether a feeding of this course is published on that day. */
  readonly published: readonly boolean[];
}

/** A feeding on a day (by index), after as many as its layer says. */
export function nodeOf(layer: number, day: number, dayCount: number): number {
  return layer * dayCount + day;
}

/** The layer of what comes after a feeding of this one; the last has either itself or nothing. */
export function layerAfter(layer: number, layers: number): number {
  return Math.min(layer + 1, layers - 1);
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
  const due = firstDue(course, phases);
  return course.feedings === 0 ? { ...due, latest: Infinity } : due;
}

function firstDue(course: Course, phases: readonly GapBounds[]): DueWindow {
  if (course.lastFed !== undefined) return windowAfter(phases, dayNumber(course.lastFed));
  const earliest = dayNumber(course.first.earliest);
  const coverTo = dayNumber(course.coverTo);
  if (earliest > coverTo) return { earliest, latest: Infinity };
  return { earliest, latest: Math.min(dayNumber(course.first.latest), coverTo) };
}

/** How many feedings have to be told apart: all that it may have, unless no more would fit. */
function layersOf(course: Course, phases: readonly GapBounds[]): number {
  const { feedings } = course;
  if (feedings === undefined) return 1;
  const shortest = Math.min(...phases.map(({ shortestDays }) => shortestDays));
  const { earliest } = startWindow(course, phases);
  const oneMore = earliest + feedings * shortest;
  return oneMore > dayNumber(course.coverTo) ? 1 : Math.max(1, feedings);
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
  const held = new Set(course.heldDays?.map(dayNumber));
  const lastHeld = Math.max(...held);
  const usable = dayNos.map((d) => d < end && !avoided.has(d) && (d > lastHeld || held.has(d)));
  const dayCount = dayNos.length;
  const layers = layersOf(course, phases);
  const counts = layers > 1 || course.feedings === 1;
  /** Least lateness from a node to the end, filled from the last day backwards. */
  const least = new Array<number>(layers * dayCount).fill(0);
  const stepsFrom = (dayNo: number, w: DueWindow, layer: number): Steps => {
    // It doesn't end before the last of its held days.
    const endCost = dayNo < lastHeld ? Infinity : lateness(end - w.latest);
    let cost = endCost;
    let next: number[] = [];
    for (let j = firstAtOrAfter(dayNos, w.earliest); j < dayCount; j++) {
      const late = lateness((dayNos[j] as number) - w.latest);
      if (late > cost || (dayNos[j] as number) >= end) break;
      if (!usable[j]) continue;
      const through = late + (least[nodeOf(layer, j, dayCount)] as number);
      if (through < cost) next = [];
      if (through <= cost) next.push(j);
      cost = Math.min(cost, through);
      if (held.has(dayNos[j] as number)) break;
    }
    return { cost, next, ends: endCost === cost };
  };
  const next = new Array<readonly number[]>(layers * dayCount).fill([]);
  const ends = new Array<boolean>(layers * dayCount).fill(false);
  for (let layer = layers - 1; layer >= 0; layer--)
    for (let i = dayCount - 1; i >= 0; i--) {
      if (!usable[i]) continue;
      const dayNo = dayNos[i] as number;
      const node = nodeOf(layer, i, dayCount);
      const isLast = counts && layer === layers - 1;
      const steps = isLast
        ? done
        : stepsFrom(dayNo, windowAfter(phases, dayNo), layerAfter(layer, layers));
      least[node] = steps.cost;
      next[node] = steps.next;
      ends[node] = steps.ends;
    }
  const start = course.feedings === 0 ? done : stepsFrom(-Infinity, startWindow(course, phases), 0);
  return {
    course,
    phases,
    lastFedNo: course.lastFed === undefined ? undefined : dayNumber(course.lastFed),
    starts: start.next,
    endsAtStart: start.ends,
    layers,
    next,
    ends,
    published: dayNos.map((d, i) => kept.has(d) && usable[i] === true),
  };
}

/** What may come after a feeding, or at the start. */
interface Steps {
  readonly cost: number;
  readonly next: readonly number[];
  readonly ends: boolean;
}

const done: Steps = { cost: 0, next: [], ends: true };

function firstAtOrAfter(dayNos: readonly number[], d: number): number {
  let low = 0;
  let high = dayNos.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((dayNos[middle] as number) < d) low = middle + 1;
    else high = middle;
  }
  return low;
}
