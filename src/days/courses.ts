/** Fed spans of plantings -> courses of feedings: windows, gaps and the day to be covered. */
import { addDays, type Day, daysBetween, type DaySpan, earlier, later } from "../dates.js";
import type { Planting, Route } from "../garden/index.js";
import type { FedSpan, FeedInterval, FeedRule } from "../rules/index.js";
import { given } from "../values.js";
import type { Course, GapPhase } from "./schedule-problem.js";

/** A course with what its days will be used for. */
export interface FeedingCourse {
  readonly course: Course;
  readonly planting: Planting;
  readonly route: Route;
  readonly spans: readonly FedSpan[];
  /** The day of the sign that opened it, after the feeding of the planting had ended. */
  readonly openedBySignOn?: Day;
}

/** One course for each unbroken run of fed spans of one route, cut to the season. */
export function feedingCourses(
  planting: Planting,
  spans: readonly FedSpan[],
  season: DaySpan,
): FeedingCourse[] {
  return unbrokenRuns(spans).flatMap((run, i): FeedingCourse[] => {
    const inSeason = run
      .map((span) => ({
        ...span,
        from: later(span.from, season.from),
        to: earlier(span.to, season.to),
      }))
      .filter((span) => span.from <= span.to);
    const [first, last] = [inSeason[0], inSeason.at(-1)];
    if (first === undefined || last === undefined) return [];
    const course: Course = {
      id: `${planting.id}/${first.route}${i === 0 ? "" : `/${i + 1}`}`,
      first: {
        earliest: first.from,
        latest: earlier(addDays(first.from, first.rule.firstWithinDays), last.to),
      },
      phases: inSeason.map((span): GapPhase => ({
        from: span.from,
        ...intervalFor(planting, span.rule),
      })),
      ...given({ feedings: mostFeedings(planting, inSeason) }),
      coverTo: last.to,
    };
    return [{ course, planting, route: first.route, spans: inSeason }];
  });
}

function unbrokenRuns(spans: readonly FedSpan[]): FedSpan[][] {
  const runs: FedSpan[][] = [];
  for (const span of spans) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run && last?.route === span.route && daysBetween(last.to, span.from) === 1) run.push(span);
    else runs.push([span]);
  }
  return runs;
}

/** As many as the rule at its end has it: one for the first weeks alone says nothing of the rest. */
function mostFeedings({ through }: Planting, spans: readonly FedSpan[]): number | undefined {
  return through === "harvest" ? undefined : spans.at(-1)?.rule.feedings;
}

/** Around a wish this many days either way: a week in all, so that one feeding day a week serves it. */
const playDays = 3;

/** The rule's interval, or a week around the planting's own wish within the rule's bounds. */
export function intervalFor(planting: Planting, rule: FeedRule): FeedInterval {
  const { shortestDays, longestDays } = rule.interval;
  const wish = planting.intervalDays;
  if (wish === undefined) return rule.interval;
  return {
    shortestDays: Math.max(shortestDays, wish - playDays),
    targetDays: wish,
    longestDays: Math.min(longestDays, wish + playDays),
  };
}

/** The rule that feeds on a day of the course. */
export function ruleOn(course: FeedingCourse, day: Day): FeedRule {
  const span = course.spans.findLast((s) => s.from <= day) ?? course.spans[0];
  if (span === undefined) throw new Error(`course ${course.course.id} has no spans`);
  return span.rule;
}
