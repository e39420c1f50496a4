/**
 * Days as a person says them: the day of the month first, in US gardens the month first. ISO dates are
 * for what is copied into a file or a command.
 */
// @ts-nocheck

import { type Day, daysBetween, monthOf, weekdayOf } from "../dates.js";
import type { Amounts } from "./garden.js";

const months =
  "January February March April May June July August September October November December".split(
    " ",
  );
const weekdays = {
  mon: "Monday",
  tue: "Tuesday",
  wed: "Wednesday",
  thu: "Thursday",
  fri: "Friday",
  sat: "Saturday",
  sun: "Sunday",
} as const;

function weekdayName(day: Day): string {
  return weekdays[weekdayOf(day)];
}

/** `June` */
export function monthName(day: Day): string {
  return nameOfMonth(monthOf(day));
}

/** 1 is `January` */
export function nameOfMonth(month: number): string {
  return months[month - 1] ?? "";
}

/** `26`, or `6` */
export function dayOfMonth(day: Day): number {
  return Number(day.slice(8));
}

function dated(day: Day, month: string, amounts: Amounts): string {
  return amounts === "us" ? `${month} ${dayOfMonth(day)}` : `${dayOfMonth(day)} ${month}`;
}

/** Behind a date: the year, where it is another than that of `near`; nothing where there is no such day. */
function yearUnless(day: Day, amounts: Amounts, near: Day = day): string {
  const year = day.slice(0, 4);
  if (near.startsWith(year)) return "";
  return amounts === "us" ? `, ${year}` : ` ${year}`;
}

/** `26 Jun`, in US gardens `Jun 26`; `26 Jun 2028` where `near` is in another year. */
export function shortDate(day: Day, amounts: Amounts, near?: Day): string {
  return dated(day, monthName(day).slice(0, 3), amounts) + yearUnless(day, amounts, near);
}

/** `Sat 26 Jun`, `Sat Jun 26`; the year as in {@link shortDate}. */
export function shortDay(day: Day, amounts: Amounts, near?: Day): string {
  return `${weekdayName(day).slice(0, 3)} ${shortDate(day, amounts, near)}`;
}

/** `Saturday 26 June`, `Saturday, June 26`; the year as in {@link shortDate}. */
export function longDay(day: Day, amounts: Amounts, near?: Day): string {
  const between = amounts === "us" ? ", " : " ";
  const date = dated(day, monthName(day), amounts) + yearUnless(day, amounts, near);
  return weekdayName(day) + between + date;
}

/** `26 June 2027`, `June 26, 2027` */
export function fullDate(day: Day, amounts: Amounts): string {
  const between = amounts === "us" ? ", " : " ";
  return dated(day, monthName(day), amounts) + between + day.slice(0, 4);
}

/** `Sat 26 Jun 2027`, `Sat Jun 26, 2027` */
export function dayText(day: Day, amounts: Amounts): string {
  const between = amounts === "us" ? ", " : " ";
  return shortDay(day, amounts) + between + day.slice(0, 4);
}

/** `today`, `tomorrow`, `in 5 days`, `3 days ago` */
export function daysAway(today: Day, day: Day): string {
  const days = daysBetween(today, day);
  if (days === 0) return "today";
  if (days === 1) return "tomorrow";
  if (days === -1) return "yesterday";
  return days > 0 ? `in ${days} days` : `${-days} days ago`;
}
