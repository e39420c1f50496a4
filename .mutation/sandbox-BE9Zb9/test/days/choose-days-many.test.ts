/**
 * Gardens of 40 to 1,000 plantings against the fewest rounds that there can be. HiGHS proves the
 * numbers for any gaps (see `judge-ilp.ts`), most of them within seconds; the first of 40 courses fed
 * on 4 days a week, and those with usual gaps, take it too long, and were proven by a search from
 * both ends of the season that counts rounds which no schedule can do without.
 */
// @ts-nocheck

import { expect, it } from "vitest";
import { chooseDays } from "../../src/days/choose-days.js";
import { faultsOf } from "./check-schedule.js";
import { randomProblem, usualGaps } from "./random-problem.js";

it.each([
  { courses: 40, daysPerWeek: 1, gaps: "any", fewest: [39, 37, 37] },
  { courses: 40, daysPerWeek: 2, gaps: "any", fewest: [60, 58, 54] },
  { courses: 40, daysPerWeek: 3, gaps: "any", fewest: [66, 60, 64] },
  { courses: 40, daysPerWeek: 4, gaps: "any", fewest: [56, 69, 64] },
  { courses: 40, daysPerWeek: 7, gaps: "usual", fewest: [35, 35, 37] },
  { courses: 200, daysPerWeek: 2, gaps: "any", fewest: [73, 72, 68] },
  { courses: 200, daysPerWeek: 3, gaps: "any", fewest: [104, 97, 92] },
  { courses: 200, daysPerWeek: 7, gaps: "usual", fewest: [45, 54, 54] },
  { courses: 1000, daysPerWeek: 2, gaps: "any", fewest: [80] },
  { courses: 1000, daysPerWeek: 3, gaps: "usual", fewest: [84] },
  { courses: 40, daysPerWeek: 2, gaps: "any", countedShare: 0.7, fewest: [48, 44, 40] },
  { courses: 40, daysPerWeek: 3, gaps: "any", countedShare: 0.7, fewest: [46, 45, 45] },
  { courses: 200, daysPerWeek: 2, gaps: "any", countedShare: 0.7, fewest: [72, 69, 65] },
])(
  "is within 2 % of the fewest rounds for $courses courses, $daysPerWeek days a week, $gaps gaps, $countedShare counted",
  ({ courses, daysPerWeek, gaps, countedShare = 0, fewest }) => {
    fewest.forEach((least, i) => {
      const seed = i + 1;
      const problem = randomProblem(seed * 1000 + courses + daysPerWeek, {
        courses,
        weeks: 40,
        daysPerWeek,
        holes: seed - 1,
        fedShare: 0.2,
        avoidShare: 0.2,
        countedShare,
        ...(gaps === "usual" && { gaps: usualGaps }),
      });
      const schedule = chooseDays(problem);
      expect(faultsOf(problem, schedule)).toEqual([]);
      const rounds = new Set(schedule.feedings.map((f) => f.day)).size;
      expect(rounds, `seed ${seed}`).toBeGreaterThanOrEqual(least);
      expect(rounds, `seed ${seed}`).toBeLessThanOrEqual(1.02 * least);
    });
  },
);
