/** Fed spans of plantings -> courses of feedings: windows, gaps and the day to be covered. */
// @ts-nocheck

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

/**
 * One course for each unbroken run of fed spans of one route, cut to the season. A rule that feeds only
 * so many times counts its own feedings alone: it has a course of its own.
 */
export function feedingCourses(
  planting: Planting,
  spans: readonly FedSpan[],
  season: DaySpan,
): FeedingCourse[] {
  const runs = unbrokenRuns(spans).flatMap((run) =>
    planting.through === "harvest" ? [run] : byLimit(run, planting),
  );
  return runs.flatMap((run, i): FeedingCourse[] => {
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

/**
 * Apart where the number of feedings changes. The course before ends as long before the next one as its
 * gap is short; where it has no day left for that, it stays joined, under the number of the next.
 */
function byLimit(run: readonly FedSpan[], planting: Planting): FedSpan[][] {
  const parts: FedSpan[][] = [];
  for (const span of run) {
    const part = parts.at(-1);
    const last = part?.at(-1);
    if (part === undefined || last === undefined) parts.push([span]);
    else if (last.rule.feedings === span.rule.feedings) part.push(span);
    else {
      const to = addDays(span.from, -intervalFor(planting, last.rule).shortestDays);
      if (to < last.from) part.push(span);
      else {
        part[part.length - 1] = { ...last, to };
        parts.push([span]);
      }
    }
  }
  return parts;
}

/** As many as the rule at its end has it. */
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
