/**
 * The cheapest rounds within a number of them: a walk that knows of each course the days that could
 * be its next feeding, and with each the least regret of getting there.
 *
 * A choice covers another when, whatever days are taken from here on, it costs no more: the most
 * that any course could lose by the exchange, summed, is not above zero. Of equals the one with
 * earlier days stays.
 */
// @ts-nocheck

import type { CostCourse } from "./cost-course.js";
import { layerAfter, nodeOf } from "./course-graph.js";
import { type Choices, slotsFor, walk } from "./walk.js";

interface CostTerms {
  readonly courses: readonly CostCourse[];
  /** By day, the price of a round on it. */
  readonly roundCosts: readonly number[];
  readonly maxRounds: number;
  /** Keep those with fewer rounds so far before cheaper ones: more of them come to an end. */
  readonly fewestFirst: boolean;
  /** By day, how many rounds are needed from it on. Of length one more. */
  readonly ahead: readonly number[];
}

/**
 * Most choices kept after a day, and regrets held for them in all, which is less for hundreds of
 * courses. Twice as many take twice as long and save about one feeding in a thousand.
 */
const mostRoom = 48;
const effort = 5e7;

/** Sorted indexes into the allowed days; undefined when the walk finds no way within the terms. */
export function cheapestRounds(terms: CostTerms): readonly number[] | undefined {
  const { courses, roundCosts, maxRounds, ahead } = terms;
  const dayCount = roundCosts.length;
  const width = 1 + Math.max(1, ...courses.map((course) => longestStep(course, dayCount)));
  const layers = courses.reduce((sum, course) => sum + course.layers, 0);
  const affordable = Math.floor(effort / (layers * dayCount * width));
  const room = Math.max(1, Math.min(mostRoom, affordable));
  return walk({ dayCount, room, maxRounds, ahead }, (rounds) =>
    regretsOf(terms, width, slotsFor(room), rounds),
  )?.rounds;
}

/** Choices side by side. */
interface Regrets {
  readonly courses: readonly PricedCourse[];
  readonly dayCount: number;
  /** Days ahead that a course may have to be known for. */
  readonly width: number;
  /** Of one choice. */
  readonly stride: number;
  /**
   * Per choice and course: regrets of coming to the days ahead (a ring for each layer), then that of
   * being done.
   */
  readonly values: Float64Array;
  /** Per choice and course: the least of them. */
  readonly least: Float64Array;
  /** Per choice and course: bits for the places in its rings that can be reached, 32 folded onto one. */
  readonly reach: Int32Array;
}

interface PricedCourse extends CostCourse {
  /** Where its rings begin in a choice, and how long they are together. */
  readonly offset: number;
  readonly size: number;
  /** By day, Infinity where it does not start. */
  readonly startAt: Float64Array;
  readonly lastStart: number;
}

function regretsOf(
  { courses: plain, roundCosts, fewestFirst }: CostTerms,
  width: number,
  slots: number,
  rounds: Int32Array,
): Choices {
  const dayCount = roundCosts.length;
  let stride = 0;
  const courses = plain.map((course): PricedCourse => {
    const size = course.layers * width;
    const offset = stride;
    stride += size + 1;
    const lastStart = course.starts.at(-1) ?? -1;
    return { ...course, offset, size, startAt: startsByDay(course, dayCount), lastStart };
  });
  const values = new Float64Array(slots * stride).fill(Infinity);
  const least = new Float64Array(slots * courses.length);
  const reach = new Int32Array(slots * courses.length);
  const regrets: Regrets = { courses, dayCount, width, stride, values, least, reach };
  /** Regret of the rounds taken; and with the least of every course. */
  const own = new Float64Array(slots);
  const total = new Float64Array(slots);
  return {
    begin(slot) {
      courses.forEach((course) => {
        const at = slot * stride + course.offset;
        course.starts.forEach((day, k) => {
          if (day < width) values[at + day] = course.startCosts[k] as number;
        });
        values[at + course.size] = course.endAtStart;
      });
    },
    advance(from, to, day, take) {
      values.copyWithin(to * stride, from * stride, (from + 1) * stride);
      let fed = false;
      let sum = (own[from] as number) + (take ? (roundCosts[day] as number) : 0);
      own[to] = sum;
      for (let c = 0; c < courses.length; c++) {
        if (leaveDay(regrets, to, c, day, take)) fed = true;
        const min = lookAhead(regrets, to, c, day);
        if (min === Infinity) return false;
        sum += min;
      }
      total[to] = sum;
      return fed || !take;
    },
    compare(a, b) {
      const cheaper = (total[a] as number) - (total[b] as number);
      const fewer = (rounds[a] as number) - (rounds[b] as number);
      return fewestFirst ? fewer || cheaper : cheaper || fewer;
    },
    covers(a, b) {
      let loss = (total[a] as number) - (total[b] as number);
      if (loss > 0 || !reachesAll(regrets, a, b)) return false;
      for (let c = 0; c < courses.length && loss <= 0; c++) loss += mostLost(regrets, c, a, b);
      return loss < 0 || (loss === 0 && a < b);
    },
  };
}

/** Takes the day from the rings, and the steps from it when the course is fed; whether it is. */
function leaveDay(r: Regrets, slot: number, c: number, day: number, take: boolean): boolean {
  const { values, width, dayCount } = r;
  const course = r.courses[c] as PricedCourse;
  const { layers, nextFrom, nextDays, nextCosts } = course;
  const at = slot * r.stride + course.offset;
  const done = at + course.size;
  const coming = day + width;
  let fed = false;
  for (let layer = 0; layer < layers; layer++) {
    const today = at + layer * width + (day % width);
    const here = values[today] as number;
    values[today] =
      layer === 0 && coming <= course.lastStart ? (course.startAt[coming] as number) : Infinity;
    if (!take || here === Infinity) continue;
    fed = true;
    const node = nodeOf(layer, day, dayCount);
    const end = here + (course.ends[node] as number);
    if (end < (values[done] as number)) values[done] = end;
    const ring = at + layerAfter(layer, layers) * width;
    const stop = nextFrom[node + 1] as number;
    for (let s = nextFrom[node] as number; s < stop; s++) {
      const k = ring + ((nextDays[s] as number) % width);
      const value = here + (nextCosts[s] as number);
      if (value < (values[k] as number)) values[k] = value;
    }
  }
  return fed;
}

/** Least regret of the course, Infinity when it is stranded; ways dearer than being done go. */
function lookAhead(r: Regrets, slot: number, c: number, day: number): number {
  const { values } = r;
  const { offset, size, lastStart } = r.courses[c] as PricedCourse;
  const k = slot * r.courses.length + c;
  const at = slot * r.stride + offset;
  const done = values[at + size] as number;
  let min = done;
  let places = 0;
  for (let s = 0; s < size; s++) {
    const value = values[at + s] as number;
    if (value >= done) values[at + s] = Infinity;
    else {
      places |= 1 << s;
      if (value < min) min = value;
    }
  }
  // Zero is the least regret of any start, seen or not yet seen.
  if (day + r.width <= lastStart) min = 0;
  r.reach[k] = done === Infinity ? places : -1;
  r.least[k] = min;
  return min;
}

/** Whether no course can come, with `b` alone, to a day ahead. */
function reachesAll({ courses, reach }: Regrets, a: number, b: number): boolean {
  const ours = a * courses.length;
  const theirs = b * courses.length;
  for (let c = 0; c < courses.length; c++)
    if ((reach[theirs + c] as number) & ~(reach[ours + c] as number)) return false;
  return true;
}

/** The most that the course can lose with `a` instead of `b`, above the difference of the least. */
function mostLost(r: Regrets, c: number, a: number, b: number): number {
  const { courses, stride, values, least } = r;
  const { offset, size } = courses[c] as PricedCourse;
  const from = a * stride + offset;
  const base =
    (least[a * courses.length + c] as number) - (least[b * courses.length + c] as number);
  const done = values[from + size] as number;
  let most = base;
  for (let s = 0, t = b * stride + offset; s <= size; s++, t++) {
    const their = values[t] as number;
    if (their === Infinity) continue;
    const our = values[from + s] as number;
    const lost = (our < done ? our : done) - their;
    if (lost > most) most = lost;
  }
  return most - base;
}

function longestStep({ nextFrom, nextDays, ends }: CostCourse, dayCount: number): number {
  let longest = 0;
  for (let node = 0; node < ends.length; node++)
    for (let k = nextFrom[node] as number; k < (nextFrom[node + 1] as number); k++)
      longest = Math.max(longest, (nextDays[k] as number) - (node % dayCount));
  return longest;
}

function startsByDay(course: CostCourse, dayCount: number): Float64Array {
  const costs = new Float64Array(dayCount).fill(Infinity);
  course.starts.forEach((day, k) => {
    costs[day] = course.startCosts[k] as number;
  });
  return costs;
}
