import { DateTime } from "luxon";
import { day, type Day } from "../dates.js";

/** The calendar day in a zone at a moment. */
export function todayAt(nowMs: number, timezone: string): Day {
  return day(DateTime.fromMillis(nowMs, { zone: timezone }).toFormat("yyyy-MM-dd"));
}

/** The moments, ms since 1970, from which and until which it is that day there. */
export function spanOfToday(nowMs: number, timezone: string): { fromMs: number; untilMs: number } {
  const now = DateTime.fromMillis(nowMs, { zone: timezone });
  const begin = now.startOf("day");
  return { fromMs: begin.toMillis(), untilMs: begin.plus({ days: 1 }).startOf("day").toMillis() };
}
