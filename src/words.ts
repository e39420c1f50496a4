/** Words for days, stages and numbers of things that all outputs share. */
import { monthOf, weekdayOf, type Day } from "./dates.js";
import { decimal } from "./garden/index.js";

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
  return months[monthOf(day) - 1] ?? "";
}

/** `26`, or `6` */
export function dayOfMonth(day: Day): number {
  return Number(day.slice(8));
}

/** `26 Jun` */
export function shortDate(day: Day): string {
  return `${dayOfMonth(day)} ${monthName(day).slice(0, 3)}`;
}

/** `fruit set` */
export function stageWords(stage: string): string {
  return stage.replaceAll("-", " ");
}

/** `1 can`, `3 cans` */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** `courgette` for `courgette (zucchini)`, where room is short. */
export function cropWords(cropName: string): string {
  return cropName.replace(/ \(.*\)$/, "");
}

/** As the recipe has them: `9.5 g`, `16 g`. */
export function gramsText(g: number): string {
  return `${decimal(g, g < 10 ? 1 : 0)} g`;
}
