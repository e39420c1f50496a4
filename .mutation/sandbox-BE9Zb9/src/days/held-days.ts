/**
 * Published days that weather doesn't move. Where stages follow the warmth of single days, each new
 * day shifts them a little; a published feeding moves only when its day leaves its window or its stage,
 * and in the days just ahead not even then.
 */
// @ts-nocheck

import { addDays, type Day, daysBetween, earlier, later } from "../dates.js";
import type { Planting } from "../garden/index.js";
import type { FedLine } from "../season/index.js";
import type { FeedingCourse } from "./courses.js";
import { nextWindow } from "./fixed-day.js";
import type { Course } from "./schedule-problem.js";

/** So many days after today nothing moves. */
export const nearDays = 3;

/** Weather shifts stages by days: a feeding farther off its course than this was edited away from it. */
const mostShiftDays = 14;

/**
 * Courses that reach as far as what was published of them for the days up to today and just ahead,
 * so that what was given, or soon will be, stays part of them.
 *
 * @param steady published feedings that stand, of plantings whose stages follow the weather
 */
export function stretched(
  courses: readonly FeedingCourse[],
  steady: readonly FedLine[],
  today: Day,
): FeedingCourse[] {
  const lastNear = addDays(today, nearDays);
  const owned = steady
    .filter(({ day }) => day <= lastNear)
    .map((line) => ({ ...line, owner: nearest(line, courses) }));
  return courses.map((one) =>
    owned
      .filter(({ owner }) => owner === one.course.id)
      .reduce((wider, { day }) => ({ ...wider, course: reaching(wider.course, day) }), one),
  );
}

/** Of the courses that are not far off, the nearest. */
function nearest(line: FedLine, courses: readonly FeedingCourse[]): string | undefined {
  const [found] = courses
    .filter((one) => isOf(line, one) && isThere(one.planting, line.day))
    .map(({ course }) => ({ id: course.id, offDays: daysOff(course, line.day) }))
    .sort((a, b) => a.offDays - b.offDays);
  return found !== undefined && found.offDays <= mostShiftDays ? found.id : undefined;
}

function daysOff({ first, coverTo }: Course, day: Day): number {
  return Math.max(0, daysBetween(day, first.earliest), daysBetween(coverTo, day));
}

function reaching(course: Course, day: Day): Course {
  const { first, coverTo } = course;
  return {
    ...course,
    first: { ...first, earliest: earlier(first.earliest, day) },
    coverTo: later(coverTo, day),
  };
}

function isOf({ planting, route }: FedLine, course: FeedingCourse): boolean {
  return planting === course.planting.id && route === course.route;
}

/** What the grower does to the plants goes before. */
function isThere({ transplanted, pickedUntil, removed }: Planting, day: Day): boolean {
  return (
    (transplanted === undefined || transplanted <= day) &&
    (pickedUntil === undefined || day <= pickedUntil) &&
    (removed === undefined || day <= removed)
  );
}

/**
 * Courses that are fed on their published days after today, up to the first that doesn't fit: one the
 * grower doesn't feed on, or before its window opens, or, farther ahead, after it closes.
 *
 * @param courses as they go on after today's feeding
 * @param steady see `stretched`
 */
export function holding(
  courses: readonly FeedingCourse[],
  steady: readonly FedLine[],
  allowed: readonly Day[],
  today: Day,
): FeedingCourse[] {
  const lastNear = addDays(today, nearDays);
  const isAllowed = new Set(allowed);
  return courses.map((one) => {
    const { course } = one;
    const heldDays: Day[] = [];
    let due = nextWindow(course);
    const coming = steady.filter(
      (line) => isOf(line, one) && line.day > today && line.day >= course.first.earliest,
    );
    for (const { day } of coming) {
      const isFree = isAllowed.has(day) && course.avoidDays?.includes(day) !== true;
      const isInWindow = due.from <= day && (day <= due.to || day <= lastNear);
      const isOwed = heldDays.length < (course.feedings ?? Infinity) && day <= course.coverTo;
      if (!isFree || !isInWindow || !isOwed) break;
      heldDays.push(day);
      due = nextWindow({ ...course, lastFed: day });
    }
    return heldDays.length === 0 ? one : { ...one, course: { ...course, heldDays } };
  });
}
