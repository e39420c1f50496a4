/** Days as a person says them. */
import { type Day, daysBetween, monthOf, weekdayOf } from "../dates.js";

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

/** `Saturday` */
export function weekdayName(day: Day): string {
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

/** `26 Jun` */
export function shortDate(day: Day): string {
  return `${dayOfMonth(day)} ${monthName(day).slice(0, 3)}`;
}

/** `Saturday 26 June`, where the season says the year */
export function dayOfSeason(day: Day): string {
  return `${weekdayName(day)} ${dayOfMonth(day)} ${monthName(day)}`;
}

/** `26 June 2027` */
export function fullDate(day: Day): string {
  return `${dayOfMonth(day)} ${monthName(day)} ${day.slice(0, 4)}`;
}

/** `Sat 26 Jun` */
export function shortDay(day: Day): string {
  return `${weekdayName(day).slice(0, 3)} ${shortDate(day)}`;
}

/** `today`, `tomorrow`, `in 5 days`, `3 days ago` */
export function daysAway(today: Day, day: Day): string {
  const days = daysBetween(today, day);
  if (days === 0) return "today";
  if (days === 1) return "tomorrow";
  if (days === -1) return "yesterday";
  return days > 0 ? `in ${days} days` : `${-days} days ago`;
}

/** `Sat 26 Jun 2027` */
export function dayText(day: Day): string {
  return `${weekdayName(day).slice(0, 3)} ${shortDate(day)} ${day.slice(0, 4)}`;
}
