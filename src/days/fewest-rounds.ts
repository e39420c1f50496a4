/**
 * The fewest rounds that serve every course: a walk that knows of each course only the set of days
 * that could be its next feeding.
 *
 * It goes from the last day to the first, so that it also tells the walk of `cheapest-rounds.ts`,
 * which goes forwards, how many rounds are needed from each day on. A day is counted from the end
 * here, and a course turned around: it starts with a feeding that it may end with.
 *
 * A set is held in `wordCount` words of 32 bits for each of the course's layers, which are turned
 * around too; bit b stands for the day b allowed days after the
 * one that the walk has come to. The top bit is kept free, to mark a course that is done.
 */
import { type CourseGraph, layerAfter, nodeOf } from "./course-graph.js";
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
  readonly layers: number;
  /** By node, 1 where the course may start. */
  readonly starts: Uint8Array;
  readonly firstStart: number;
  readonly lastStart: number;
  readonly endsAtStart: boolean;
  /** By node, `wordCount` words. */
  readonly next: Int32Array;
  /** By day, 1 where the course may end: with a feeding in its last layer. */
  readonly ends: Uint8Array;
}

/** Choices side by side. */
interface Sets {
  readonly wordCount: number;
  /** Per choice, course and layer, `wordCount` words. */
  readonly words: Int32Array;
  /** Days until a course must be fed: of as many rounds, those that can wait go before. */
  readonly waits: Int32Array;
  /** Bits set, less those that all choices share: a choice can only cover one that is no fuller. */
  readonly fullness: Int32Array;
}

function setsOfDays(graphs: readonly CourseGraph[], dayCount: number, rounds: Int32Array): Choices {
  const wordCount = wordCountFor(graphs, dayCount);
  const courses = graphs.map((g) => turned(g, dayCount, wordCount));
  let stride = 0;
  const offsets = courses.map(({ layers }) => {
    stride += layers * wordCount;
    return stride - layers * wordCount;
  });
  const top = topBit(wordCount);
  const slots = slotsFor(room);
  const words = new Int32Array(slots * stride);
  const waits = new Int32Array(slots);
  const fullness = new Int32Array(slots);
  const sets: Sets = { wordCount, words, waits, fullness };
  const underWay = coursesUnderWay(courses, dayCount, top);
  return {
    begin(slot) {
      courses.forEach(({ layers, endsAtStart, starts }, c) => {
        const base = slot * stride + (offsets[c] as number);
        if (endsAtStart) words.fill(-1, base, base + layers * wordCount);
        else
          for (let layer = 0; layer < layers; layer++)
            for (let i = 0; i <= top && i < dayCount; i++)
              if (starts[nodeOf(layer, i, dayCount)] === 1)
                setBit(words, base + layer * wordCount, i);
      });
    },
    advance(from, to, day, take) {
      // Some dozen words: a call of copyWithin would take longer.
      for (let w = 0, f = from * stride, t = to * stride; w < stride; w++)
        words[t + w] = words[f + w] as number;
      let fed = false;
      waits[to] = top;
      fullness[to] = 0;
      for (const c of underWay[day] as Int32Array) {
        const course = courses[c] as TurnedCourse;
        const at = to * stride + (offsets[c] as number);
        if (!isDone(sets, at)) {
          if (take && feedsOn(sets, course, at, day)) fed = true;
          if (!isDone(sets, at) && !toNextDay(sets, course, at, day)) return false;
        }
        measure(sets, course.layers, to, at);
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

/** Takes the steps of a feeding that day; false where it can't be one. */
function feedsOn(
  { words, wordCount }: Sets,
  { layers, next, ends }: TurnedCourse,
  at: number,
  day: number,
): boolean {
  let feeds = false;
  for (let layer = 0; layer < layers; layer++) {
    if (((words[at + layer * wordCount] as number) & 1) === 0) continue;
    feeds = true;
    if (layer === layers - 1 && ends[day] === 1) {
      words.fill(-1, at, at + layers * wordCount);
      return true;
    }
    const from = nodeOf(layer, day, ends.length) * wordCount;
    const to = at + layerAfter(layer, layers) * wordCount;
    for (let w = 0; w < wordCount; w++)
      words[to + w] = (words[to + w] as number) | (next[from + w] as number);
  }
  return feeds;
}

/** Goes on to the next day; false when no day is left to the course. */
function toNextDay(
  { words, wordCount }: Sets,
  { layers, starts, lastStart, ends }: TurnedCourse,
  at: number,
  day: number,
): boolean {
  const top = topBit(wordCount);
  const coming = day + 1 + top;
  let any = 0;
  for (let layer = 0; layer < layers; layer++) {
    const base = at + layer * wordCount;
    let carry = 0;
    for (let w = wordCount - 1; w >= 0; w--) {
      const word = words[base + w] as number;
      const shifted = (word >>> 1) | carry;
      carry = word << 31;
      words[base + w] = shifted;
      any |= shifted;
    }
    if (coming < ends.length && starts[nodeOf(layer, coming, ends.length)] === 1)
      setBit(words, base, top);
  }
  return any !== 0 || coming <= lastStart;
}

/** Counts one course in. */
function measure(
  { words, wordCount, waits, fullness }: Sets,
  layers: number,
  slot: number,
  at: number,
): void {
  let last = -1;
  let bits = 0;
  for (let layer = 0, from = at; layer < layers; layer++, from += wordCount)
    for (let w = 0; w < wordCount; w++) {
      const word = words[from + w] as number;
      if (word === 0) continue;
      last = Math.max(last, 32 * w + 31 - Math.clz32(word));
      bits += bitCount(word);
    }
  fullness[slot] = (fullness[slot] as number) + bits;
  // A course that is done, or has no day yet, can wait.
  if (last >= 0 && last < (waits[slot] as number)) waits[slot] = last;
}

/** Words enough for the longest step of any of these. */
function wordCountFor(graphs: readonly CourseGraph[], dayCount: number): number {
  let span = 0;
  for (const g of graphs)
    g.next.forEach((steps, node) => {
      const day = node % dayCount;
      span = Math.max(span, (steps.at(-1) ?? day) - day);
    });
  return Math.floor((span + 1) / 32) + 1;
}

function turned(g: CourseGraph, dayCount: number, wordCount: number): TurnedCourse {
  const { layers } = g;
  const nodeCount = layers * dayCount;
  const reached = new Uint8Array(nodeCount);
  const starts = new Uint8Array(nodeCount);
  const next = new Int32Array(nodeCount * wordCount);
  const ends = new Uint8Array(dayCount);
  for (const i of g.starts) {
    reached[i] = 1;
    ends[dayCount - 1 - i] = 1;
  }
  const turn = (layer: number, day: number): number =>
    nodeOf(layers - 1 - layer, dayCount - 1 - day, dayCount);
  let firstStart = dayCount;
  let lastStart = -1;
  for (let node = 0; node < nodeCount; node++) {
    if (reached[node] === 0) continue;
    const i = node % dayCount;
    const layer = Math.floor(node / dayCount);
    const after = layerAfter(layer, layers);
    for (const j of g.next[node] ?? []) {
      reached[nodeOf(after, j, dayCount)] = 1;
      setBit(next, turn(after, j) * wordCount, j - i);
    }
    if (!g.ends[node]) continue;
    starts[turn(layer, i)] = 1;
    firstStart = Math.min(firstStart, dayCount - 1 - i);
    lastStart = Math.max(lastStart, dayCount - 1 - i);
  }
  return { layers, starts, firstStart, lastStart, endsAtStart: g.endsAtStart, next, ends };
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
