/**
 * The cheapest rounds within a number of them: a walk that knows of each course the days that could
 * be its next feeding, and with each the least regret of getting there.
 *
 * A choice covers another when, whatever days are taken from here on, it costs no more: the most
 * that any course could lose by the exchange, summed, is not above zero. Of equals the one with
 * earlier days stays.
 */
import type { CostCourse } from "./cost-course.js";
import { slotsFor, walk, type Choices } from "./walk.js";

export interface CostTerms {
  readonly courses: readonly CostCourse[];
  /** By day, the price of a round on it. */
  readonly roundCosts: readonly number[];
  readonly maxRounds: number;
  /** By day, how many rounds are needed from it on. Of length one more. */
  readonly ahead: readonly number[];
}

/** Most choices kept after a day, and regrets written for them in all. */
const mostRoom = 64;
const effort = 1e8;

/** Sorted indexes into the allowed days; undefined when the walk finds no way within the terms. */
export function cheapestRounds(terms: CostTerms): readonly number[] | undefined {
  const { courses, roundCosts, maxRounds, ahead } = terms;
  const dayCount = roundCosts.length;
  const width = 1 + Math.max(1, ...courses.map(longestStep));
  const affordable = Math.floor(effort / (courses.length * dayCount * width));
  const room = Math.max(1, Math.min(mostRoom, affordable));
  return walk({ dayCount, room, maxRounds, ahead }, (rounds) =>
    regrets(courses, roundCosts, width, slotsFor(room), rounds),
  )?.rounds;
}

function regrets(
  courses: readonly CostCourse[],
  roundCosts: readonly number[],
  width: number,
  slots: number,
  rounds: Int32Array,
): Choices {
  const courseCount = courses.length;
  const row = width + 1;
  const stride = courseCount * row;
  /** Per choice and course: regrets of coming to the days ahead (a ring), then that of being done. */
  const values = new Float64Array(slots * stride).fill(Infinity);
  /** Per choice and course: the least of them. */
  const least = new Float64Array(slots * courseCount);
  /** Per choice and course: bits for the days ahead that can be reached, 32 days folded onto one. */
  const reach = new Int32Array(slots * courseCount);
  /** Regret of the rounds taken; and with all `least`. */
  const own = new Float64Array(slots);
  const total = new Float64Array(slots);
  const startAt = courses.map((c) => startsByDay(c, roundCosts.length));
  const lastStarts = courses.map((c) => c.starts.at(-1) ?? -1);

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
      for (let c = 0; c < courseCount; c++) {
        if (leaveDay(c, to, day, take)) fed = true;
        const min = lookAhead(c, to, day);
        if (min === Infinity) return false;
        sum += min;
      }
      total[to] = sum;
      return fed || !take;
    },
    compare: (a, b) =>
      (total[a] as number) - (total[b] as number) || (rounds[a] as number) - (rounds[b] as number),
    covers(a, b) {
      let loss = (total[a] as number) - (total[b] as number);
      if (loss > 0 || !reachesAll(a, b)) return false;
      for (let c = 0; c < courseCount && loss <= 0; c++) loss += mostLost(c, a, b);
      return loss < 0 || (loss === 0 && a < b);
    },
  };

  /** Takes the day from the ring, and the steps from it when the course is fed; whether it is. */
  function leaveDay(c: number, slot: number, day: number, take: boolean): boolean {
    const course = courses[c] as CostCourse;
    const at = slot * stride + c * row;
    const today = at + (day % width);
    const here = values[today] as number;
    values[today] = Infinity;
    const fed = take && here !== Infinity;
    if (fed) {
      lower(at + width, here + (course.ends[day] as number));
      const stop = course.nextFrom[day + 1] as number;
      for (let s = course.nextFrom[day] as number; s < stop; s++)
        lower(
          at + ((course.nextDays[s] as number) % width),
          here + (course.nextCosts[s] as number),
        );
    }
    const coming = day + width;
    if (coming <= (lastStarts[c] as number))
      lower(today, (startAt[c] as Float64Array)[coming] as number);
    return fed;
  }

  function lower(at: number, value: number): void {
    if (value < (values[at] as number)) values[at] = value;
  }

  /** Least regret of the course, Infinity when it is stranded; ways dearer than being done go. */
  function lookAhead(c: number, slot: number, day: number): number {
    const at = slot * stride + c * row;
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
    if (day + width <= (lastStarts[c] as number)) min = 0;
    reach[slot * courseCount + c] = done === Infinity ? days : -1;
    least[slot * courseCount + c] = min;
    return min;
  }

  function reachesAll(a: number, b: number): boolean {
    const ours = a * courseCount;
    const theirs = b * courseCount;
    for (let c = 0; c < courseCount; c++)
      if ((reach[theirs + c] as number) & ~(reach[ours + c] as number)) return false;
    return true;
  }

  /** The most that the course can lose with `a` instead of `b`, above the difference of the least. */
  function mostLost(c: number, a: number, b: number): number {
    const ours = a * stride + c * row;
    const theirs = b * stride + c * row;
    const base = (least[a * courseCount + c] as number) - (least[b * courseCount + c] as number);
    const done = values[ours + width] as number;
    let most = base;
    for (let s = 0; s <= width; s++) {
      const their = values[theirs + s] as number;
      if (their === Infinity) continue;
      const our = values[ours + s] as number;
      const lost = (our < done ? our : done) - their;
      if (lost > most) most = lost;
    }
    return most - base;
  }
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
