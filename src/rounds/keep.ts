/** Days already published, from an earlier plan or calendar, for the choice of days to keep. */
import type { Day } from "../dates.js";
import type { Plan } from "../season-plan.js";
import type { FeedingCourse } from "./courses.js";
import type { ScheduleProblem } from "./schedule-problem.js";

export interface Published {
  /** Days that had a round. */
  readonly days: readonly Day[];
  /** Days of each planting and route, where the earlier plan tells them: `planting/route`. */
  readonly feedings?: ReadonlyMap<string, readonly Day[]>;
  /** Rounds above the fewest that may be spent on keeping them. */
  readonly extraRounds: number;
}

/** What an earlier plan has published. */
export function publishedBy(plan: Plan, extraRounds: number): Published {
  const feedings = new Map<string, Day[]>();
  for (const { day, beds } of plan.rounds)
    for (const { route, feedings: fed } of beds.flatMap((bed) => bed.mixes))
      for (const { planting } of fed) {
        const line = `${planting}/${route}`;
        feedings.set(line, [...(feedings.get(line) ?? []), day]);
      }
  const days = plan.rounds.filter(({ beds }) => beds.length > 0).map(({ day }) => day);
  return { days, feedings, extraRounds };
}

/** The problem with the published days from today on. */
export function keepDays(
  problem: ScheduleProblem,
  courses: readonly FeedingCourse[],
  published: Published | undefined,
  today: Day,
): ScheduleProblem {
  if (published === undefined) return problem;
  const ahead = (days: readonly Day[]): Day[] => days.filter((day) => day >= today);
  const lines = new Map(courses.map((c) => [c.course.id, `${c.planting.id}/${c.route}`]));
  return {
    ...problem,
    keepDays: ahead(published.days),
    keepExtraRounds: published.extraRounds,
    courses: problem.courses.map((course) => ({
      ...course,
      keepDays: ahead(published.feedings?.get(lines.get(course.id) ?? "") ?? []).filter(
        (day) => day <= course.coverTo,
      ),
    })),
  };
}
