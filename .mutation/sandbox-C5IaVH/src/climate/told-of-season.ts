// @ts-nocheck
import { type Day, type DaySpan, within } from "../dates.js";

/** First and last of the days that lie between New Year before a season and its end. */
export function toldOfSeason(days: Iterable<Day>, { from, to }: DaySpan): DaySpan | undefined {
  const span = { from: `${from.slice(0, 4)}-01-01` as Day, to };
  const told = [...days].filter((day) => within(day, span)).sort();
  const [first, last] = [told[0], told.at(-1)];
  return first === undefined || last === undefined ? undefined : { from: first, to: last };
}
