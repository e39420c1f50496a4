import { expect, it } from "vitest";
import { addDays, type Day } from "../../src/dates.js";
import { chooseDays } from "../../src/days/choose-days.js";
import type { ScheduleProblem } from "../../src/days/schedule-problem.js";
import { tryAll } from "./judge-brute.js";
import { dice, randomProblem } from "./random-problem.js";

function daysByCourse(problem: ScheduleProblem): Map<string, Day[]> {
  const schedule = chooseDays(problem);
  return new Map(
    [...problem.courses]
      .sort((a, b) => (a.id < b.id ? -1 : 1))
      .map((c) => [c.id, schedule.feedings.filter((f) => f.course === c.id).map((f) => f.day)]),
  );
}

function smallProblem(seed: number): ScheduleProblem {
  const roll = dice(seed);
  const problem = randomProblem(seed, {
    courses: roll(1, 4),
    weeks: roll(4, 9),
    daysPerWeek: roll(1, 4),
    holes: roll(0, 1),
    fedShare: 0.3,
    avoidShare: 0.3,
  });
  return { ...problem, allowedDays: problem.allowedDays.slice(0, 12) };
}

it("gives the one best schedule, day for day, of all that there are (400 small problems)", () => {
  for (let seed = 1; seed <= 400; seed++) {
    const problem = smallProblem(seed);
    const answer = tryAll(problem);
    expect(daysByCourse(problem), `seed ${seed}`).toEqual(answer.days);
    const late = chooseDays(problem).unmet.reduce((sum, u) => sum + u.lateDays, 0);
    expect(late, `seed ${seed}`).toBe(answer.lateDays);
  }
});

it("keeps published rounds and feedings as the wishes rank them (400 small problems)", () => {
  for (let seed = 1001; seed <= 1400; seed++) {
    const roll = dice(seed);
    const plain = smallProblem(seed);
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
