/** Days and stages as a person says them. */
import { weekdayOf, type Day, type Weekday } from "../dates.js";

const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const weekdayWords: Record<Weekday, string> = {
  mon: "Mon",
  tue: "Tue",
  wed: "Wed",
  thu: "Thu",
  fri: "Fri",
  sat: "Sat",
  sun: "Sun",
};

/** `Sat 26 Jun 2027` */
export function dayText(day: Day): string {
  return `${weekdayWords[weekdayOf(day)]} ${shortDay(day)} ${day.slice(0, 4)}`;
}

/** `26 Jun` */
export function shortDay(day: Day): string {
  return `${Number(day.slice(8))} ${months[Number(day.slice(5, 7)) - 1] ?? ""}`;
}

/** `fruit set` */
export function stageText(stage: string): string {
  return stage.replaceAll("-", " ");
}

/** `1 round`, `7 rounds` */
export function count(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? "" : "s"}`;
}
