/** Other liquid feeds: their days, their cans, and the days that calcium keeps away from them. */
import { addDays, dayNumber, daysBetween, earlier, later, weekdayOf, type Day } from "../dates.js";
import type { Bed, Garden, OtherFeed, Planting } from "../garden/index.js";
import type { OtherFeedMix } from "../season-plan.js";
import { canFills } from "./cans.js";
import type { FeedingCourse } from "./courses.js";

/** Days of each feed, in the order of the file. */
export type FeedDays = ReadonlyMap<OtherFeed, readonly Day[]>;

/** On its weekdays, or every so many days on the nearest allowed day. */
export function otherFeedDays(garden: Garden, allowed: readonly Day[]): FeedDays {
  return new Map(
    garden.feeds.map((feed) => {
      const from = later(feed.from ?? garden.season.from, garden.season.from);
      const to = earlier(feed.to ?? garden.season.to, garden.season.to);
      const open = allowed.filter((day) => from <= day && day <= to);
      const { everyDays } = feed;
      const days =
        everyDays === undefined
          ? open.filter((day) => feed.days?.includes(weekdayOf(day)))
          : everySoManyDays(open, from, everyDays);
      return [feed, days] as const;
    }),
  );
}

/** Counted from the day really used, so that a shifted day does not crowd the next one. */
function everySoManyDays(open: readonly Day[], from: Day, everyDays: number): Day[] {
  const days: Day[] = [];
  let due = from;
  for (const day of open) {
    if (day < due) continue;
    days.push(day);
    due = addDays(day, everyDays);
  }
  return days;
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
          days.some((d) => Math.abs(daysBetween(d, day)) < feed.gapDays),
      ),
    );
    return avoidDays.length === 0 ? course : { ...course, course: { ...course.course, avoidDays } };
  });
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
  const byDay = new Map<Day, OtherFeedMix[]>();
  for (const [feed, days] of feedDays)
    for (const day of days) {
      const mixes = garden.beds.flatMap((bed) => mixFor(feed, bed, day, garden, isGrowing));
      if (mixes.length > 0) byDay.set(day, [...(byDay.get(day) ?? []), ...mixes]);
    }
  return new Map([...byDay].sort(([a], [b]) => dayNumber(a) - dayNumber(b)));
}

function mixFor(
  feed: OtherFeed,
  bed: Bed,
  day: Day,
  garden: Garden,
  isGrowing: (planting: Planting, day: Day) => boolean,
): OtherFeedMix[] {
  const plantings = bed.plantings.filter((p) => isFor(feed, p) && isGrowing(p, day));
  const waterL = Number(plantings.reduce((sum, p) => sum + p.waterL, 0).toFixed(6));
  if (plantings.length === 0 || waterL === 0) return [];
  const { rateMlPerL } = feed;
  return [
    {
      feed: feed.name,
      bed: bed.id,
      bedName: bed.name,
      plantings: plantings.map((p) => p.id),
      rateMlPerL,
      waterL,
      fills: canFills({ waterL, rateMlPerL, canL: garden.canL, amounts: garden.amounts }),
    },
  ];
}
