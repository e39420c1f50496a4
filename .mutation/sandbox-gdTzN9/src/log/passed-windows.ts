/** Windows that passed without what could have been given in them. */
// @ts-nocheck

import { type Day, type DaySpan, within } from "../dates.js";
import type { FeedingCourse, UnmetWindow } from "../days/index.js";
import type { Published } from "../published/index.js";
import type { Past } from "./past.js";
import { dayBefore } from "./records.js";

/** When the season's calendar was first published; undefined where none of it was. */
export function firstPublished({ rounds, batches }: Published, season: DaySpan): Day | undefined {
  // Where all days to come have been changed since, the batches tell it still.
  return [...rounds, ...batches.map(({ first, made: day }) => ({ first, day }))]
    .filter(({ day }) => day >= dayBefore(season))
    .map(({ first }) => first)
    .reduce<Day | undefined>((a, b) => (a === undefined || b < a ? b : a), undefined);
}

/**
 * Whether a window goes by without what could have been given in it: something published was not given,
 * or it passed before anything was published. A window that was planned to be late is none.
 */
export function passedWithout(
  { notGiven }: Past,
  published: Published | undefined,
  season: DaySpan,
  today: Day,
): (window: UnmetWindow, course: FeedingCourse) => boolean {
  const since = published && firstPublished(published, season);
  return ({ window }, { planting, route }) =>
    (window.latest < today && (since === undefined || since > window.latest)) ||
    notGiven.some(
      (one) =>
        one.planting === planting.id &&
        one.route === route &&
        within(one.day, { from: window.earliest, to: window.latest }),
    );
}
