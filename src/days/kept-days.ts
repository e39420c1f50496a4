/** Published days, for the choice of days to keep. */
import type { Day } from "../dates.js";
import type { Published } from "../published/index.js";
import type { FeedingCourse } from "./courses.js";
import type { ScheduleProblem } from "./schedule-problem.js";

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
  const lines = new Map<string, Day[]>();
  for (const { day, mixes } of ahead)
    for (const { route, fed } of mixes)
      for (const { planting } of fed) {
        const line = `${planting}/${route}`;
        lines.set(line, [...(lines.get(line) ?? []), day]);
      }
  const lineOf = new Map(courses.map((c) => [c.course.id, `${c.planting.id}/${c.route}`]));
  return {
    ...problem,
    keepDays: ahead.map(({ day }) => day),
    keepExtraRounds: extraRounds,
    courses: problem.courses.map((course) => ({
      ...course,
      keepDays: (lines.get(lineOf.get(course.id) ?? "") ?? []).filter(
        (day) => day <= course.coverTo,
      ),
    })),
  };
}
