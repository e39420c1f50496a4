/** What was given, in its place among the courses, and where these stand after it. */
// @ts-nocheck

import { addDays, type Day, daysBetween, later } from "../dates.js";
import type { Course, FeedingCourse, ScheduledFeeding } from "../days/index.js";
import { feedingL, type Route } from "../garden/index.js";
import { given } from "../values.js";

/** One planting given stock on a day. */
export interface GivenFeeding {
  readonly planting: string;
  readonly day: Day;
  /** Its share by water; absent where nobody knows. */
  readonly stockMl?: number;
  readonly batch?: string;
  /** Absent for all that the planting was due. */
  readonly route?: Route;
  /** As it was published; where absent, what the planting gets today. */
  readonly waterL?: number;
  /** Names the published cans it was part of. */
  readonly mix?: string;
  /** Nobody wrote it down: it was published, and its day is past. */
  readonly asPublished?: true;
  /** The published day that it stands for, where that is another. */
  readonly standsFor?: Day;
}

export interface GivenStock {
  /** Absent where nobody knows. */
  readonly stockMl?: number;
  /** The bottles it was poured from, as far as that is known. */
  readonly pours: readonly { readonly batch: string; readonly ml: number }[];
  readonly waterL?: number;
  readonly mix?: string;
  readonly asPublished?: true;
  readonly standsFor?: Day;
}

/** A logged feeding in its place among the courses. */
export interface LoggedFeeding extends ScheduledFeeding {
  /** All entries of that day together. */
  readonly logged: GivenStock;
}

export function isOpen({ course }: FeedingCourse, day: Day): boolean {
  return course.first.earliest <= day && day <= course.coverTo;
}

function isOf(given: GivenFeeding, course: FeedingCourse): boolean {
  return (
    given.planting === course.planting.id &&
    (given.route === undefined || given.route === course.route)
  );
}

/** Courses that go on from what was really given, also after the end of the last of a planting. */
export function resumed(
  courses: readonly FeedingCourse[],
  given: readonly GivenFeeding[],
): FeedingCourse[] {
  return courses.map((course) => {
    const days = daysGiven(course, given, !isLast(course, courses));
    if (days.length === 0) return course;
    return { ...course, course: after(course.course, days) };
  });
}

function isLast(
  { planting, route, course }: FeedingCourse,
  all: readonly FeedingCourse[],
): boolean {
  return !all.some(
    (one) =>
      one.planting.id === planting.id && one.route === route && one.course.coverTo > course.coverTo,
  );
}

/** The days on which its planting was given what is its, as a rule up to its end. */
export function daysGiven(
  course: FeedingCourse,
  given: readonly GivenFeeding[],
  toItsEnd = true,
): Day[] {
  const own = given.filter((g) => isOf(g, course) && (!toItsEnd || g.day <= course.course.coverTo));
  return [...new Set(own.map((g) => g.day))];
}

function after(course: Course, days: readonly Day[]): Course {
  const lastFed = days.reduce(later);
  const inCourse = days.filter((day) => day >= course.first.earliest);
  if (inCourse.length > 0) return { ...owingLess(course, inCourse.length), lastFed };
  // Given before the course begins: the first feeding keeps its distance from it.
  const shortestDays = course.phases[0]?.shortestDays ?? 0;
  const earliest = later(course.first.earliest, addDays(lastFed, shortestDays));
  return { ...course, first: { earliest, latest: later(earliest, course.first.latest) } };
}

/** The course with so many feedings less to come, where they are counted. */
export function owingLess(course: Course, feedings: number): Course {
  if (course.feedings === undefined) return course;
  return { ...course, feedings: Math.max(0, course.feedings - feedings) };
}

interface DayOfCourse {
  readonly course: FeedingCourse;
  readonly day: Day;
  readonly parts: GivenFeeding[];
}

/**
 * Logged feedings as if they had been scheduled: for every course open that day or, when none is,
 * for the nearest. Entries of one day for one course become one feeding.
 *
 * @returns also what the grower ought to look at: entries for a planting without a course, which are
 *   in no feeding, or not growing that day
 */
export function asScheduled(
  given: readonly GivenFeeding[],
  courses: readonly FeedingCourse[],
  isGrowing: (planting: string, day: Day) => boolean,
): { feedings: LoggedFeeding[]; strays: GivenFeeding[] } {
  const strays: GivenFeeding[] = [];
  const entries = new Map<string, DayOfCourse>();
  for (const feeding of given) {
    const own = coursesOf(feeding, courses);
    if (own.length === 0 || !isGrowing(feeding.planting, feeding.day)) strays.push(feeding);
    const parts = sharedOut(feeding, own);
    own.forEach((course, i) => {
      const key = `${course.course.id} ${feeding.day}`;
      const entry = entries.get(key) ?? { course, day: feeding.day, parts: [] };
      entry.parts.push(parts[i] ?? feeding);
      entries.set(key, entry);
    });
  }
  return { feedings: [...entries.values()].map(loggedFeeding), strays };
}

function coursesOf(given: GivenFeeding, courses: readonly FeedingCourse[]): FeedingCourse[] {
  const own = courses.filter((course) => isOf(given, course));
  const open = own.filter((course) => isOpen(course, given.day));
  if (open.length > 0) return open;
  const awayDays = ({ course }: FeedingCourse): number =>
    Math.max(daysBetween(given.day, course.first.earliest), daysBetween(course.coverTo, given.day));
  return own.sort((a, b) => awayDays(a) - awayDays(b)).slice(0, 1);
}

/** One amount for a planting fed both ways goes by the water of each. */
function sharedOut(given: GivenFeeding, courses: readonly FeedingCourse[]): GivenFeeding[] {
  const { stockMl } = given;
  if (stockMl === undefined || courses.length < 2) return courses.map(() => given);
  const waterL = courses.map(({ planting, route }) => feedingL(planting, route));
  const totalL = waterL.reduce((sum, l) => sum + l, 0);
  return waterL.map((l) => ({
    ...given,
    stockMl: totalL === 0 ? stockMl / courses.length : (stockMl * l) / totalL,
  }));
}

function loggedFeeding({ course, day, parts }: DayOfCourse): LoggedFeeding {
  const amounts = parts.flatMap(({ stockMl }) => stockMl ?? []);
  const { waterL, mix } = parts.find((part) => part.waterL !== undefined) ?? {};
  const { standsFor } = parts.find((part) => part.standsFor !== undefined) ?? {};
  return {
    course: course.course.id,
    day,
    window: { earliest: day, latest: day },
    logged: {
      ...(amounts.length === 0 ? {} : { stockMl: amounts.reduce((sum, ml) => sum + ml, 0) }),
      pours: parts.flatMap(({ batch, stockMl }) =>
        batch === undefined || stockMl === undefined ? [] : [{ batch, ml: stockMl }],
      ),
      ...given({ waterL, mix, standsFor }),
      ...(parts.every((part) => part.asPublished) ? { asPublished: true } : {}),
    },
  };
}
