// @ts-nocheck
import { addDays, type Day, type DaySpan, eachDay, weekdayOf, within } from "../dates.js";
import type { Garden } from "../garden/index.js";

/** The days of the season on which the grower feeds and is there. */
export function allowedDays(garden: Garden): Day[] {
  return usualDays(garden, garden.season).filter((day) => awayOn(garden, day) === undefined);
}

/** Time away, and the last day before it on which the grower feeds: the day before it, if there is none. */
export interface TimeAway extends DaySpan {
  readonly lastDayBefore: Day;
}

/** The first time away that takes a feeding day from these days. */
export function timeAwayIn(garden: Garden, days: DaySpan): TimeAway | undefined {
  const away = usualDays(garden, days)
    .map((day) => awayOn(garden, day))
    .find((span) => span !== undefined);
  if (away === undefined) return undefined;
  const before = allowedDays(garden).findLast((day) => day < away.from);
  return { ...away, lastDayBefore: before ?? addDays(away.from, -1) };
}

function usualDays({ feeding }: Garden, span: DaySpan): Day[] {
  return [...eachDay(span)].filter((day) => feeding.days.includes(weekdayOf(day)));
}

function awayOn({ feeding }: Garden, day: Day): DaySpan | undefined {
  return feeding.away.find((span) => within(day, span));
}
