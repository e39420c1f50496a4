/** What the log says was given: the past as it was, and where the courses stand now. */
import { addDays, later, type Day } from "../dates.js";
import type { Garden, LogEntry, Planting } from "../garden/index.js";
import type { FeedingCourse } from "./courses.js";
import type { Course, ScheduledFeeding } from "./schedule-problem.js";

/** One planting given stock on a day, as logged. */
export interface GivenFeeding {
  readonly planting: string;
  readonly day: Day;
  /** Its share of the entry's stock, by water; absent when no amount was written down. */
  readonly stockMl?: number;
  readonly batch?: string;
}

/** A grower who logs anything at all keeps a log: what is not in it was not given. */
export function keepsLog(garden: Garden): boolean {
  return garden.log.some((entry) => entry.feed === undefined);
}

/** Stock is started well ahead of a season: common practice, no source. */
const leadDays = 60;

/**
 * The day that the file itself speaks of: for a calendar that is the same whenever it is made. The
 * latest day of anything in hand or given, or else well before the season.
 */
export function dayOfFile(garden: Garden): Day {
  const told = [
    ...garden.log.map((entry) => entry.on),
    ...garden.stock.batches.flatMap(({ made, leftOn }) => [made, leftOn ?? made]),
  ];
  return told.reduce(later, addDays(garden.season.from, -leadDays));
}

/**
 * The log up to today, planting by planting. An entry for a bed, or for the whole round, stands for
 * the plantings there that were due to be fed around that day.
 */
export function givenFeedings(
  garden: Garden,
  courses: readonly FeedingCourse[],
  today: Day,
): GivenFeeding[] {
  return garden.log
    .filter((entry) => entry.feed === undefined && entry.on <= today)
    .flatMap((entry) => {
      const plantings = plantingsOf(entry, garden, courses);
      const waterL = plantings.reduce((sum, planting) => sum + planting.waterL, 0);
      return plantings.map((planting): GivenFeeding => ({
        planting: planting.id,
        day: entry.on,
        ...(entry.stockMl === undefined || waterL === 0
          ? {}
          : { stockMl: (entry.stockMl * planting.waterL) / waterL }),
        ...(entry.batch === undefined ? {} : { batch: entry.batch }),
      }));
    });
}

function plantingsOf(
  entry: LogEntry,
  garden: Garden,
  courses: readonly FeedingCourse[],
): Planting[] {
  const all = garden.beds.flatMap((bed) => bed.plantings);
  if (entry.planting !== undefined) return all.filter((p) => p.id === entry.planting);
  const open = new Set(
    courses
      .filter(({ course }) => course.first.earliest <= entry.on && entry.on <= course.coverTo)
      .map(({ planting }) => planting.id),
  );
  return all.filter((p) => open.has(p.id) && (entry.bed === undefined || p.bed === entry.bed));
}

/** Courses that go on from what was really given. */
export function resumed(
  courses: readonly FeedingCourse[],
  given: readonly GivenFeeding[],
): FeedingCourse[] {
  return courses.map((course) => {
    const days = given
      .filter((g) => g.planting === course.planting.id)
      .map((g) => g.day)
      .filter((day) => day <= course.course.coverTo)
      .sort();
    const last = days.at(-1);
    return last === undefined ? course : { ...course, course: after(course.course, last) };
  });
}

function after(course: Course, lastFed: Day): Course {
  if (lastFed >= course.first.earliest) return { ...course, lastFed };
  // Given just before the course begins: the first feeding keeps its distance from it.
  const shortestDays = course.phases[0]?.shortestDays ?? 0;
  const earliest = later(course.first.earliest, addDays(lastFed, shortestDays));
  return { ...course, first: { earliest, latest: later(earliest, course.first.latest) } };
}

/** Logged feedings as if they had been scheduled, for the course nearest to each. */
export function asScheduled(
  given: readonly GivenFeeding[],
  courses: readonly FeedingCourse[],
): ScheduledFeeding[] {
  const seen = new Set<string>();
  return given.flatMap(({ planting, day }): ScheduledFeeding[] => {
    const own = courses.filter((course) => course.planting.id === planting);
    const course =
      own.find(({ course: c }) => c.first.earliest <= day && day <= c.coverTo) ?? own[0];
    const key = `${course?.course.id ?? ""} ${day}`;
    if (course === undefined || seen.has(key)) return [];
    seen.add(key);
    return [{ course: course.course.id, day, window: { earliest: day, latest: day } }];
  });
}
