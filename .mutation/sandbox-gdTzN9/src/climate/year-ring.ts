/** Days of the year as a ring of 365, on which means lie. */
// @ts-nocheck

import { type Day, dayNumber, monthOf, yearOf } from "../dates.js";

/** Of a common year, January first. */
export const monthLengths: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

export const daysInCommonYear = 365;

const leapDay = 59;

export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** 0 for 1 January. */
export function indexInYear(d: Day): number {
  return dayNumber(d) - dayNumber(`${d.slice(0, 4)}-01-01` as Day);
}

export function daysInMonth(d: Day): number {
  const month = monthOf(d);
  return month === 2 && isLeapYear(yearOf(d)) ? 29 : (monthLengths[month - 1] as number);
}

/** The ring's value on that day of a year; 29 February has the mean of its two neighbours. */
export function onRing(ring: readonly number[], index: number, leap: boolean): number {
  if (!leap || index < leapDay) return ring[index] as number;
  if (index > leapDay) return ring[index - 1] as number;
  return ((ring[leapDay - 1] as number) + (ring[leapDay] as number)) / 2;
}
