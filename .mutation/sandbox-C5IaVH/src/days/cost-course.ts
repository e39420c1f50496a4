/**
 * A course with prices, for the search of the best among the fewest rounds.
 *
 * Every wish after the rounds is a price on a feeding: a weight for the feeding itself, one more for
 * a day on which it is not published, and the squared difference between gap and target. Prices
 * are regrets: what a step costs beyond the cheapest way the course would go by itself. So no
 * price is negative, and what a course must cost in any case is left out.
 */
// @ts-nocheck

import { boundsAt, type CourseGraph, layerAfter, nodeOf } from "./course-graph.js";

interface Weights {
  readonly feeding: number;
  /** On top, for a feeding on a day the course has not published. */
  readonly newFeeding: number;
  readonly round: number;
  /** On top, for a round on a day that is not published. */
  readonly newRound: number;
}

/**
 * Weights so large that less of an earlier wish always outweighs all of a later one. Where the
 * numbers would no longer be exact (some hundred courses), later wishes may outweigh earlier ones.
 */
export function weightsFor(
  graphs: readonly CourseGraph[],
  dayNos: readonly number[],
  keeps: { readonly any: boolean; readonly extraRounds: number },
): Weights {
  let offSum = 0;
  let feedingSum = 0;
  for (const g of graphs) {
    const shortest = Math.min(...g.course.phases.map((p) => p.shortestDays));
    const span = (dayNos.at(-1) ?? 0) - (dayNos[g.starts[0] ?? 0] ?? 0);
    const feedings = 1 + Math.floor(span / Math.max(1, shortest));
    offSum += feedings * worstOff(g, dayNos);
    feedingSum += feedings;
  }
  const feeding = offSum + 1;
  if (!keeps.any) return { feeding, round: 0, newFeeding: 0, newRound: 0 };
  // The number of rounds can only differ when there may be extra ones.
  const round = keeps.extraRounds > 0 ? feeding * (feedingSum + 1) : 0;
  const newFeeding = round > 0 ? round * (dayNos.length + 1) : feeding * (feedingSum + 1);
  return { feeding, round, newFeeding, newRound: newFeeding * (feedingSum + 1) };
}

function worstOff(g: CourseGraph, dayNos: readonly number[]): number {
  let worst = 0;
  const look = (fromNo: number, days: readonly number[]): void => {
    if (days.length === 0) return;
    const { targetDays } = boundsAt(g.phases, fromNo);
    for (const j of [days[0] as number, days.at(-1) as number])
      worst = Math.max(worst, ((dayNos[j] as number) - fromNo - targetDays) ** 2);
  };
  g.next.forEach((days, node) => {
    look(dayNos[node % dayNos.length] as number, days);
  });
  if (g.lastFedNo !== undefined) look(g.lastFedNo, g.starts);
  return worst;
}

export interface CostCourse {
  /** Sorted day indexes with their prices. */
  readonly starts: readonly number[];
  readonly startCosts: readonly number[];
  /** Infinity where the course cannot end without a feeding. */
  readonly endAtStart: number;
  readonly layers: number;
  /** The steps from a node are at nextFrom[node] up to nextFrom[node + 1]. */
  readonly nextFrom: Int32Array;
  readonly nextDays: Int32Array;
  readonly nextCosts: Float64Array;
  /** By node; Infinity where the course cannot end. */
  readonly ends: Float64Array;
}

export function costCourse(g: CourseGraph, dayNos: readonly number[], w: Weights): CostCourse {
  const dayCount = dayNos.length;
  const nodeCount = g.layers * dayCount;
  const nextFrom = new Int32Array(nodeCount + 1);
  g.next.forEach((days, node) => {
    nextFrom[node + 1] = (nextFrom[node] as number) + days.length;
  });
  const nextDays = new Int32Array(nextFrom[nodeCount] as number);
  const nextCosts = new Float64Array(nextDays.length);
  const ends = new Float64Array(nodeCount).fill(Infinity);
  const rest = new Float64Array(nodeCount).fill(Infinity);
  const keeps = g.published.includes(true);
  const price = (layer: number, j: number, fromNo: number | undefined, target: number): number =>
    w.feeding +
    (keeps && !g.published[j] ? w.newFeeding : 0) +
    (fromNo === undefined ? 0 : ((dayNos[j] as number) - fromNo - target) ** 2) +
    (rest[nodeOf(layer, j, dayCount)] as number);
  // Backwards: steps lead to later days, in this layer or the one after.
  for (let node = nodeCount - 1; node >= 0; node--) {
    const fromNo = dayNos[node % dayCount] as number;
    const days = g.next[node] as readonly number[];
    if (days.length === 0 && !g.ends[node]) continue;
    const { targetDays } = boundsAt(g.phases, fromNo);
    const layer = layerAfter(Math.floor(node / dayCount), g.layers);
    let least = g.ends[node] ? 0 : Infinity;
    const at = nextFrom[node] as number;
    days.forEach((j, k) => {
      const cost = price(layer, j, fromNo, targetDays);
      nextDays[at + k] = j;
      nextCosts[at + k] = cost;
      least = Math.min(least, cost);
    });
    rest[node] = least;
    for (let k = at; k < at + days.length; k++) nextCosts[k] = (nextCosts[k] as number) - least;
    if (g.ends[node]) ends[node] = 0 - least;
  }
  const lastFed = g.lastFedNo;
  const target = lastFed === undefined ? 0 : boundsAt(g.phases, lastFed).targetDays;
  const startCosts = g.starts.map((j) => price(0, j, lastFed, target));
  const least = Math.min(g.endsAtStart ? 0 : Infinity, ...startCosts);
  return {
    starts: g.starts,
    startCosts: startCosts.map((cost) => cost - least),
    endAtStart: g.endsAtStart ? 0 - least : Infinity,
    layers: g.layers,
    nextFrom,
    nextDays,
    nextCosts,
    ends,
  };
}
