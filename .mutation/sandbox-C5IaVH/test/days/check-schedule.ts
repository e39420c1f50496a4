/**
 * Whether a schedule is a feasible answer that tells the truth about itself, by the words of
 * `src/days/schedule-problem.ts`; every fault is named.
 */
// @ts-nocheck

import { addDays, type Day, daysBetween } from "../../src/dates.js";
import type {
  Course,
  Schedule,
  ScheduleProblem,
  UnmetWindow,
} from "../../src/days/schedule-problem.js";

export function faultsOf(problem: ScheduleProblem, schedule: Schedule): string[] {
  const faults: string[] = [];
  const allowed = new Set(problem.allowedDays);
  const unmet: UnmetWindow[] = [];
  for (const course of problem.courses) {
    const say = (what: string): void => {
      faults.push(`${course.id}: ${what}`);
    };
    let window = firstWindow(course);
    const own = schedule.feedings.filter((f) => f.course === course.id);
    const held = course.heldDays ?? [];
    if (held.some((d, i) => own[i]?.day !== d)) say(`not fed as held: ${held.join()}`);
    for (const [i, f] of own.entries()) {
      if (!window) say(`fed on ${f.day} though done`);
      if (!allowed.has(f.day)) say(`${f.day} is not allowed`);
      if (course.avoidDays?.includes(f.day)) say(`${f.day} is avoided`);
      if (f.day > course.coverTo) say(`${f.day} lies after the course`);
      if (window && f.day < window.earliest) say(`${f.day} comes before ${window.earliest}`);
      if (window && JSON.stringify(window) !== JSON.stringify(f.window))
        say(`${f.day} names a wrong window`);
      if (window && f.day > window.latest)
        unmet.push({
          course: course.id,
          window,
          fedOn: f.day,
          lateDays: daysBetween(window.latest, f.day),
        });
      window = windowAfter(course, f.day);
      const isDone = window.latest > course.coverTo || i + 1 === course.feedings;
      if (isDone && i + 1 >= held.length) window = undefined;
    }
    if (window)
      unmet.push({
        course: course.id,
        window,
        lateDays: daysBetween(window.latest, course.coverTo) + 1,
      });
  }
  const inOrder = [...schedule.feedings].sort(
    (a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0) || (a.course < b.course ? -1 : 1),
  );
  if (JSON.stringify(inOrder) !== JSON.stringify(schedule.feedings)) faults.push("not in order");
  const told = new Set(schedule.unmet.map((u) => JSON.stringify(u)));
  for (const u of unmet)
    if (!told.delete(JSON.stringify(u))) faults.push(`untold: ${JSON.stringify(u)}`);
  for (const u of told) faults.push(`told without cause: ${u}`);
  return faults;
}

export interface Window {
  readonly earliest: Day;
  readonly latest: Day;
}

export function windowAfter(course: Course, day: Day): Window {
  const phase = course.phases.filter((p) => p.from <= day).at(-1) ?? course.phases[0];
  if (!phase) throw new Error("no phase");
  return { earliest: addDays(day, phase.shortestDays), latest: addDays(day, phase.longestDays) };
}

export function firstWindow(course: Course): Window | undefined {
  if (course.feedings === 0) return undefined;
  if (course.lastFed !== undefined) {
    const window = windowAfter(course, course.lastFed);
    return window.latest > course.coverTo ? undefined : window;
  }
  const { earliest, latest } = course.first;
  if (earliest > course.coverTo) return undefined;
  return { earliest, latest: latest > course.coverTo ? course.coverTo : latest };
}
