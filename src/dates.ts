/**
 * Calendar days without a clock or a zone. A day is its ISO text, so that it sorts, prints and
 * survives JSON as it is, and no time zone can ever shift it.
 */
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

/**
 * Days since 1970-01-01.
 *
 * @source Howard Hinnant, chrono-Compatible Low-Level Date Algorithms: days_from_civil. A plan asks for
 *   it some ten thousand times, where `Date.parse` would take a tenth of its time.
 */
export function dayNumber(d: Day): number {
  const month = monthOf(d);
  // The year begins in March, so that the leap day is its last.
  const year = month > 2 ? yearOf(d) : yearOf(d) - 1;
  const monthsFromMarch = (month + 9) % 12;
  const century = Math.floor(year / 100);
  const dayOfYear = Math.floor((153 * monthsFromMarch + 2) / 5) + dayOfMonth(d) - 1;
  return (
    year * 365 + Math.floor(year / 4) - century + Math.floor(century / 4) + dayOfYear - 719_468
  );
}

/** As text they are asked for again and again: at most 110,000, some hundred for each year in use. */
const textsOfDays = new Map<number, Day>();

/** The day that number of days after 1970-01-01. */
export function dayFromNumber(n: number): Day {
  const known = textsOfDays.get(n);
  if (known !== undefined) return known;
  const text = new Date(n * msPerDay).toISOString().slice(0, 10) as Day;
  textsOfDays.set(n, text);
  return text;
}

function twoDigits(d: Day, at: number): number {
  return d.charCodeAt(at) * 10 + d.charCodeAt(at + 1) - 11 * zero;
}

const zero = 48;

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
  return twoDigits(d, 0) * 100 + twoDigits(d, 2);
}

/** 1 to 12. */
export function monthOf(d: Day): number {
  return twoDigits(d, 5);
}

/** 1 to 31. */
export function dayOfMonth(d: Day): number {
  return twoDigits(d, 8);
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
