import { DateTime } from "luxon";
import { day, type Day } from "../dates.js";

/** The calendar day in a zone at a moment. */
export function todayAt(nowMs: number, timezone: string): Day {
  return day(DateTime.fromMillis(nowMs, { zone: timezone }).toFormat("yyyy-MM-dd"));
}

/** Moments, ms since 1970. */
export interface TimeSpan {
  readonly fromMs: number;
  /** The first moment after it. */
  readonly untilMs: number;
}

export function isWithin({ fromMs, untilMs }: TimeSpan, nowMs: number): boolean {
  return fromMs <= nowMs && nowMs < untilMs;
}

/** As long as it is that day there. */
export function spanOfToday(nowMs: number, timezone: string): TimeSpan {
  const now = DateTime.fromMillis(nowMs, { zone: timezone });
  const begin = now.startOf("day");
  return { fromMs: begin.toMillis(), untilMs: begin.plus({ days: 1 }).startOf("day").toMillis() };
}
