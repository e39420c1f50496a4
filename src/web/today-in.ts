import { DateTime } from "luxon";
import { day, type Day } from "../dates.js";

/** The calendar day in a zone at a moment. */
export function todayIn(timezone: string, nowMs: number): Day {
  return day(DateTime.fromMillis(nowMs, { zone: timezone }).toFormat("yyyy-MM-dd"));
}
