/**
 * Calendar days without a clock or a zone. A day is its ISO text, so that it sorts, prints and
 * survives JSON as it is, and no time zone can ever shift it.
 */
// @ts-nocheck

declare const dayBrand: unique symbol;

/** A calendar day, `YYYY-MM-DD`, years 1900 to 2200. Plain string order is date order. */
export type Day = string & { readonly [dayBrand]: true };

/** Both ends count. */
export interface DaySpan {
  readonly from: Day;
  readonly to: Day;
}

export const weekdays = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;
export type Weekday = (typeof weekdays)[number];

const msPerDay = 86_400_000;
const isoDay = /^(\d{4})-(\d{2})-(\d{2})$/;

/** The day a text names, or undefined when there is no such day (`2027-02-30`). */
export function parseDay(text: string): Day | undefined {
  const match = isoDay.exec(text);
  if (!match) return undefined;
  const year = Number(match[1]);
  if (year < 1900 || year > 2200) return undefined;
  const date = new Date(Date.UTC(year, Number(match[2]) - 1, Number(match[3])));
  return date.toISOString().slice(0, 10) === text ? (text as Day) : undefined;
}

/** For days we write ourselves. Throws RangeError where {@link parseDay} gives undefined. */
export function day(text: string): Day {
  const parsed = parseDay(text);
  if (parsed === undefined) throw new RangeError(`not a calendar day: ${text}`);
  return parsed;
}

/** Days since 1970-01-01. */
export function dayNumber(d: Day): number {
  return Date.parse(`${d}T00:00:00Z`) / msPerDay;
}

/** The day that number of days after 1970-01-01. */
export function dayFromNumber(n: number): Day {
  return new Date(n * msPerDay).toISOString().slice(0, 10) as Day;
}

export function addDays(d: Day, days: number): Day {
  return dayFromNumber(dayNumber(d) + days);
}

/** Days from `a` to `b`; negative when `b` is earlier. */
export function daysBetween(a: Day, b: Day): number {
  return dayNumber(b) - dayNumber(a);
}

export function weekdayOf(d: Day): Weekday {
  // 1970-01-01 was a Thursday.
  const index = (((dayNumber(d) + 3) % 7) + 7) % 7;
  return weekdays[index] as Weekday;
}

export function yearOf(d: Day): number {
  return Number(d.slice(0, 4));
}

/** 1 to 12. */
export function monthOf(d: Day): number {
  return Number(d.slice(5, 7));
}

/** Of months from 1 to 12: 4 is 10, and 10 is 4, as the seasons of the two halves of the earth are. */
export function monthHalfYearOn(month: number): number {
  return ((month + 5) % 12) + 1;
}

export function earlier(a: Day, b: Day): Day {
  return a < b ? a : b;
}

export function later(a: Day, b: Day): Day {
  return a > b ? a : b;
}

export function within(d: Day, span: DaySpan): boolean {
  return span.from <= d && d <= span.to;
}

export function* eachDay(span: DaySpan): Generator<Day> {
  const last = dayNumber(span.to);
  for (let n = dayNumber(span.from); n <= last; n++) yield dayFromNumber(n);
}
