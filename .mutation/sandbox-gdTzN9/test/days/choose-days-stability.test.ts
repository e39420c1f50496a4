/**
 * Stability as `src/days/schedule-problem.ts` states it: a published schedule is given back as
 * `keepDays`, one course is added, moved or taken away, and the others are watched.
 */
// @ts-nocheck

import { expect, it } from "vitest";
import { addDays, type Day } from "../../src/dates.js";
import { chooseDays } from "../../src/days/choose-days.js";
import type { Course, Schedule, ScheduleProblem } from "../../src/days/schedule-problem.js";
import { dice, randomProblem } from "./random-problem.js";

const seeds = Array.from({ length: 40 }, (_, i) => i + 1);

function gardenOf(seed: number): ScheduleProblem {
  const roll = dice(seed);
  return randomProblem(seed, {
    courses: roll(2, 10),
    weeks: roll(20, 40),
    daysPerWeek: roll(1, 3),
    holes: roll(0, 2),
    fedShare: 0.2,
    avoidShare: 0.2,
    countedShare: 0.3,
  });
}

function roundsOf(s: Schedule): Day[] {
  return [...new Set(s.feedings.map((f) => f.day))];
}

function daysOf(s: Schedule, course: string): Day[] {
  return s.feedings.filter((f) => f.course === course).map((f) => f.day);
}

/** The problem with everything in `before` published. */
function keeping(problem: ScheduleProblem, before: Schedule): ScheduleProblem {
  return {
    ...problem,
    keepDays: roundsOf(before),
    courses: problem.courses.map((c) => ({ ...c, keepDays: daysOf(before, c.id) })),
  };
}

/** Rounds when all courses but `changed` stay on the days they have. */
function roundsWithOthersFixed(
  problem: ScheduleProblem,
  before: Schedule,
  changed: Course | undefined,
): number {
  const fixed = new Set(
    problem.courses.filter((c) => c.id !== changed?.id).flatMap((c) => daysOf(before, c.id)),
  );
  if (!changed) return fixed.size;
  return fixed.size + fewestNewDays(problem.allowedDays, changed, fixed);
}

/** Fewest days outside `fixed` for a course by itself, when rounds cost nothing but new days do. */
function fewestNewDays(allowed: readonly Day[], course: Course, fixed: ReadonlySet<Day>): number {
  const alone = chooseDays({
    allowedDays: allowed,
    courses: [{ ...course, keepDays: [...fixed] }],
    keepExtraRounds: allowed.length,
  });
  return daysOf(alone, course.id).filter((d) => !fixed.has(d)).length;
}

function moved(problem: ScheduleProblem, before: Schedule, after: Schedule, but: string): string[] {
  return problem.courses
    .filter((c) => c.id !== but && daysOf(before, c.id).join() !== daysOf(after, c.id).join())
    .map((c) => c.id);
}

function shifted(course: Course, days: number): Course {
  return {
    id: course.id,
    first: {
      earliest: addDays(course.first.earliest, days),
      latest: addDays(course.first.latest, days),
    },
    phases: course.phases.map((p) => ({ ...p, from: addDays(p.from, days) })),
    coverTo: addDays(course.coverTo, days),
  };
}

it("changes nothing when nothing has changed", () => {
  for (const seed of seeds) {
    const garden = gardenOf(seed);
    const before = chooseDays(garden);
    expect(chooseDays(keeping(garden, before)), `seed ${seed}`).toEqual(before);
  }
});

it("does not depend on the order of courses", () => {
  for (const seed of seeds) {
    const garden = gardenOf(seed);
    const turned = { ...garden, courses: [...garden.courses].reverse() };
    expect(chooseDays(turned), `seed ${seed}`).toEqual(chooseDays(garden));
  }
});

it.each([
  ["added", (g: ScheduleProblem) => ({ old: g.courses.slice(1), now: g.courses })],
  ["taken away", (g: ScheduleProblem) => ({ old: g.courses, now: g.courses.slice(1) })],
  [
    "moved by a week",
    (g: ScheduleProblem) => ({
      old: g.courses,
      now: [shifted(g.courses[0] as Course, 7), ...g.courses.slice(1)],
    }),
  ],
])("moves no feeding of others when one course is %s, unless that saves a round", (_, change) => {
  let stayed = 0;
  for (const seed of seeds) {
    const garden = gardenOf(seed);
    const { old, now } = change(garden);
    const changedId = (garden.courses[0] as Course).id;
    const before = chooseDays({ ...garden, courses: old });
    const problem = keeping({ ...garden, courses: now }, before);
    const after = chooseDays(problem);
    const others = moved({ ...garden, courses: garden.courses.slice(1) }, before, after, changedId);
    if (others.length === 0) {
      stayed++;
      continue;
    }
    const changed = now.find((c) => c.id === changedId);
    const fixed = roundsWithOthersFixed({ ...garden, courses: now }, before, changed);
    expect(roundsOf(after).length, `seed ${seed}: ${others.join()} moved`).toBeLessThan(fixed);
  }
  // Moving is the exception.
  expect(stayed).toBeGreaterThan(seeds.length / 3);
});

it("spends no round and no late day on published days unless told to, and no more than told", () => {
  for (const seed of seeds) {
    const garden = gardenOf(seed);
    const roll = dice(seed + 5000);
    const best = chooseDays(garden);
    const published = garden.allowedDays.filter(() => roll(1, 3) === 1);
    for (const extra of [0, 2]) {
      const kept = chooseDays({ ...garden, keepDays: published, keepExtraRounds: extra });
      const late = (s: Schedule): number => s.unmet.reduce((sum, u) => sum + u.lateDays, 0);
      expect(late(kept), `seed ${seed}`).toBe(late(best));
      const more = roundsOf(kept).length - roundsOf(best).length;
      expect(more, `seed ${seed}`).toBeGreaterThanOrEqual(0);
      expect(more, `seed ${seed}`).toBeLessThanOrEqual(extra);
      const fresh = (s: Schedule): number =>
        roundsOf(s).filter((d) => !published.includes(d)).length;
      expect(fresh(kept), `seed ${seed}`).toBeLessThanOrEqual(fresh(best));
    }
  }
});
