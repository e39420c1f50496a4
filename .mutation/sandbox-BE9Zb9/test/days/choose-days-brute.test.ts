// @ts-nocheck
import { expect, it } from "vitest";
import { addDays, type Day } from "../../src/dates.js";
import { chooseDays } from "../../src/days/choose-days.js";
import type { Course, ScheduleProblem } from "../../src/days/schedule-problem.js";
import { faultsOf, firstWindow, windowAfter } from "./check-schedule.js";
import { tryAll } from "./judge-brute.js";
import { type Dice, dice, randomProblem } from "./random-problem.js";

function daysByCourse(problem: ScheduleProblem): Map<string, Day[]> {
  const schedule = chooseDays(problem);
  return new Map(
    [...problem.courses]
      .sort((a, b) => (a.id < b.id ? -1 : 1))
      .map((c) => [c.id, schedule.feedings.filter((f) => f.course === c.id).map((f) => f.day)]),
  );
}

function smallProblem(seed: number, countedShare = 0): ScheduleProblem {
  const roll = dice(seed);
  const problem = randomProblem(seed, {
    countedShare,
    courses: roll(1, 4),
    weeks: roll(4, 9),
    daysPerWeek: roll(1, 4),
    holes: roll(0, 1),
    fedShare: 0.3,
    avoidShare: 0.3,
  });
  return { ...problem, allowedDays: problem.allowedDays.slice(0, 12) };
}

/** A few feedings of some courses held, each on any day that it could be fed on. */
function withHeldDays(problem: ScheduleProblem, roll: Dice): ScheduleProblem {
  const courses = problem.courses.map((course): Course => {
    const heldDays: Day[] = [];
    const most = Math.min(roll(0, 3), course.feedings ?? Infinity);
    let window = firstWindow(course);
    for (let n = 0; n < most && window !== undefined; n++) {
      const { earliest } = window;
      const days = problem.allowedDays.filter(
        (d) => d >= earliest && d <= course.coverTo && !course.avoidDays?.includes(d),
      );
      const day = days[roll(0, Math.min(3, days.length - 1))];
      if (day === undefined) break;
      heldDays.push(day);
      window = windowAfter(course, day);
    }
    return { ...course, heldDays };
  });
  return { ...problem, courses };
}

function lateDays(problem: ScheduleProblem): number {
  return chooseDays(problem).unmet.reduce((sum, u) => sum + u.lateDays, 0);
}

it.each([
  ["courses without limit", 1, 0],
  ["courses that owe only so many feedings", 2001, 0.7],
])(
  "gives the one best schedule, day for day, of all that there are (400 of %s)",
  (_, from, share) => {
    for (let seed = from; seed < from + 400; seed++) {
      const problem = smallProblem(seed, share);
      const answer = tryAll(problem);
      expect(daysByCourse(problem), `seed ${seed}`).toEqual(answer.days);
      expect(lateDays(problem), `seed ${seed}`).toBe(answer.lateDays);
    }
  },
);

it("feeds on held days, and the best around them (400 small problems)", () => {
  for (let seed = 3001; seed <= 3400; seed++) {
    const problem = withHeldDays(smallProblem(seed, 0.5), dice(seed + 1));
    const answer = tryAll(problem);
    expect(faultsOf(problem, chooseDays(problem)), `seed ${seed}`).toEqual([]);
    expect(daysByCourse(problem), `seed ${seed}`).toEqual(answer.days);
    expect(lateDays(problem), `seed ${seed}`).toBe(answer.lateDays);
  }
});

it.each([
  ["courses without limit", 1001, 0],
  ["counted ones", 4001, 0.5],
])("keeps published rounds and feedings as the wishes rank them (400 of %s)", (_, from, share) => {
  for (let seed = from; seed < from + 400; seed++) {
    const roll = dice(seed);
    const plain = smallProblem(seed, share);
    // Any days at all: some allowed, some not, some out of a course's reach.
    const some = (share: number): Day[] =>
      plain.allowedDays
        .filter(() => roll(1, 100) <= share)
        .map((d) => (roll(1, 10) === 1 ? addDays(d, 1) : d));
    const problem: ScheduleProblem = {
      ...plain,
      ...(roll(0, 3) > 0 && { keepDays: some(40) }),
      keepExtraRounds: roll(0, 2),
      courses: plain.courses.map((c) => ({ ...c, ...(roll(0, 2) > 0 && { keepDays: some(30) }) })),
    };
    expect(daysByCourse(problem), `seed ${seed}`).toEqual(tryAll(problem).days);
  }
});
