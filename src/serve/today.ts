import { DateTime } from "luxon";
import type { Day } from "../dates.js";
import { todayAt } from "../garden/index.js";

/** What gardens are planned from: the clock, or a day asked for, which stays. */
export interface Now {
  /** Ms since 1970. */
  readonly nowMs: number;
  /** Goes before the day of `nowMs` in every zone. */
  readonly today?: Day;
  /** The moment that goes into what is written, where it is another: that of a run which goes on. */
  readonly stampMs?: number;
}

export function todayIn(timezone: string, { nowMs, today }: Now): Day {
  return today ?? todayAt(nowMs, timezone);
}

/** For what is written now; on a day asked for, noon of UTC, which is that day nearly everywhere. */
export function stampOf({ nowMs, today, stampMs = nowMs }: Now): string {
  return new Date(today === undefined ? stampMs : `${today}T12:00:00Z`).toISOString();
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

export const always: TimeSpan = { fromMs: -Infinity, untilMs: Infinity };

/** As long as it is that day there. */
export function spanOfToday(timezone: string, { nowMs, today }: Now): TimeSpan {
  if (today !== undefined) return always;
  const now = DateTime.fromMillis(nowMs, { zone: timezone });
  const begin = now.startOf("day");
  return { fromMs: begin.toMillis(), untilMs: begin.plus({ days: 1 }).startOf("day").toMillis() };
}
