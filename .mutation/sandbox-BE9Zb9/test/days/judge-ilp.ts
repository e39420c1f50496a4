/**
 * The problem of `src/days/schedule-problem.ts` as an integer program, written from its words
 * alone and solved by HiGHS (npm `highs`, MIT). It shares no code with the program but dates.
 *
 * A course is a path: start -> feeding -> ... -> end, over the allowed days; x[d] says whether day d
 * is a round; a path may only enter days that are. Where feedings are counted, a place on the path is a
 * day and how many feedings came before it.
 */
// @ts-nocheck

import highsModule from "highs";
import { dayNumber } from "../../src/dates.js";
import type { Course, ScheduleProblem } from "../../src/days/schedule-problem.js";

// The package's types describe a CommonJS default export; Node gives the function itself.
const loadHighs = highsModule as unknown as typeof highsModule.default;

let loaded: ReturnType<typeof loadHighs> | undefined;

interface Step {
  /** A place: the day, and the number of days more for each feeding that is counted before it. -1 for the start. */
  readonly from: number;
  /** A place, or `endOf` the course. */
  readonly to: number;
  /** Late days, and for each late window a little more. */
  readonly late: number;
}

/** A power of two, so that sums stay exact. */
const lateWindow = 1 / 128;

function lateness(days: number): number {
  return days > 0 ? days + lateWindow : 0;
}

/** After all places. */
export function endOf({ feedings }: Course, dayCount: number): number {
  return Math.max(1, feedings ?? 1) * dayCount;
}

/** Every feasible step of a course with its lateness, as the statement says. */
export function stepsOf(course: Course, days: readonly number[]): Step[] {
  const last = dayNumber(course.coverTo);
  const avoided = (course.avoidDays ?? []).map(dayNumber);
  const held = (course.heldDays ?? []).map(dayNumber);
  const isFree = (d: number): boolean => held.includes(d) || held.every((h) => h < d);
  const canFeed = days.map((d) => d <= last && !avoided.includes(d) && isFree(d));
  const skipsHeld = (from: number, to: number): boolean => held.some((h) => from < h && h < to);
  const end = endOf(course, days.length);
  const after = (d: number): { opens: number; closes: number } => {
    const begun = course.phases.filter((p) => dayNumber(p.from) <= d);
    const phase = begun.at(-1) ?? course.phases[0];
    if (!phase) throw new Error("no phase");
    return { opens: d + phase.shortestDays, closes: d + phase.longestDays };
  };
  const steps: Step[] = [];
  const stepsFrom = (
    from: { place: number; day: number; ahead: number },
    w: { opens: number; closes: number },
  ): void => {
    days.forEach((d, i) => {
      if (d > from.day && canFeed[i] && d >= w.opens && !skipsHeld(from.day, d))
        steps.push({ from: from.place, to: from.ahead + i, late: lateness(d - w.closes) });
    });
    // Stopping: as late as a feeding on the day after the last one to be covered.
    if (!skipsHeld(from.day, Infinity))
      steps.push({ from: from.place, to: end, late: lateness(last + 1 - w.closes) });
  };
  const start = { place: -1, day: -Infinity, ahead: 0 };
  if (course.feedings === 0) steps.push({ from: -1, to: end, late: 0 });
  else if (course.lastFed !== undefined) stepsFrom(start, after(dayNumber(course.lastFed)));
  else if (dayNumber(course.first.earliest) > last) steps.push({ from: -1, to: end, late: 0 });
  else
    stepsFrom(start, {
      opens: dayNumber(course.first.earliest),
      closes: Math.min(dayNumber(course.first.latest), last),
    });
  for (let before = 0; before < end; before += days.length)
    days.forEach((d, i) => {
      const place = before + i;
      const ahead = course.feedings === undefined ? 0 : before + days.length;
      if (!canFeed[i]) return;
      if (ahead === end) steps.push({ from: place, to: end, late: 0 });
      else stepsFrom({ place, day: d, ahead }, after(d));
    });
  return steps;
}

/** Shortest way to the end by late days; also the steps that lie on some shortest way. */
function punctual(steps: readonly Step[], end: number): { late: number; steps: Step[] } {
  const fromStart = new Array<number>(end + 2).fill(Infinity);
  const toEnd = new Array<number>(end + 2).fill(Infinity);
  fromStart[0] = 0;
  toEnd[end + 1] = 0;
  const byStart = [...steps].sort((a, b) => a.from - b.from);
  for (const s of byStart)
    fromStart[s.to + 1] = Math.min(at(fromStart, s.to + 1), at(fromStart, s.from + 1) + s.late);
  for (const s of byStart.reverse())
    toEnd[s.from + 1] = Math.min(at(toEnd, s.from + 1), at(toEnd, s.to + 1) + s.late);
  const late = at(toEnd, 0);
  return {
    late,
    steps: steps.filter((s) => at(fromStart, s.from + 1) + s.late + at(toEnd, s.to + 1) === late),
  };
}

function at(list: readonly number[], i: number): number {
  return list[i] ?? Infinity;
}

export interface Verdict {
  readonly lateDays: number;
  readonly rounds: number;
  /** Whether HiGHS proved it; otherwise it is the best it found in time. */
  readonly optimal: boolean;
}

/**
 * Least late days, then fewest rounds. `weigh` puts late days into the objective; otherwise each
 * course is first cut down to its punctual steps, which is much quicker.
 */
export async function judge(
  problem: ScheduleProblem,
  options: { readonly weigh?: boolean; readonly seconds?: number } = {},
): Promise<Verdict> {
  const days = problem.allowedDays.map(dayNumber);
  const n = days.length;
  const all = problem.courses.map((c) => {
    const steps = stepsOf(c, days);
    const end = endOf(c, n);
    return { end, ...(options.weigh ? { late: 0, steps } : punctual(steps, end)) };
  });
  const objective: string[] = days.map((_, d) => `x${d}`);
  const rows: string[] = [];
  all.forEach(({ steps, end }, c) => {
    const into: string[][] = Array.from({ length: end + 1 }, () => []);
    const outOf: string[][] = Array.from({ length: end + 1 }, () => []);
    steps.forEach((s, k) => {
      const y = `y${c}_${k}`;
      into[s.to]?.push(y);
      outOf[s.from + 1]?.push(y);
      if (options.weigh && s.late > 0) objective.push(`${(s.late / lateWindow) * (n + 1)} ${y}`);
    });
    rows.push(`${(outOf[0] ?? []).join(" + ")} = 1`);
    for (let place = 0; place < end; place++) {
      const enter = into[place] ?? [];
      const leave = outOf[place + 1] ?? [];
      if (enter.length > 0) rows.push(`${enter.join(" + ")} - ${leave.join(" - ")} = 0`);
    }
    for (let d = 0; d < n; d++) {
      const enter = into.slice(0, end).flatMap((ways, place) => (place % n === d ? ways : []));
      if (enter.length > 0) rows.push(`${enter.join(" + ")} - x${d} <= 0`);
    }
  });
  const text = [
    "Minimize",
    ` obj: ${wrap(objective.join(" + "))}`,
    "Subject To",
    ...rows.map((r, i) => ` r${i}: ${wrap(r)}`),
    "Binary",
    ...days.map((_, d) => ` x${d}`),
    "End",
  ].join("\n");
  loaded ??= loadHighs();
  const highs = await loaded;
  const solution = highs.solve(text, {
    ...(options.seconds !== undefined && { time_limit: options.seconds }),
    mip_rel_gap: 0,
    mip_abs_gap: 0.5,
  });
  const value = Math.round(solution.ObjectiveValue);
  const lateDays = all.reduce((sum, c) => sum + c.late, 0);
  return options.weigh
    ? {
        lateDays: Math.floor(Math.floor(value / (n + 1)) * lateWindow),
        rounds: value % (n + 1),
        optimal: solution.Status === "Optimal",
      }
    : { lateDays: Math.floor(lateDays), rounds: value, optimal: solution.Status === "Optimal" };
}

/** The format allows lines of a few hundred characters only. */
function wrap(row: string): string {
  return row.replace(/(.{200,}?) (?=[+-] )/g, "$1\n  ");
}
