/**
 * The best of all choices with the fewest rounds (or as many more as keeping published days may
 * cost): wishes 3 to 6 of the problem.
 *
 * A good choice is found by small moves; then walks ask for one that costs no more than a bound. The
 * bound starts low, where nearly everything can be left out, and rises while nothing is found, so
 * that the walk that finds the best choice has also shown that there is none better.
 */
import { backwards, costCourse, type CostCourse } from "./cost-course.js";
import { type CostWalk, walkCosts } from "./cost-walk.js";
import type { CourseGraph } from "./course-graph.js";
import { fewestRounds, roundBounds } from "./fewest-rounds.js";
import { costMeter, shiftRounds, weightsFor } from "./round-costs.js";

export interface BestTerms {
  readonly graphs: readonly CourseGraph[];
  readonly dayNos: readonly number[];
  /** By index, whether a round is published; undefined when that does not matter. */
  readonly publishedRounds: readonly boolean[] | undefined;
  readonly extraRounds: number;
  readonly effort: Effort;
}

/** Bounds of work that are the same on every machine. */
export interface Effort {
  /** Words of sets written and compared, for the number of rounds. */
  readonly rounds: number;
  /** Regrets written and compared, for the other wishes. */
  readonly wishes: number;
}

export interface BestRounds {
  /** Sorted indexes into the allowed days. */
  readonly rounds: readonly number[];
  /** No choice has fewer rounds than this. */
  readonly atLeast: number;
  /** Whether no choice is better in any wish. */
  readonly proven: boolean;
}

export function bestRounds(terms: BestTerms): BestRounds {
  const { graphs, dayNos, publishedRounds, extraRounds, effort } = terms;
  const dayCount = dayNos.length;
  const fewest = fewestRounds({ graphs, dayCount, effort: effort.rounds });
  const fewestProven = fewest.atLeast === fewest.count;
  const free = publishedDays(graphs, publishedRounds);
  const keeps = { any: free.includes(true), extraRounds };
  const maxRounds = fewest.count + (keeps.any ? extraRounds : 0);
  const weights = weightsFor(graphs, dayNos, keeps);
  const roundCosts = Float64Array.from(
    dayNos,
    (_, i) => weights.round + (publishedRounds && !publishedRounds[i] ? weights.newRound : 0),
  );
  const courses = graphs.map((g) => costCourse(g, dayNos, weights));
  const costOf = costMeter(courses, roundCosts);
  const starts = [fewest.rounds];
  if (keeps.any) starts.push(...keepingRounds(graphs, free, effort.rounds / 4));
  const tries = Math.ceil(effort.wishes / (1 + 4 * graphs.length * fewest.count));
  const tried = starts
    .filter((rounds) => rounds.length <= maxRounds)
    .map((rounds) => shiftRounds(rounds, costOf, dayCount, tries));
  const inHand = tried.reduce((a, b) => (b.cost < a.cost ? b : a));
  const best = search({
    courses,
    graphs,
    dayCount,
    roundCosts,
    maxRounds,
    step: weights.feeding,
    inHand,
    effort: effort.wishes,
  });
  return {
    rounds: best.rounds,
    atLeast: fewest.atLeast,
    proven: best.proven && fewestProven,
  };
}

/** Days that are a published round or hold a published feeding. */
function publishedDays(
  graphs: readonly CourseGraph[],
  rounds: readonly boolean[] | undefined,
): boolean[] {
  const days = new Array<boolean>(graphs[0]?.next.length ?? 0).fill(false);
  rounds?.forEach((published, i) => {
    if (published) days[i] = true;
  });
  for (const g of graphs)
    g.published.forEach((published, i) => {
      if (published) days[i] = true;
    });
  return days;
}

/** As few new rounds beside the published ones as will do; and then as few of all these. */
function keepingRounds(
  graphs: readonly CourseGraph[],
  free: readonly boolean[],
  effort: number,
): (readonly number[])[] {
  const dayCount = free.length;
  const few = { graphs, dayCount, effort };
  const added = fewestRounds({ ...few, roundPrices: free.map((f) => (f ? 0 : 1)) });
  const pool = new Set(added.rounds);
  const thinned = fewestRounds({
    ...few,
    roundPrices: free.map((_, i) => (pool.has(i) ? 1 : Infinity)),
  });
  return [added.rounds, thinned.rounds];
}

interface Search {
  readonly courses: readonly CostCourse[];
  readonly graphs: readonly CourseGraph[];
  readonly dayCount: number;
  readonly roundCosts: Float64Array;
  readonly maxRounds: number;
  /** The price of one feeding: the least by which the bound rises. */
  readonly step: number;
  readonly inHand: { readonly rounds: readonly number[]; readonly cost: number };
  readonly effort: number;
}

const mostRoom = 512;

function search(s: Search): { readonly rounds: readonly number[]; readonly proven: boolean } {
  const { courses, dayCount, roundCosts, maxRounds, step, effort } = s;
  // Not even one choice could be walked.
  if (32 * dayCount * courses.length > effort) return { rounds: s.inHand.rounds, proven: false };
  const reversedCourses = courses.map(backwards);
  const reversedCosts = Float64Array.from(roundCosts).reverse();
  const bounds = roundBounds(s.graphs, dayCount, maxRounds);
  const ahead = fromRounds(bounds.ahead, maxRounds);
  const behind = fromRounds(bounds.behind, maxRounds);
  let work = 0;
  let { rounds, cost } = s.inHand;
  const walk = (
    back: boolean,
    overflow: "drop" | "melt",
    room: number,
    maxCost: number,
    toGo: Float64Array,
  ): CostWalk => {
    const walked = walkCosts({
      courses: back ? reversedCourses : courses,
      roundCosts: back ? reversedCosts : roundCosts,
      dayCount,
      maxRounds,
      room,
      overflow,
      maxCost,
      maxWork: effort - work,
      toGo,
    });
    work += walked.work;
    return walked;
  };

  let least = 0;
  let rise = 0;
  for (;;) {
    // All that ends with as many feedings as the bound is found together.
    const maxCost = Math.min(cost, Math.floor(least / step) * step + step - 1 + rise);
    let known = behind;
    for (let room = 64; room <= mostRoom && least <= maxCost; room *= 2) {
      const back = walk(true, "melt", room, maxCost, known);
      if (work > effort) break;
      least = Math.max(least, Math.min(back.cost, maxCost + 1));
      if (back.cost > maxCost) break;
      const there = walk(false, "melt", room, maxCost, turned(back.soFar, dayCount, maxRounds));
      if (work > effort) break;
      least = Math.max(least, Math.min(there.cost, maxCost + 1));
      if (there.exact && there.cost <= maxCost) return { rounds: there.rounds, proven: true };
      known = turned(there.soFar, dayCount, maxRounds);
    }
    if (least <= maxCost) break;
    rise = Math.max(step, 2 * rise);
  }
  // Not proven within the effort: one more walk that keeps only the cheapest choices.
  work = 0;
  const last = walk(false, "drop", 32, cost, ahead);
  if (last.cost < cost) ({ rounds, cost } = last);
  return { rounds, proven: false };
}

/** Rounds surely to come, by day, as regrets to come: none, or more than can be paid. */
function fromRounds(needed: ArrayLike<number>, maxRounds: number): Float64Array {
  const table = new Float64Array(needed.length * (maxRounds + 1));
  for (let d = 0; d < needed.length; d++)
    for (let r = 0; r <= maxRounds; r++)
      table[d * (maxRounds + 1) + r] = (needed[d] as number) <= r ? 0 : Infinity;
  return table;
}

/** The table of a walk, by day from the other end. */
function turned(soFar: Float64Array, dayCount: number, maxRounds: number): Float64Array {
  const rowLength = maxRounds + 1;
  const table = new Float64Array(soFar.length);
  for (let d = 0; d <= dayCount; d++)
    table.set(
      soFar.subarray((dayCount - d) * rowLength, (dayCount - d + 1) * rowLength),
      d * rowLength,
    );
  return table;
}
