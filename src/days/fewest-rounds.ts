/**
 * The fewest rounds that serve every course.
 *
 * Walks that drop what is too much give an answer. Walks that melt it give, for every day, rounds
 * that are surely needed before it or from it on; each such walk is led by the last one in the
 * other direction, leaves out what cannot lead to an answer as good as the one in hand, and so
 * comes closer to the truth. When both meet, the answer is proven.
 */
import { type BitCourse, bitCourses, wordCountFor } from "./bit-course.js";
import type { CourseGraph } from "./course-graph.js";
import { type Walk, walkRounds, type WalkTerms } from "./round-walk.js";

export interface FewestRounds {
  /** Sorted indexes into the allowed days. */
  readonly rounds: readonly number[];
  /** What these rounds count together. */
  readonly count: number;
  /** No answer counts less than this. */
  readonly atLeast: number;
}

export interface FewestTerms {
  readonly graphs: readonly CourseGraph[];
  readonly dayCount: number;
  /** By day, what a round on it counts; 1 everywhere when absent. See `WalkTerms`. */
  readonly roundPrices?: ArrayLike<number>;
  /** About how many words of sets may be written, beyond the first answer. */
  readonly effort: number;
}

export function fewestRounds(terms: FewestTerms): FewestRounds {
  const { dayCount, effort } = terms;
  const wordCount = wordCountFor(terms.graphs);
  const both = terms.graphs.map((g) => bitCourses(g, wordCount));
  const there = both.map((b) => b.forwards);
  const back = both.map((b) => b.backwards);
  const prices = Float64Array.from(terms.roundPrices ?? new Array<number>(dayCount).fill(1));
  const backPrices = reversed(prices);
  const nothingKnown = new Float64Array(dayCount + 1);
  let work = 0;
  const walk = (
    courses: readonly BitCourse[],
    room: number,
    overflow: WalkTerms["overflow"],
    atMost: number,
    toGo: Float64Array,
  ): Walk => {
    const roundPrices = courses === there ? prices : backPrices;
    const w = walkRounds({
      courses,
      dayCount,
      wordCount,
      roundPrices,
      room,
      overflow,
      atMost,
      toGo,
    });
    work += w.work;
    return w;
  };

  let room = 64;
  let best = walk(there, room, "drop", Infinity, nothingKnown);
  let atLeast = 0;
  let soFar = nothingKnown;
  // All walks but the first ask for less than the answer in hand: that leaves out most choices.
  while (atLeast < best.fewest && work <= effort) {
    const less = best.fewest - 1;
    const backward = walk(back, room, "melt", less, soFar);
    atLeast = Math.max(atLeast, Math.min(backward.fewest, best.fewest));
    if (atLeast >= best.fewest) break;
    const toGo = reversed(backward.soFar);
    const forward = walk(there, room, "melt", less, toGo);
    atLeast = Math.max(atLeast, Math.min(forward.fewest, best.fewest));
    if (forward.exact && forward.fewest <= less) {
      best = forward;
      break;
    }
    soFar = reversed(forward.soFar);
    room *= 2;
    const better = walk(there, room, "drop", less, toGo);
    if (better.fewest <= less) best = better;
    else if (better.exact) atLeast = best.fewest;
  }
  return { rounds: best.rounds, count: best.fewest, atLeast };
}

/**
 * Rounds that any choice of at most `atMost` surely needs: `ahead[d]` from day d on; `behind[d]` on
 * the last d days turned around, that is, on all but the last d days.
 */
export function roundBounds(
  graphs: readonly CourseGraph[],
  dayCount: number,
  atMost: number,
): { readonly ahead: Float64Array; readonly behind: Float64Array } {
  const wordCount = wordCountFor(graphs);
  const both = graphs.map((g) => bitCourses(g, wordCount));
  const terms = {
    dayCount,
    wordCount,
    roundPrices: new Float64Array(dayCount).fill(1),
    room: 64,
    overflow: "melt" as const,
    atMost,
  };
  const back = walkRounds({
    ...terms,
    courses: both.map((b) => b.backwards),
    toGo: new Float64Array(dayCount + 1),
  });
  const ahead = reversed(back.soFar);
  const there = walkRounds({ ...terms, courses: both.map((b) => b.forwards), toGo: ahead });
  return { ahead, behind: reversed(there.soFar) };
}

function reversed(a: Float64Array): Float64Array<ArrayBuffer> {
  return Float64Array.from(a).reverse();
}
