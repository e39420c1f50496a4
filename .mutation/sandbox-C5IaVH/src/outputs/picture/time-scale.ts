/** Days across the picture, in per cent of its width, so that it fits any screen without a script. */
// @ts-nocheck

import { type Day, dayNumber, type DaySpan, eachDay, earlier, later } from "../../dates.js";
import type { Plan } from "../../season/index.js";
import { grouped } from "../../values.js";

export interface TimeScale {
  readonly span: DaySpan;
  /** Where the day begins, 0 to 1. */
  readonly start: (day: Day) => number;
  /** The middle of the day, 0 to 1. */
  readonly middle: (day: Day) => number;
  /** Whether any of it is in the picture. */
  readonly shows: (span: DaySpan) => boolean;
}

/** The season, and days before it on which stock is made. */
export function timeScale(plan: Plan): TimeScale {
  const batches = plan.stock?.making.batches ?? [];
  const from = batches.reduce((day, b) => earlier(day, b.startOn), plan.garden.season.from);
  const span = { from, to: later(plan.garden.season.to, from) };
  const first = dayNumber(span.from);
  const days = dayNumber(span.to) + 1 - first;
  const share = (n: number) => Math.min(1, Math.max(0, (n - first) / days));
  return {
    span,
    start: (day) => share(dayNumber(day)),
    middle: (day) => share(dayNumber(day) + 0.5),
    shows: (s) => s.from <= span.to && s.to >= span.from,
  };
}

/** `12.5%` */
export function percent(share: number): string {
  return `${Number((share * 100).toFixed(2))}%`;
}

/** Each month of the picture, cut to it. */
export function monthsOf(span: DaySpan): readonly DaySpan[] {
  const months = grouped([...eachDay(span)], (day) => day.slice(0, 7));
  return [...months.values()].map((days) => ({ from: days[0], to: days.at(-1) ?? days[0] }));
}
