/** Days and amounts as a grower reads them. */
import { daysBetween, type Day } from "../dates.js";
import { decimal } from "../garden/index.js";
import type { CanFill, CanMix } from "../season-plan.js";
import { counted, dayOfMonth, monthName, shortDate, weekdayName } from "../words.js";

export { counted, cropWords, gramsText, monthName, shortDate, stageWords } from "../words.js";

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

/** Kept on one line. */
export function unbroken(text: string): string {
  return text.replaceAll(" ", "\u00a0");
}

/** Three figures are enough for anything measured with a can or a spoon. */
export function figures(value: number): string {
  return value >= 100 ? decimal(value, 0) : String(Number(value.toPrecision(3)));
}

export function vesselOf(route: CanMix["route"]): "can" | "sprayer" {
  return route === "foliar" ? "sprayer" : "can";
}

export function routeWords(route: CanMix["route"]): string {
  return route === "foliar" ? "Leaf spray" : "Soil drench";
}

/** `2 full cans`, `1 part sprayer` */
export function fillWords(fill: CanFill, route: CanMix["route"]): string {
  return counted(fill.count, `${fill.full ? "full" : "part"} ${vesselOf(route)}`);
}
