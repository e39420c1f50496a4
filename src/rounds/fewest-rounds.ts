/**
 * The fewest rounds that serve every course, with what later searches can use of the proof.
 *
 * Walks that drop what is too much give an answer. Walks that melt it give, for every day, rounds
 * that are surely needed before it or from it on; each such walk is led by the last one in the
 * other direction, leaves out what cannot lead to an answer as good as the one in hand, and so
 * comes closer to the truth. When both meet, the answer is proven.
 */
import { bitCourses, wordCountFor, type BitCourse } from "./bit-course.js";
import type { CourseGraph } from "./course-graph.js";
import { walkRounds, type Walk, type WalkTerms } from "./round-walk.js";

export interface FewestRounds {
  /** Sorted indexes into the allowed days. */
  readonly rounds: readonly number[];
  /** No answer has fewer rounds than this. */
  readonly atLeast: number;
  /** By day: rounds surely needed from that day on, in any answer with no more rounds than this. */
  readonly toGo: Float64Array;
}

/** `effort` is about how many sets of days may be looked at. */
export function fewestRounds(
  graphs: readonly CourseGraph[],
  dayCount: number,
  effort: number,
): FewestRounds {
  const wordCount = wordCountFor(graphs);
  const both = graphs.map((g) => bitCourses(g, wordCount));
  const forwards = both.map((b) => b.forwards);
  const backwards = both.map((b) => b.backwards);
  const none = new Float64Array(dayCount + 1);
  const perChoice = Math.max(1, dayCount * graphs.length * wordCount);
  const walk = (courses: readonly BitCourse[], more: Partial<WalkTerms>): Walk =>
    walkRounds({
      courses,
      dayCount,
      wordCount,
      room: 1,
      overflow: "drop",
      atMost: Infinity,
      toGo: none,
      ...more,
    });

  let room = 64;
  let best = walk(forwards, { room });
  let atLeast = 0;
  let toGo: Float64Array = none;
  let soFar: Float64Array = none;
  let spent = room * perChoice;
  const prove = (walked: Walk): void => {
    // Nothing better than the answer in hand: the walk asked for fewer rounds.
    atLeast = Math.max(atLeast, Math.min(walked.fewest, best.fewest));
    if (walked.exact && walked.fewest < best.fewest) best = walked;
  };
  while (atLeast < best.fewest) {
    const back = walk(backwards, { room, overflow: "melt", atMost: best.fewest - 1, toGo: soFar });
    prove({ ...back, exact: false });
    if (atLeast >= best.fewest) break;
    toGo = reversed(back.soFar);
    const there = walk(forwards, { room, overflow: "melt", atMost: best.fewest - 1, toGo });
    prove(there);
    if (atLeast >= best.fewest) break;
    soFar = reversed(there.soFar);
    room *= 2;
    spent += 3 * room * perChoice;
    if (spent > effort) break;
    const better = walk(forwards, { room, atMost: best.fewest - 1, toGo });
    if (better.fewest < best.fewest) best = better;
    else if (better.exact) atLeast = best.fewest;
  }
  return { rounds: best.rounds, atLeast, toGo };
}

function reversed(a: Float64Array): Float64Array {
  return Float64Array.from(a).reverse();
}
