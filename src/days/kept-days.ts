/** Published days, for the choice of days to keep. */
import type { Day } from "../dates.js";
import type { Published } from "../published/index.js";
import type { FeedingCourse } from "./courses.js";
import type { ScheduleProblem } from "./schedule-problem.js";

/**
 * The problem with the published days from today on.
 *
 * @param extraRounds that may be spent on keeping them, unless the published days say so themselves
 */
export function keepDays(
  problem: ScheduleProblem,
  courses: readonly FeedingCourse[],
  published: Published | undefined,
  today: Day,
  extraRounds = 0,
): ScheduleProblem {
  if (published === undefined) return problem;
  const ahead = (days: readonly Day[]): Day[] => days.filter((day) => day >= today);
  const lines = new Map(courses.map((c) => [c.course.id, `${c.planting.id}/${c.route}`]));
  return {
    ...problem,
    keepDays: ahead(published.days),
    keepExtraRounds: published.extraRounds ?? extraRounds,
    courses: problem.courses.map((course) => ({
      ...course,
      keepDays: ahead(published.feedings?.get(lines.get(course.id) ?? "") ?? []).filter(
        (day) => day <= course.coverTo,
      ),
    })),
  };
}
