/**
 * Gardens of 40 to 1,000 plantings against a number of rounds that no schedule can undercut. The
 * bound comes from `fewestRounds`; that it is one is checked against HiGHS, by
 * `choose-days-highs.test.ts`, where HiGHS can still solve the problem.
 */
import { expect, it } from "vitest";
import { dayNumber } from "../../src/dates.js";
import { chooseDays } from "../../src/days/choose-days.js";
import { courseGraph } from "../../src/days/course-graph.js";
import { fewestRounds } from "../../src/days/fewest-rounds.js";
import type { ScheduleProblem } from "../../src/days/schedule-problem.js";
import { faultsOf } from "./check-schedule.js";
import { randomProblem, usualGaps } from "./random-problem.js";

function boundOf(problem: ScheduleProblem): number {
  const dayNos = problem.allowedDays.map(dayNumber);
  const graphs = problem.courses.map((c) => courseGraph(c, dayNos));
  return fewestRounds({ graphs, dayCount: dayNos.length, effort: 5e8 }).atLeast;
}

it.each([
  { courses: 40, daysPerWeek: 1, gaps: "any" },
  { courses: 40, daysPerWeek: 2, gaps: "any" },
  { courses: 40, daysPerWeek: 3, gaps: "any" },
  { courses: 40, daysPerWeek: 4, gaps: "any" },
  { courses: 40, daysPerWeek: 7, gaps: "usual" },
  { courses: 200, daysPerWeek: 2, gaps: "any" },
  { courses: 200, daysPerWeek: 3, gaps: "any" },
  { courses: 200, daysPerWeek: 7, gaps: "usual" },
  { courses: 1000, daysPerWeek: 2, gaps: "any" },
  { courses: 1000, daysPerWeek: 3, gaps: "usual" },
])(
  "is within 2 % of the bound for $courses courses, $daysPerWeek days a week, $gaps gaps",
  ({ courses, daysPerWeek, gaps }) => {
    for (const seed of courses < 1000 ? [1, 2, 3] : [1]) {
      const problem = randomProblem(seed * 1000 + courses + daysPerWeek, {
        courses,
        weeks: 40,
        daysPerWeek,
        holes: seed - 1,
        fedShare: 0.2,
        avoidShare: 0.2,
        ...(gaps === "usual" && { gaps: usualGaps }),
      });
      const schedule = chooseDays(problem);
      expect(faultsOf(problem, schedule)).toEqual([]);
      const rounds = new Set(schedule.feedings.map((f) => f.day)).size;
      const bound = boundOf(problem);
      expect(bound).toBeLessThanOrEqual(rounds);
      expect(rounds, `seed ${seed}, bound ${bound}`).toBeLessThanOrEqual(1.02 * bound);
    }
  },
);
