/**
 * Every way of feeding every course, tried: the whole answer to a small problem, by the words of
 * `src/days/schedule-problem.ts`. Up to about 14 allowed days and a few courses.
 */
// @ts-nocheck

import { dayNumber } from "../../src/dates.js";
import type { Course, ScheduleProblem } from "../../src/days/schedule-problem.js";
import { endOf, stepsOf } from "./judge-ilp.js";

interface Way {
  readonly days: readonly number[];
  readonly bits: number;
  readonly late: number;
  readonly unpublished: number;
  readonly off: number;
}

export interface BruteAnswer {
  readonly lateDays: number;
  /** By course id, its days. */
  readonly days: ReadonlyMap<string, readonly string[]>;
}

export function tryAll(problem: ScheduleProblem): BruteAnswer {
  const dayNos = problem.allowedDays.map(dayNumber);
  const n = dayNos.length;
  const courses = [...problem.courses].sort((a, b) => (a.id < b.id ? -1 : 1));
  const ways = courses.map((c) => waysOf(c, dayNos).sort(compareWays));
  const kept = dayNos.map((_, i) => problem.keepDays?.includes(problem.allowedDays[i] as never));
  const anyKept = kept.includes(true);
  const all: { cost: readonly number[]; rounds: number; chosen: readonly Way[] }[] = [];
  for (let rounds = 0; rounds < 1 << n; rounds++) {
    const chosen = ways.map((w) => w.find((way) => (way.bits & ~rounds) === 0));
    if (!chosen.every((way) => way !== undefined)) continue;
    const sum = (of: (w: Way) => number): number => chosen.reduce((a, w) => a + of(w), 0);
    const days = bitsOf(rounds, n);
    all.push({
      rounds: days.length,
      chosen,
      cost: [
        sum((w) => w.late),
        anyKept ? days.filter((i) => !kept[i]).length : 0,
        sum((w) => w.unpublished),
        days.length,
        sum((w) => w.days.length),
        sum((w) => w.off),
        ...days,
        Infinity,
        ...chosen.flatMap((w) => [...w.days, Infinity]),
      ],
    });
  }
  const lateDays = Math.min(...all.map((a) => a.cost[0] as number));
  const punctual = all.filter((a) => a.cost[0] === lateDays);
  const fewest = Math.min(...punctual.map((a) => a.rounds));
  const extra =
    anyKept || courses.some((c) => ways.length > 0 && published(c, dayNos).length > 0)
      ? (problem.keepExtraRounds ?? 0)
      : 0;
  const best = punctual
    .filter((a) => a.rounds <= fewest + extra)
    .reduce((a, b) => (compareLists(b.cost, a.cost) < 0 ? b : a));
  return {
    lateDays: Math.floor(lateDays),
    days: new Map(
      courses.map((c, k) => [
        c.id,
        (best.chosen[k] as Way).days.map((i) => problem.allowedDays[i] as string),
      ]),
    ),
  };
}

/** Published days on which the course can still be fed. */
function published(course: Course, dayNos: readonly number[]): number[] {
  const last = dayNumber(course.coverTo);
  const avoided = (course.avoidDays ?? []).map(dayNumber);
  const held = (course.heldDays ?? []).map(dayNumber);
  return (course.keepDays ?? [])
    .map(dayNumber)
    .filter((d) => dayNos.includes(d) && d <= last && !avoided.includes(d))
    .filter((d) => held.includes(d) || held.every((h) => h < d));
}

function waysOf(course: Course, dayNos: readonly number[]): Way[] {
  const steps = stepsOf(course, dayNos);
  const end = endOf(course, dayNos.length);
  const keep = published(course, dayNos);
  const ways: Way[] = [];
  const target = (from: number): number =>
    (course.phases.filter((p) => dayNumber(p.from) <= from).at(-1) ?? course.phases[0])
      ?.targetDays ?? NaN;
  const go = (at: number, way: Way): void => {
    for (const step of steps) {
      if (step.from !== at) continue;
      const late = way.late + step.late;
      if (step.to === end) {
        ways.push({ ...way, late });
        continue;
      }
      const i = step.to % dayNos.length;
      const day = dayNos[i] as number;
      const before =
        at >= 0
          ? (dayNos[at % dayNos.length] as number)
          : course.lastFed === undefined
            ? undefined
            : dayNumber(course.lastFed);
      go(step.to, {
        days: [...way.days, i],
        bits: way.bits | (1 << i),
        late,
        unpublished: way.unpublished + (keep.length > 0 && !keep.includes(day) ? 1 : 0),
        off: way.off + (before === undefined ? 0 : (day - before - target(before)) ** 2),
      });
    }
  };
  go(-1, { days: [], bits: 0, late: 0, unpublished: 0, off: 0 });
  return ways;
}

function compareWays(a: Way, b: Way): number {
  return (
    a.late - b.late ||
    a.unpublished - b.unpublished ||
    a.days.length - b.days.length ||
    a.off - b.off ||
    compareLists(a.days, b.days)
  );
}

function compareLists(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.max(a.length, b.length); i++) {
    const x = a[i] ?? Infinity;
    const y = b[i] ?? Infinity;
    if (x !== y) return x - y;
  }
  return 0;
}

function bitsOf(bits: number, n: number): number[] {
  return Array.from({ length: n }, (_, i) => i).filter((i) => (bits >> i) & 1);
}
