/** Days of the year as a ring of 365, on which means lie. */
import { type Day, dayOfMonth, monthOf, yearOf } from "../dates.js";

/** Of a common year, January first. */
export const monthLengths: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

export const daysInCommonYear = 365;

const leapDay = 59;

export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** Days of a common year before each month. */
const monthStarts = monthLengths.map((_, m) => monthLengths.slice(0, m).reduce((a, b) => a + b, 0));

/** 0 for 1 January. */
export function indexInYear(d: Day): number {
  const month = monthOf(d);
  const leapDays = month > 2 && isLeapYear(yearOf(d)) ? 1 : 0;
  return (monthStarts[month - 1] as number) + dayOfMonth(d) - 1 + leapDays;
}

export function daysInMonth(d: Day): number {
  return monthLength(monthOf(d), isLeapYear(yearOf(d)));
}

/** For each day of a year its month, from 1 to 12, and how many days that has. */
export function monthsOfDays(
  leap: boolean,
): readonly { readonly month: number; readonly length: number }[] {
  return monthLengths.flatMap((_, m) => {
    const length = monthLength(m + 1, leap);
    return Array.from({ length }, () => ({ month: m + 1, length }));
  });
}

function monthLength(month: number, leap: boolean): number {
  return month === 2 && leap ? 29 : (monthLengths[month - 1] as number);
}

/** The ring's value on that day of a year; 29 February has the mean of its two neighbours. */
export function onRing(ring: readonly number[], index: number, leap: boolean): number {
  if (!leap || index < leapDay) return ring[index] as number;
  if (index > leapDay) return ring[index - 1] as number;
  return ((ring[leapDay - 1] as number) + (ring[leapDay] as number)) / 2;
}
