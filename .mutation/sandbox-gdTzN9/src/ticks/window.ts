/** How much of a season a page of ticks shows. */
// @ts-nocheck

import { addDays, type Day, type DaySpan } from "../dates.js";
import { soonDays } from "../season/index.js";

/** So long a grower remembers what was done. Our choice. */
export const lookBackDays = 28;

export function daysToTick(today: Day): DaySpan {
  return { from: addDays(today, -lookBackDays), to: addDays(today, soonDays) };
}
