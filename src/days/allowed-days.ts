import { type Day, eachDay, weekdayOf, within } from "../dates.js";
import type { Garden } from "../garden/index.js";

/** The days of the season on which the grower feeds and is there. */
export function allowedDays(garden: Garden): Day[] {
  return [...eachDay(garden.season)].filter(
    (day) =>
      garden.feeding.days.includes(weekdayOf(day)) &&
      !garden.feeding.away.some((span) => within(day, span)),
  );
}
