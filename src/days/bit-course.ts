/**
 * A course as rows of bits, for the search of the fewest rounds: all it may know of a course is
 * which day may follow which.
 *
 * The set of days that could be a course's next feeding is held in `wordCount` words of 32 bits; bit
 * b stands for the day b allowed days after the one the search has come to. The top bit is kept
 * free, to mark a course that is done.
 */
import type { CourseGraph } from "./course-graph.js";

export interface BitCourse {
  /** Sorted day indexes. */
  readonly starts: readonly number[];
  readonly endsAtStart: boolean;
  /** By day, `wordCount` words. */
  readonly next: Int32Array;
  /** By day, 1 where the course may end. */
  readonly ends: Uint8Array;
}

/** Words enough for the longest step of any of these. */
export function wordCountFor(graphs: readonly CourseGraph[]): number {
  let span = 0;
  for (const g of graphs)
    g.next.forEach((steps, i) => {
      span = Math.max(span, (steps.at(-1) ?? i) - i);
    });
  return Math.floor((span + 1) / 32) + 1;
}

/** The course walked forwards, and the same course walked from the last day to the first. */
export function bitCourses(
  g: CourseGraph,
  wordCount: number,
): { readonly forwards: BitCourse; readonly backwards: BitCourse } {
  const dayCount = g.next.length;
  const last = dayCount - 1;
  const reached = new Uint8Array(dayCount);
  for (const i of g.starts) reached[i] = 1;
  const next = new Int32Array(dayCount * wordCount);
  const before = new Int32Array(dayCount * wordCount);
  const ends = new Uint8Array(dayCount);
  const backStarts: number[] = [];
  for (let i = 0; i < dayCount; i++) {
    if (!reached[i]) continue;
    for (const j of g.next[i] ?? []) {
      reached[j] = 1;
      setBit(next, i * wordCount, j - i);
      setBit(before, (last - j) * wordCount, j - i);
    }
    if (g.ends[i]) {
      ends[i] = 1;
      backStarts.push(last - i);
    }
  }
  const backEnds = new Uint8Array(dayCount);
  for (const i of g.starts) backEnds[last - i] = 1;
  const { starts, endsAtStart } = g;
  return {
    forwards: { starts, endsAtStart, next, ends },
    backwards: { starts: backStarts.reverse(), endsAtStart, next: before, ends: backEnds },
  };
}

export function setBit(words: Int32Array, base: number, bit: number): void {
  const at = base + (bit >> 5);
  words[at] = (words[at] as number) | (1 << (bit & 31));
}
