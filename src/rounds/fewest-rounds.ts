/**
 * The fewest rounds that serve every course, by dynamic programming over the allowed days.
 *
 * Walking along the days, each choice so far leaves to every course a set of days that could be its
 * next feeding. Two choices that leave the same sets are the same from here on; one that leaves
 * every course at least the days another does, in no more rounds, makes the other needless. A set
 * is a row of bits, bit b for the day b allowed days from here; a course that is done has all bits.
 */
import type { CourseGraph } from "./course-graph.js";

export interface FewestRounds {
  /** Sorted indexes into the allowed days. */
  readonly rounds: readonly number[];
  /** Whether no choice was dropped for want of room, so that no fewer rounds can do. */
  readonly proven: boolean;
  /** Most choices kept at one day. */
  readonly widest: number;
}

interface Choice {
  readonly sets: Int32Array;
  readonly count: number;
  readonly last: Trail | undefined;
}

interface Trail {
  readonly index: number;
  readonly before: Trail | undefined;
}

const doneSet = -1;

/** `room` is the most choices kept at one day. */
export function fewestRounds(
  graphs: readonly CourseGraph[],
  dayCount: number,
  room: number,
): FewestRounds {
  const wordCount = wordsFor(graphs);
  const courses = graphs.map((g) => bitCourse(g, wordCount));
  const top = 32 * wordCount - 2;
  let layer: Choice[] = [
    {
      sets: Int32Array.from(courses.flatMap((c) => startSets(c, wordCount, top))),
      count: 0,
      last: undefined,
    },
  ];
  let proven = true;
  let widest = 1;
  for (let day = 0; day < dayCount; day++) {
    const found = new Map<string, Choice>();
    const keep = (choice: Choice): void => {
      const key = choice.sets.join();
      const rival = found.get(key);
      if (!rival || choice.count < rival.count) found.set(key, choice);
    };
    for (const choice of layer) {
      const taken = step(choice, courses, wordCount, day, top, true);
      if (taken) keep(taken);
      const skipped = step(choice, courses, wordCount, day, top, false);
      if (skipped) keep(skipped);
    }
    layer = undominated([...found.values()], room * 4);
    widest = Math.max(widest, layer.length);
    if (layer.length > room) {
      proven = false;
      layer = layer.slice(0, room);
    }
  }
  const best = layer.reduce((a, b) => (b.count < a.count ? b : a));
  const rounds: number[] = [];
  for (let t = best.last; t; t = t.before) rounds.push(t.index);
  return { rounds: rounds.reverse(), proven, widest };
}

interface BitCourse {
  readonly starts: ReadonlySet<number>;
  readonly lastStart: number;
  readonly endsAtStart: boolean;
  readonly ends: readonly boolean[];
  /** By day, words of bits: bit b for the day b after it. */
  readonly next: Int32Array;
}

function wordsFor(graphs: readonly CourseGraph[]): number {
  let span = 0;
  for (const g of graphs)
    g.next.forEach((steps, i) => {
      span = Math.max(span, (steps.at(-1) ?? i) - i);
    });
  // The top bit of the last word is kept free, for the mark of a course that is done.
  return Math.floor((span + 1) / 32) + 1;
}

function bitCourse(g: CourseGraph, wordCount: number): BitCourse {
  const next = new Int32Array(g.next.length * wordCount);
  g.next.forEach((steps, i) => {
    for (const j of steps) {
      const word = i * wordCount + ((j - i) >> 5);
      next[word] = (next[word] as number) | (1 << ((j - i) & 31));
    }
  });
  return {
    starts: new Set(g.starts),
    lastStart: g.starts.at(-1) ?? -1,
    endsAtStart: g.endsAtStart,
    ends: g.ends,
    next,
  };
}

function startSets(c: BitCourse, wordCount: number, top: number): number[] {
  const words = new Array<number>(wordCount).fill(c.endsAtStart ? doneSet : 0);
  if (!c.endsAtStart)
    for (const i of c.starts)
      if (i <= top) words[i >> 5] = (words[i >> 5] as number) | (1 << (i & 31));
  return words;
}

/** The choice after `day` was taken or passed over; undefined when that strands a course. */
function step(
  choice: Choice,
  courses: readonly BitCourse[],
  wordCount: number,
  day: number,
  top: number,
  take: boolean,
): Choice | undefined {
  const sets = choice.sets.slice();
  let fed = false;
  for (let c = 0, base = 0; c < courses.length; c++, base += wordCount) {
    const course = courses[c] as BitCourse;
    const topWord = base + wordCount - 1;
    if ((sets[topWord] as number) < 0) continue;
    if (take && ((sets[base] as number) & 1) === 1) {
      fed = true;
      if (course.ends[day]) {
        sets.fill(doneSet, base, base + wordCount);
        continue;
      }
      for (let w = 0; w < wordCount; w++)
        sets[base + w] = (sets[base + w] as number) | (course.next[day * wordCount + w] as number);
    }
    let any = 0;
    for (let w = 0; w < wordCount; w++) {
      const carry = w + 1 < wordCount ? (sets[base + w + 1] as number) << 31 : 0;
      const word = ((sets[base + w] as number) >>> 1) | carry;
      sets[base + w] = word;
      any |= word;
    }
    const coming = day + 1 + top;
    if (course.starts.has(coming)) {
      sets[topWord] = (sets[topWord] as number) | (1 << (top & 31));
      any = 1;
    }
    if (any === 0 && course.lastStart < coming) return undefined;
  }
  if (take && !fed) return undefined;
  return {
    sets,
    count: choice.count + (take ? 1 : 0),
    last: take ? { index: day, before: choice.last } : choice.last,
  };
}

/** Without the choices that another makes needless, fewest rounds and fullest sets first. */
function undominated(choices: Choice[], room: number): Choice[] {
  const ranked = choices
    .map((choice) => ({ choice, rank: bitCount(choice.sets) }))
    .sort((a, b) => a.choice.count - b.choice.count || b.rank - a.rank);
  const kept: Choice[] = [];
  for (const { choice } of ranked) {
    if (kept.length >= room) break;
    if (!kept.some((k) => covers(k.sets, choice.sets))) kept.push(choice);
  }
  return kept;
}

function covers(a: Int32Array, b: Int32Array): boolean {
  for (let i = 0; i < a.length; i++) if (((b[i] as number) & ~(a[i] as number)) !== 0) return false;
  return true;
}

function bitCount(sets: Int32Array): number {
  let sum = 0;
  for (let word of sets) {
    word -= (word >>> 1) & 0x55555555;
    word = (word & 0x33333333) + ((word >>> 2) & 0x33333333);
    sum += (((word + (word >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
  }
  return sum;
}
