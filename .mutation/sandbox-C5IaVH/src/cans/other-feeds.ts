/** Other liquid feeds: their days, their cans, and the days that calcium keeps away from them. */
// @ts-nocheck

import { addDays, type Day, dayNumber, daysBetween, earlier, later, weekdayOf } from "../dates.js";
import type { FeedingCourse } from "../days/index.js";
import { type Bed, type Garden, type OtherFeed, type Planting, totalOf } from "../garden/index.js";
import { type GivenFeeding, keepsLog, type PastFeedDay, pastOfFeed } from "../log/index.js";
import type { Published } from "../published/index.js";
import type { OtherFeedMix } from "../season/index.js";
import { canFills } from "./fills.js";

/** One day of a feed: to come, written down in the log, or published and past. */
type FeedDay = PastFeedDay;

/** Days of each feed, in the order of the file. */
export type FeedDays = ReadonlyMap<OtherFeed, readonly FeedDay[]>;

/**
 * On its weekdays, or every so many days on the nearest feeding day; counted on from the day it was
 * last given, where the log has one. A day too near to calcium already given is passed over.
 *
 * @param seasonDays all days of the season on which the grower can feed
 * @param calcium what was given
 */
export function otherFeedDays(
  garden: Garden,
  seasonDays: readonly Day[],
  calcium: readonly GivenFeeding[],
  published: Published | undefined,
  today: Day,
): FeedDays {
  return new Map(
    garden.feeds.map((feed) => {
      const past = pastOfFeed(garden, feed, published, today);
      const from = later(feed.from ?? garden.season.from, garden.season.from);
      const to = earlier(feed.to ?? garden.season.to, garden.season.to);
      const last = past.at(-1)?.day;
      // What neither a kept log nor a calendar holds was not given.
      const isKept = past.length > 0 || keepsLog(garden) || published !== undefined;
      const isOpen = (day: Day): boolean =>
        !isKept || (day >= today && day !== last && !isNearCalcium(feed, day, garden, calcium));
      const inSpan = seasonDays.filter((day) => from <= day && day <= to);
      const { everyDays } = feed;
      const begin = last === undefined || everyDays === undefined ? from : addDays(last, everyDays);
      const counted = last === undefined ? inSpan : inSpan.filter(isOpen);
      const days =
        everyDays === undefined
          ? inSpan.filter((day) => feed.days?.includes(weekdayOf(day)) && isOpen(day))
          : everySoManyDays(counted, begin, everyDays, today, isOpen);
      return [feed, [...past, ...days.map((day) => ({ day }))]] as const;
    }),
  );
}

/**
 * Counted from the day really used, so that a shifted day does not crowd the next one; a day of the
 * past that was let go keeps its place in the count.
 */
function everySoManyDays(
  days: readonly Day[],
  from: Day,
  everyDays: number,
  today: Day,
  isOpen: (day: Day) => boolean,
): Day[] {
  const used: Day[] = [];
  let due = from;
  for (const day of days) {
    if (day < due || (day >= today && !isOpen(day))) continue;
    used.push(day);
    due = addDays(day, everyDays);
  }
  return used.filter(isOpen);
}

function isNearCalcium(
  feed: OtherFeed,
  day: Day,
  garden: Garden,
  calcium: readonly GivenFeeding[],
): boolean {
  const near = new Set(
    calcium
      .filter((given) => Math.abs(daysBetween(given.day, day)) < feed.gapDays)
      .map((given) => given.planting),
  );
  return garden.beds.some((bed) => bed.plantings.some((p) => near.has(p.id) && isFor(feed, p)));
}

/** Courses that keep each feed's gap from its days. */
export function keepingGaps(
  courses: readonly FeedingCourse[],
  feedDays: FeedDays,
  allowed: readonly Day[],
): FeedingCourse[] {
  return courses.map((course) => {
    const avoidDays = allowed.filter((day) =>
      [...feedDays].some(
        ([feed, days]) =>
          isFor(feed, course.planting) &&
          days.some(
            (d) =>
              Math.abs(daysBetween(d.day, day)) < feed.gapDays && isGivenTo(d, course.planting),
          ),
      ),
    );
    return avoidDays.length === 0 ? course : { ...course, course: { ...course.course, avoidDays } };
  });
}

/** A log entry may name one planting or bed. */
function isGivenTo({ given }: FeedDay, { id, bed }: Planting): boolean {
  return (
    (given?.planting === undefined || given.planting === id) &&
    (given?.bed === undefined || given.bed === bed)
  );
}

function isFor(feed: OtherFeed, planting: Planting): boolean {
  const { id, bed, crop } = planting;
  return feed.for.length === 0 || [id, bed, crop].some((name) => feed.for.includes(name));
}

/** The cans of each feed on each of its days, for what grows in the beds then. */
export function otherFeedMixes(
  garden: Garden,
  feedDays: FeedDays,
  isGrowing: (planting: Planting, day: Day) => boolean,
): ReadonlyMap<Day, readonly OtherFeedMix[]> {
  const { canL, amounts } = garden;
  const byDay = new Map<Day, OtherFeedMix[]>();
  for (const [feed, days] of feedDays)
    for (const feedDay of days) {
      const { day, given, asPublished } = feedDay;
      const { shelfLifeDays } = feed;
      const opened =
        shelfLifeDays === undefined ? {} : { openedSince: addDays(day, -shelfLifeDays) };
      const fed = garden.beds.map((bed): [Bed, Planting[]] => [
        bed,
        bed.plantings.filter(
          (p) => isFor(feed, p) && isGivenTo(feedDay, p) && isGrowing(p, day) && p.waterL > 0,
        ),
      ]);
      const totalL = waterOf(fed.flatMap(([, plantings]) => plantings));
      const rateMlPerL =
        given?.stockMl === undefined || totalL === 0 ? feed.rateMlPerL : given.stockMl / totalL;
      const mixes = fed
        .filter(([, plantings]) => plantings.length > 0)
        .map(([bed, plantings]): OtherFeedMix => {
          const waterL = waterOf(plantings);
          return {
            feed: feed.name,
            bed: bed.id,
            bedName: bed.name,
            plantings: plantings.map((p) => p.id),
            rateMlPerL,
            waterL,
            fills: canFills({ waterL, rateMlPerL, canL, amounts }),
            ...(given === undefined && !asPublished ? opened : { given: true }),
            ...(asPublished ? { asPublished } : {}),
          };
        });
      if (mixes.length > 0) byDay.set(day, [...(byDay.get(day) ?? []), ...mixes]);
    }
  return new Map([...byDay].sort(([a], [b]) => dayNumber(a) - dayNumber(b)));
}

function waterOf(plantings: readonly Planting[]): number {
  return totalOf(plantings.map((p) => p.waterL));
}
