import type { DaySpan } from "../dates.js";
import type { PlanClimate } from "../season/index.js";
import { shortDate } from "./days.js";

/** One line for the garden's facts. */
export function climateOfPlace({ origin, weather }: PlanClimate): string {
  const told = weather && `; weather files tell ${daysTold(weather)}`;
  return `Climate: ${origin}${told ?? ""}`;
}

function daysTold({ from, to }: DaySpan): string {
  return from === to ? shortDate(from) : `${shortDate(from)} to ${shortDate(to)}`;
}
