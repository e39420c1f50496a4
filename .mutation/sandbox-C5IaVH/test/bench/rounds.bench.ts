/**
 * How long the choice of rounds takes: `npx vitest bench --config test/vitest.config.ts rounds`.
 *
 * HiGHS (npm `highs`) finds the number of rounds only, without the wishes after it, and stands here
 * as the general tool for the same question. Growth is near linear when the time for 1,000 courses
 * is about eight times that for 125.
 */
// @ts-nocheck

import { bench, describe } from "vitest";
import { chooseDays } from "../../src/days/choose-days.js";
import { judge } from "../days/judge-ilp.js";
import { randomProblem, usualGaps } from "../days/random-problem.js";

function garden(
  courses: number,
  daysPerWeek: number,
  gaps: "any" | "usual",
  countedShare = 0,
): ReturnType<typeof randomProblem> {
  return randomProblem(courses + daysPerWeek, {
    courses,
    weeks: 40,
    daysPerWeek,
    holes: 1,
    fedShare: 0.2,
    avoidShare: 0.2,
    countedShare,
    ...(gaps === "usual" && { gaps: usualGaps }),
  });
}

describe.each([
  { daysPerWeek: 2, gaps: "usual" as const },
  { daysPerWeek: 2, gaps: "any" as const },
])("12 courses, 40 weeks, $daysPerWeek days a week, $gaps gaps", ({ daysPerWeek, gaps }) => {
  const problem = garden(12, daysPerWeek, gaps);
  bench("chooseDays", () => {
    chooseDays(problem);
  });
  bench(
    "HiGHS, rounds only",
    async () => {
      await judge(problem);
    },
    {
      iterations: 3,
      time: 0,
      warmupIterations: 0,
      warmupTime: 0,
    },
  );
});

describe("12 courses, 40 weeks, more days a week", () => {
  for (const daysPerWeek of [3, 5, 7])
    for (const gaps of ["usual", "any"] as const) {
      const problem = garden(12, daysPerWeek, gaps);
      bench(`${daysPerWeek} days, ${gaps} gaps`, () => {
        chooseDays(problem);
      });
    }
});

describe("12 courses, 40 weeks, half of them with a limit of feedings", () => {
  for (const daysPerWeek of [2, 3, 7]) {
    const problem = garden(12, daysPerWeek, "usual", 0.5);
    bench(`${daysPerWeek} days, usual gaps`, () => {
      chooseDays(problem);
    });
  }
});

describe.each([
  { daysPerWeek: 3, gaps: "any" as const },
  { daysPerWeek: 7, gaps: "usual" as const },
])("growth, 40 weeks, $daysPerWeek days a week, $gaps gaps", ({ daysPerWeek, gaps }) => {
  for (const courses of [125, 250, 500, 1000]) {
    const problem = garden(courses, daysPerWeek, gaps);
    bench(
      `${courses} courses`,
      () => {
        chooseDays(problem);
      },
      { iterations: 3, time: 0, warmupIterations: 1, warmupTime: 0 },
    );
  }
});
