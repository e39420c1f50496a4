/**
 * A course with prices, for the search of the best among the fewest rounds.
 *
 * Every wish after the rounds is a price on a feeding: a weight for the feeding itself, one more for
 * a day on which it is not published, and the squared difference between gap and target. Prices
 * are regrets: what a step costs beyond the cheapest way the course would go by itself. So no
 * price is negative, and what a course must cost in any case is left out.
 */
import { boundsAt, type CourseGraph } from "./course-graph.js";

export interface Weights {
  readonly feeding: number;
  /** On top, for a feeding on a day the course has not published. */
  readonly newFeeding: number;
  readonly round: number;
  /** On top, for a round on a day that is not published. */
  readonly newRound: number;
}

export interface CostCourse {
  /** What the cheapest way costs; regrets come on top. */
  readonly base: number;
  /** Sorted day indexes with their prices. */
  readonly starts: readonly number[];
  readonly startCosts: readonly number[];
  /** Infinity where the course cannot end without a feeding. */
  readonly endAtStart: number;
  /** The steps from day i are at nextFrom[i] up to nextFrom[i + 1]. */
  readonly nextFrom: Int32Array;
  readonly nextDays: Int32Array;
  readonly nextCosts: Float64Array;
  /** Infinity where the course cannot end. */
  readonly ends: Float64Array;
}

export function costCourse(g: CourseGraph, dayNos: readonly number[], w: Weights): CostCourse {
  const dayCount = dayNos.length;
  const steps = g.next.map((days) => days.length);
  const nextFrom = new Int32Array(dayCount + 1);
  for (let i = 0; i < dayCount; i++)
    nextFrom[i + 1] = (nextFrom[i] as number) + (steps[i] as number);
  const nextDays = new Int32Array(nextFrom[dayCount] as number);
  const nextCosts = new Float64Array(nextDays.length);
  const ends = new Float64Array(dayCount).fill(Infinity);
  const rest = new Float64Array(dayCount).fill(Infinity);
  const keeps = g.published.includes(true);
  const price = (j: number, fromNo: number | undefined, targetDays: number): number =>
    w.feeding +
    (keeps && !g.published[j] ? w.newFeeding : 0) +
    (fromNo === undefined ? 0 : ((dayNos[j] as number) - fromNo - targetDays) ** 2) +
    (rest[j] as number);
  for (let i = dayCount - 1; i >= 0; i--) {
    const fromNo = dayNos[i] as number;
    const days = g.next[i] as readonly number[];
    if (days.length === 0 && !g.ends[i]) continue;
    const { targetDays } = boundsAt(g.phases, fromNo);
    let least = g.ends[i] ? 0 : Infinity;
    const at = nextFrom[i] as number;
    days.forEach((j, k) => {
      const cost = price(j, fromNo, targetDays);
      nextDays[at + k] = j;
      nextCosts[at + k] = cost;
      least = Math.min(least, cost);
    });
    rest[i] = least;
    for (let k = at; k < at + days.length; k++) nextCosts[k] = (nextCosts[k] as number) - least;
    if (g.ends[i]) ends[i] = 0 - least;
  }
  const lastFed = g.lastFedNo;
  const target = lastFed === undefined ? 0 : boundsAt(g.phases, lastFed).targetDays;
  const startCosts = g.starts.map((j) => price(j, lastFed, target));
  const least = Math.min(g.endsAtStart ? 0 : Infinity, ...startCosts);
  return {
    base: least,
    starts: g.starts,
    startCosts: startCosts.map((cost) => cost - least),
    endAtStart: g.endsAtStart ? 0 - least : Infinity,
    nextFrom,
    nextDays,
    nextCosts,
    ends,
  };
}

/** The same course walked from the last day to the first. */
export function backwards(c: CostCourse): CostCourse {
  const dayCount = c.ends.length;
  const last = dayCount - 1;
  const reached = new Uint8Array(dayCount);
  for (const i of c.starts) reached[i] = 1;
  const before: { day: number; cost: number }[][] = Array.from({ length: dayCount }, () => []);
  const starts: number[] = [];
  const startCosts: number[] = [];
  for (let i = 0; i < dayCount; i++) {
    if (!reached[i]) continue;
    for (let k = c.nextFrom[i] as number; k < (c.nextFrom[i + 1] as number); k++) {
      const j = c.nextDays[k] as number;
      reached[j] = 1;
      before[last - j]?.push({ day: last - i, cost: c.nextCosts[k] as number });
    }
    if (c.ends[i] !== Infinity) {
      starts.unshift(last - i);
      startCosts.unshift(c.ends[i] as number);
    }
  }
  const nextFrom = new Int32Array(dayCount + 1);
  before.forEach((steps, i) => {
    nextFrom[i + 1] = (nextFrom[i] as number) + steps.length;
  });
  const flat = before.flatMap((steps) => steps.reverse());
  const ends = new Float64Array(dayCount).fill(Infinity);
  c.starts.forEach((i, k) => {
    ends[last - i] = c.startCosts[k] as number;
  });
  return {
    base: c.base,
    starts,
    startCosts,
    endAtStart: c.endAtStart,
    nextFrom,
    nextDays: Int32Array.from(flat, (s) => s.day),
    nextCosts: Float64Array.from(flat, (s) => s.cost),
    ends,
  };
}
