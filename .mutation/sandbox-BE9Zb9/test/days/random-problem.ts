/** Seeded gardens for tests: the same seed gives the same problem on every machine. */
// @ts-nocheck

import { type Day, dayFromNumber, dayNumber } from "../../src/dates.js";
import type { Course, GapPhase, ScheduleProblem } from "../../src/days/schedule-problem.js";

export interface ProblemShape {
  readonly courses: number;
  readonly weeks: number;
  readonly daysPerWeek: number;
  /** Stretches without allowed days. */
  readonly holes?: number;
  /** Shortest, target and longest gaps to draw from; any within 5 to 21 days when absent. */
  readonly gaps?: readonly Gap[];
  /** Share of courses with a feeding already given, and with days to avoid. */
  readonly fedShare?: number;
  readonly avoidShare?: number;
  /** Share of courses that owe at most 0 to 6 feedings. */
  readonly countedShare?: number;
}

export type Gap = readonly [shortestDays: number, targetDays: number, longestDays: number];

/** Gaps such as a grower's rules have: few kinds, none of them narrow. */
export const usualGaps: readonly Gap[] = [
  [5, 7, 10],
  [7, 7, 10],
  [7, 10, 14],
  [10, 14, 21],
  [12, 14, 16],
  [14, 14, 21],
];

export type Dice = (low: number, high: number) => number;

/** Whole numbers from low to high, both possible (mulberry32). */
export function dice(seed: number): Dice {
  let state = seed >>> 0;
  return (low, high) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return low + (((t ^ (t >>> 14)) >>> 0) % (high - low + 1));
  };
}

const seasonStart = "2027-03-01" as Day;

export function randomProblem(seed: number, shape: ProblemShape): ScheduleProblem {
  const roll = dice(seed);
  const from = dayNumber(seasonStart);
  const length = shape.weeks * 7;
  const weekdays = shuffled([0, 1, 2, 3, 4, 5, 6], roll).slice(0, shape.daysPerWeek);
  const away = new Set<number>();
  for (let h = 0; h < (shape.holes ?? 0); h++) {
    const start = from + roll(0, length);
    for (let d = start; d < start + roll(7, 21); d++) away.add(d);
  }
  const allowedDays: Day[] = [];
  for (let d = from; d < from + length; d++)
    if (weekdays.includes(d % 7) && !away.has(d)) allowedDays.push(dayFromNumber(d));
  const courses = Array.from({ length: shape.courses }, (_, i) =>
    randomCourse(`c${String(i).padStart(4, "0")}`, roll, from, length, shape),
  );
  // Dice of their own: the same garden with and without.
  const count = dice(seed + 0x10000);
  const isCounted = (): boolean => count(1, 100) <= 100 * (shape.countedShare ?? 0);
  return {
    allowedDays,
    courses: courses.map((c) => (isCounted() ? { ...c, feedings: count(0, 6) } : c)),
  };
}

function randomCourse(
  id: string,
  roll: Dice,
  from: number,
  length: number,
  shape: ProblemShape,
): Course {
  const span = Math.min(length, 7 * roll(2, 35));
  const earliest = from + roll(0, length - span);
  const coverTo = earliest + span - 1;
  const phases: GapPhase[] = [];
  for (let d = earliest; phases.length === 0 || (d < coverTo && phases.length < 3);) {
    const [shortestDays, targetDays, longestDays] = shape.gaps
      ? (shape.gaps[roll(0, shape.gaps.length - 1)] as Gap)
      : anyGap(roll);
    phases.push({ from: dayFromNumber(d), shortestDays, targetDays, longestDays });
    d += roll(14, 120);
  }
  const percent = (share: number | undefined): boolean => roll(1, 100) <= 100 * (share ?? 0);
  return {
    id,
    first: { earliest: dayFromNumber(earliest), latest: dayFromNumber(earliest + roll(3, 10)) },
    ...(percent(shape.fedShare) && { lastFed: dayFromNumber(earliest - roll(0, 6)) }),
    phases,
    coverTo: dayFromNumber(coverTo),
    ...(percent(shape.avoidShare) && {
      avoidDays: Array.from({ length: 10 }, () => dayFromNumber(earliest + roll(0, span))),
    }),
  };
}

function anyGap(roll: Dice): Gap {
  const shortestDays = roll(5, 14);
  const longestDays = Math.min(21, shortestDays + roll(1, 9));
  return [shortestDays, roll(shortestDays, longestDays), longestDays];
}

function shuffled<T>(items: readonly T[], roll: Dice): T[] {
  const out = [...items];
  for (let i = out.length - 1; i > 0; i--) {
    const j = roll(0, i);
    [out[i], out[j]] = [out[j] as T, out[i] as T];
  }
  return out;
}
