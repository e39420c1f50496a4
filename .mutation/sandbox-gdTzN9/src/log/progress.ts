/** Feedings that a course with a limit no longer owes, since they were missed. */
// @ts-nocheck

import { type Day, type DaySpan, earlier, within } from "../dates.js";
import { type Course, type FeedingCourse, nextWindow } from "../days/index.js";
import { daysGiven, owingLess } from "./given.js";
import type { Past } from "./past.js";

interface Behind {
  readonly past: Pick<Past, "given" | "notGiven">;
  /** Nothing was told of the days before it, so that what isn't written down was not given. */
  readonly untoldTo: Day | undefined;
  /** Days on which a feeding can still be made up for. */
  readonly allowed: readonly Day[];
  readonly today: Day;
}

/**
 * A missed feeding counts among those that a course may have, unless it can still be made inside its
 * window. So the feedings end with the weeks they are for.
 *
 * @param courses from their beginning, with the days they avoid
 */
export function lessMissed(courses: readonly FeedingCourse[], behind: Behind): FeedingCourse[] {
  return courses.map((one) =>
    one.course.feedings === undefined
      ? one
      : { ...one, course: owingLess(one.course, missedIn(one, behind)) },
  );
}

/** The windows of a course in their order, each counted from the day before it, given or missed. */
function missedIn(one: FeedingCourse, { past, untoldTo, allowed, today }: Behind): number {
  const { course, planting, route } = one;
  const isIn = (day: Day): boolean => course.first.earliest <= day && day <= course.coverTo;
  const given = daysGiven(one, past.given).filter(isIn);
  const missed = past.notGiven
    .filter((line) => line.planting === planting.id && line.route === route)
    // What was prevented today may still be given today.
    .filter(({ day, why }) => day < today || why === "log")
    .map(({ day }) => day)
    .filter(isIn);
  let count = 0;
  let due = nextWindow(course);
  const goOnFrom = (day: Day): void => {
    due = nextWindow({ ...course, lastFed: day });
  };
  const passUntold = (before: Day): void => {
    while (untoldTo !== undefined && due.to < earlier(before, untoldTo)) {
      if (due.to >= course.coverTo) return;
      count++;
      goOnFrom(due.to);
    }
  };
  /** The last day on which the feeding missed last can be made up for. */
  let open: Day | undefined;
  for (const day of [...new Set([...given, ...missed])].sort()) {
    const isGiven = given.includes(day);
    const isAgain = open !== undefined && day <= open;
    if (isAgain && !isGiven) {
      goOnFrom(day);
      continue;
    }
    if (open !== undefined && !isAgain) count++;
    passUntold(day);
    open = isGiven ? undefined : due.to;
    goOnFrom(day);
  }
  passUntold(today);
  return open === undefined || isFree(course, allowed, { from: today, to: open })
    ? count
    : count + 1;
}

function isFree({ avoidDays }: Course, allowed: readonly Day[], span: DaySpan): boolean {
  return allowed.some((day) => within(day, span) && avoidDays?.includes(day) !== true);
}
