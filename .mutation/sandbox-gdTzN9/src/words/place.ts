// @ts-nocheck
import type { DaySpan } from "../dates.js";
import type { PlanClimate } from "../season/index.js";
import { type Amounts, shortDate } from "../garden/index.js";

/** One line for the garden's facts. */
export function climateOfPlace({ origin, weather }: PlanClimate, amounts: Amounts): string {
  const told = weather && `; weather files tell ${daysTold(weather, amounts)}`;
  return `Climate: ${origin}${told ?? ""}`;
}

function daysTold({ from, to }: DaySpan, amounts: Amounts): string {
  return from === to
    ? shortDate(from, amounts)
    : `${shortDate(from, amounts)} to ${shortDate(to, amounts)}`;
}
