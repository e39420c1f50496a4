/** Published days, for the choice of days to keep. */
// @ts-nocheck

import type { Day } from "../dates.js";
import type { Published } from "../published/index.js";
import type { FedLine } from "../season/index.js";
import { grouped } from "../values.js";
import type { FeedingCourse } from "./courses.js";
import type { ScheduleProblem } from "./schedule-problem.js";

/** Each planting's published feedings, by day. */
export function feedingsOf({ rounds }: Pick<Published, "rounds">): FedLine[] {
  return rounds.flatMap(({ day, mixes }) =>
    mixes.flatMap(({ route, fed }) => fed.map(({ planting }) => ({ planting, route, day }))),
  );
}

/**
 * The problem with the published days from today on.
 *
 * @param extraRounds above the fewest, that may be spent on keeping them
 */
export function keepDays(
  problem: ScheduleProblem,
  courses: readonly FeedingCourse[],
  published: Published | undefined,
  extraRounds: number,
  today: Day,
): ScheduleProblem {
  if (published === undefined) return problem;
  const ahead = published.rounds.filter(({ day }) => day >= today);
  const lines = grouped(
    feedingsOf({ rounds: ahead }),
    ({ planting, route }) => `${planting}/${route}`,
  );
  const lineOf = new Map(courses.map((c) => [c.course.id, `${c.planting.id}/${c.route}`]));
  return {
    ...problem,
    keepDays: ahead.map(({ day }) => day),
    keepExtraRounds: extraRounds,
    courses: problem.courses.map((course) => ({
      ...course,
      keepDays: (lines.get(lineOf.get(course.id) ?? "") ?? [])
        .map(({ day }) => day)
        .filter((day) => day <= course.coverTo),
    })),
  };
}
