/**
 * The cheapest rounds within a number of them: a walk that knows of each course the days that could
 * be its next feeding, and with each the least regret of getting there.
 *
 * A choice covers another when, whatever days are taken from here on, it costs no more: the most
 * that any course could lose by the exchange, summed, is not above zero. Of equals the one with
 * earlier days stays.
 */
import type { CostCourse } from "./cost-course.js";
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
  const width = 1 + Math.max(1, ...courses.map(longestStep));
  const affordable = Math.floor(effort / (courses.length * dayCount * width));
  const room = Math.max(1, Math.min(mostRoom, affordable));
  return walk({ dayCount, room, maxRounds, ahead }, (rounds) =>
    regretsOf(terms, width, slotsFor(room), rounds),
  )?.rounds;
}

/** Choices side by side. */
interface Regrets {
  readonly courses: readonly PricedCourse[];
  /** Days ahead that a course may have to be known for. */
  readonly width: number;
  /** Per choice and course: regrets of coming to the days ahead (a ring), then that of being done. */
  readonly values: Float64Array;
  /** Per choice and course: the least of them. */
  readonly least: Float64Array;
  /** Per choice and course: bits for the days ahead that can be reached, 32 days folded onto one. */
  readonly reach: Int32Array;
}

interface PricedCourse extends CostCourse {
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
  const courses = plain.map((course): PricedCourse => ({
    ...course,
    startAt: startsByDay(course, roundCosts.length),
    lastStart: course.starts.at(-1) ?? -1,
  }));
  const row = width + 1;
  const stride = courses.length * row;
  const values = new Float64Array(slots * stride).fill(Infinity);
  const least = new Float64Array(slots * courses.length);
  const reach = new Int32Array(slots * courses.length);
  const regrets: Regrets = { courses, width, values, least, reach };
  /** Regret of the rounds taken; and with the least of every course. */
  const own = new Float64Array(slots);
  const total = new Float64Array(slots);
  return {
    begin(slot) {
      courses.forEach((course, c) => {
        const at = slot * stride + c * row;
        course.starts.forEach((day, k) => {
          if (day < width) values[at + day] = course.startCosts[k] as number;
        });
        values[at + width] = course.endAtStart;
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

/** Takes the day from the ring, and the steps from it when the course is fed; whether it is. */
function leaveDay(r: Regrets, slot: number, c: number, day: number, take: boolean): boolean {
  const { values, width } = r;
  const course = r.courses[c] as PricedCourse;
  const at = (slot * r.courses.length + c) * (width + 1);
  const today = at + (day % width);
  const here = values[today] as number;
  const coming = day + width;
  values[today] = coming <= course.lastStart ? (course.startAt[coming] as number) : Infinity;
  if (!take || here === Infinity) return false;
  const lower = (k: number, value: number): void => {
    if (value < (values[k] as number)) values[k] = value;
  };
  lower(at + width, here + (course.ends[day] as number));
  const stop = course.nextFrom[day + 1] as number;
  for (let s = course.nextFrom[day] as number; s < stop; s++)
    lower(at + ((course.nextDays[s] as number) % width), here + (course.nextCosts[s] as number));
  return true;
}

/** Least regret of the course, Infinity when it is stranded; ways dearer than being done go. */
function lookAhead(r: Regrets, slot: number, c: number, day: number): number {
  const { values, width } = r;
  const k = slot * r.courses.length + c;
  const at = k * (width + 1);
  const done = values[at + width] as number;
  let min = done;
  let days = 0;
  for (let s = 0; s < width; s++) {
    const value = values[at + s] as number;
    if (value >= done) values[at + s] = Infinity;
    else {
      days |= 1 << s;
      if (value < min) min = value;
    }
  }
  // Zero is the least regret of any start, seen or not yet seen.
  if (day + width <= (r.courses[c] as PricedCourse).lastStart) min = 0;
  r.reach[k] = done === Infinity ? days : -1;
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
function mostLost(
  { courses, width, values, least }: Regrets,
  c: number,
  a: number,
  b: number,
): number {
  const ours = a * courses.length + c;
  const theirs = b * courses.length + c;
  const from = ours * (width + 1);
  const base = (least[ours] as number) - (least[theirs] as number);
  const done = values[from + width] as number;
  let most = base;
  for (let s = 0, t = theirs * (width + 1); s <= width; s++, t++) {
    const their = values[t] as number;
    if (their === Infinity) continue;
    const our = values[from + s] as number;
    const lost = (our < done ? our : done) - their;
    if (lost > most) most = lost;
  }
  return most - base;
}

function longestStep(course: CostCourse): number {
  let longest = 0;
  for (let i = 0; i < course.ends.length; i++)
    for (let k = course.nextFrom[i] as number; k < (course.nextFrom[i + 1] as number); k++)
      longest = Math.max(longest, (course.nextDays[k] as number) - i);
  return longest;
}

function startsByDay(course: CostCourse, dayCount: number): Float64Array {
  const costs = new Float64Array(dayCount).fill(Infinity);
  course.starts.forEach((day, k) => {
    costs[day] = course.startCosts[k] as number;
  });
  return costs;
}
