/**
 * The best feedings of one course when the rounds are fixed: fewest on days not published, then
 * fewest feedings, then gaps nearest target, then earliest. One backward pass over the rounds.
 */
// @ts-nocheck

import { boundsAt, type CourseGraph, layerAfter, nodeOf } from "./course-graph.js";

/** What stands after the rounds in the order of wishes; compared in this order. */
interface ChainCost {
  /** Feedings on days not published, where the course has published days. */
  readonly unpublished: number;
  readonly feedings: number;
  readonly squaredOff: number;
}

interface Chain {
  /** Indexes into the allowed days. */
  readonly days: readonly number[];
  readonly cost: ChainCost;
}

function compareCost(a: ChainCost, b: ChainCost): number {
  return a.unpublished - b.unpublished || a.feedings - b.feedings || a.squaredOff - b.squaredOff;
}

/** Squared difference between target and gap, for a feeding on `toNo` after one on `fromNo`. */
function squaredOff(graph: CourseGraph, fromNo: number, toNo: number): number {
  return (toNo - fromNo - boundsAt(graph.phases, fromNo).targetDays) ** 2;
}

/**
 * `rounds` are sorted indexes into `dayNos`. Undefined when the course has no punctual way through
 * them.
 */
export function bestChain(
  graph: CourseGraph,
  dayNos: readonly number[],
  rounds: readonly number[],
): Chain | undefined {
  const keeps = graph.published.includes(true);
  const dayCount = dayNos.length;
  /** By node. */
  const best = new Map<number, Chain>();
  const bestOf = (
    options: readonly number[],
    layer: number,
    fromNo: number | undefined,
  ): Chain | undefined => {
    let found: Chain | undefined;
    for (const j of options) {
      const rest = best.get(nodeOf(layer, j, dayCount));
      if (!rest) continue;
      const off = fromNo === undefined ? 0 : squaredOff(graph, fromNo, dayNos[j] as number);
      const cost = {
        unpublished: rest.cost.unpublished + (keeps && !graph.published[j] ? 1 : 0),
        feedings: rest.cost.feedings + 1,
        squaredOff: rest.cost.squaredOff + off,
      };
      if (!found || compareCost(cost, found.cost) < 0) found = { days: [j, ...rest.days], cost };
    }
    return found;
  };
  const done: Chain = {
    days: [],
    cost: { unpublished: 0, feedings: 0, squaredOff: 0 },
  };
  const better = (a: Chain | undefined, b: Chain | undefined): Chain | undefined =>
    a && b ? (compareCost(b.cost, a.cost) < 0 ? b : a) : (a ?? b);
  for (let r = rounds.length - 1; r >= 0; r--) {
    const i = rounds[r] as number;
    for (let layer = 0; layer < graph.layers; layer++) {
      const node = nodeOf(layer, i, dayCount);
      const onward = bestOf(graph.next[node] ?? [], layerAfter(layer, graph.layers), dayNos[i]);
      const chain = better(graph.ends[node] ? done : undefined, onward);
      if (chain) best.set(node, chain);
    }
  }
  const onward = bestOf(graph.starts, 0, graph.lastFedNo);
  return better(graph.endsAtStart ? done : undefined, onward);
}
