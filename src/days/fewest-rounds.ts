/**
 * The fewest rounds that serve every course: a walk that knows of each course only the set of days
 * that could be its next feeding.
 *
 * It goes from the last day to the first, so that it also tells the walk of `cheapest-rounds.ts`,
 * which goes forwards, how many rounds are needed from each day on. A day is counted from the end
 * here, and a course turned around: it starts with a feeding that it may end with.
 *
 * A set is held in `wordCount` words of 32 bits; bit b stands for the day b allowed days after the
 * one that the walk has come to. The top bit is kept free, to mark a course that is done.
 */
import type { CourseGraph } from "./course-graph.js";
import { type Choices, slotsFor, walk } from "./walk.js";

interface FewestRounds {
  /** Sorted indexes into the allowed days. */
  readonly rounds: readonly number[];
  /** By day, how many are needed from it on. Of length dayCount + 1. */
  readonly ahead: readonly number[];
}

/**
 * Most choices kept after a day. 128 gave the proven number on all of some hundred gardens with up
 * to a dozen courses, half of it missed a round on a few.
 */
const room = 128;

export function fewestRounds(graphs: readonly CourseGraph[], dayCount: number): FewestRounds {
  const walked = walk({ dayCount, room, maxRounds: Infinity }, (rounds) =>
    setsOfDays(graphs, dayCount, rounds),
  );
  // Whatever is kept can go on, by taking every day to come.
  if (!walked) throw new Error("without a limit of rounds no choice strands a course");
  return {
    rounds: walked.rounds.map((i) => dayCount - 1 - i).reverse(),
    ahead: [...walked.spent].reverse(),
  };
}

/** A course as rows of bits, from the last day to the first. */
interface TurnedCourse {
  readonly starts: Uint8Array;
  readonly firstStart: number;
  readonly lastStart: number;
  readonly endsAtStart: boolean;
  /** By day, `wordCount` words. */
  readonly next: Int32Array;
  /** By day, 1 where the course may end. */
  readonly ends: Uint8Array;
}

/** Choices side by side. */
interface Sets {
  readonly wordCount: number;
  /** Per choice and course, `wordCount` words. */
  readonly words: Int32Array;
  /** Days until a course must be fed: of as many rounds, those that can wait go before. */
  readonly waits: Int32Array;
  /** Bits set, less those that all choices share: a choice can only cover one that is no fuller. */
  readonly fullness: Int32Array;
}

function setsOfDays(graphs: readonly CourseGraph[], dayCount: number, rounds: Int32Array): Choices {
  const wordCount = wordCountFor(graphs);
  const courses = graphs.map((g) => turned(g, wordCount));
  const stride = courses.length * wordCount;
  const top = topBit(wordCount);
  const slots = slotsFor(room);
  const words = new Int32Array(slots * stride);
  const waits = new Int32Array(slots);
  const fullness = new Int32Array(slots);
  const sets: Sets = { wordCount, words, waits, fullness };
  const underWay = coursesUnderWay(courses, dayCount, top);
  return {
    begin(slot) {
      courses.forEach((course, c) => {
        const at = slot * stride + c * wordCount;
        if (course.endsAtStart) words.fill(-1, at, at + wordCount);
        else for (let i = 0; i <= top; i++) if (course.starts[i] === 1) setBit(words, at, i);
      });
    },
    advance(from, to, day, take) {
      words.copyWithin(to * stride, from * stride, (from + 1) * stride);
      let fed = false;
      waits[to] = top;
      fullness[to] = 0;
      for (const c of underWay[day] as Int32Array) {
        const at = to * stride + c * wordCount;
        if (!isDone(sets, at)) {
          const feeds = take && ((words[at] as number) & 1) === 1;
          fed ||= feeds;
          if (!advanceCourse(sets, courses[c] as TurnedCourse, at, day, feeds)) return false;
        }
        measure(sets, to, at);
      }
      return fed || !take;
    },
    compare: (a, b) =>
      (rounds[a] as number) - (rounds[b] as number) ||
      (waits[b] as number) - (waits[a] as number) ||
      (fullness[b] as number) - (fullness[a] as number),
    covers(a, b) {
      if ((fullness[a] as number) < (fullness[b] as number)) return false;
      const ours = a * stride;
      const theirs = b * stride;
      let w = 0;
      while (w < stride && ((words[theirs + w] as number) & ~(words[ours + w] as number)) === 0)
        w++;
      return w === stride;
    },
  };
}

function topBit(wordCount: number): number {
  return 32 * wordCount - 2;
}

function isDone({ words, wordCount }: Sets, at: number): boolean {
  return (words[at + wordCount - 1] as number) < 0;
}

/** Goes on to the next day; false when no day is left to the course. */
function advanceCourse(
  { words, wordCount }: Sets,
  course: TurnedCourse,
  at: number,
  day: number,
  feeds: boolean,
): boolean {
  if (feeds && course.ends[day] === 1) {
    words.fill(-1, at, at + wordCount);
    return true;
  }
  let any = 0;
  let carry = 0;
  for (let w = wordCount - 1; w >= 0; w--) {
    let word = words[at + w] as number;
    if (feeds) word |= course.next[day * wordCount + w] as number;
    const shifted = (word >>> 1) | carry;
    carry = word << 31;
    words[at + w] = shifted;
    any |= shifted;
  }
  const top = topBit(wordCount);
  const coming = day + 1 + top;
  if (course.starts[coming] === 1) setBit(words, at, top);
  return any !== 0 || coming <= course.lastStart;
}

/** Counts one course in. */
function measure({ words, wordCount, waits, fullness }: Sets, slot: number, at: number): void {
  let last = -1;
  for (let w = 0; w < wordCount; w++) {
    const word = words[at + w] as number;
    if (word !== 0) last = 32 * w + 31 - Math.clz32(word);
    fullness[slot] = (fullness[slot] as number) + bitCount(word);
  }
  // A course that is done, or has no day yet, can wait.
  if (last >= 0 && last < (waits[slot] as number)) waits[slot] = last;
}

/** Words enough for the longest step of any of these. */
function wordCountFor(graphs: readonly CourseGraph[]): number {
  let span = 0;
  for (const g of graphs)
    g.next.forEach((steps, i) => {
      span = Math.max(span, (steps.at(-1) ?? i) - i);
    });
  return Math.floor((span + 1) / 32) + 1;
}

function turned(g: CourseGraph, wordCount: number): TurnedCourse {
  const dayCount = g.next.length;
  const last = dayCount - 1;
  const reached = new Uint8Array(dayCount);
  const starts = new Uint8Array(dayCount);
  const next = new Int32Array(dayCount * wordCount);
  const ends = new Uint8Array(dayCount);
  for (const i of g.starts) {
    reached[i] = 1;
    ends[last - i] = 1;
  }
  for (let i = 0; i < dayCount; i++) {
    if (reached[i] === 0) continue;
    for (const j of g.next[i] ?? []) {
      reached[j] = 1;
      setBit(next, (last - j) * wordCount, j - i);
    }
    if (g.ends[i]) starts[last - i] = 1;
  }
  return {
    starts,
    firstStart: starts.indexOf(1),
    lastStart: starts.lastIndexOf(1),
    endsAtStart: g.endsAtStart,
    next,
    ends,
  };
}

/** By day, the courses that are neither surely done nor so far from their start that nothing shows. */
function coursesUnderWay(
  courses: readonly TurnedCourse[],
  dayCount: number,
  top: number,
): Int32Array[] {
  const byDay: number[][] = Array.from({ length: dayCount }, () => []);
  courses.forEach((course, c) => {
    if (course.endsAtStart) return;
    const from = Math.max(0, course.firstStart - top - 1);
    for (let day = from; day <= course.ends.lastIndexOf(1); day++) byDay[day]?.push(c);
  });
  return byDay.map((list) => Int32Array.from(list));
}

function setBit(words: Int32Array, base: number, bit: number): void {
  const at = base + (bit >> 5);
  words[at] = (words[at] as number) | (1 << (bit & 31));
}

function bitCount(bits: number): number {
  const pairs = bits - ((bits >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return (((fours + (fours >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}
