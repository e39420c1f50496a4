/** Days across the picture, in per cent of its width, so that it fits any screen without a script. */
import { type Day, dayNumber, type DaySpan, eachDay, earlier, later } from "../../dates.js";
import type { Plan } from "../../season/index.js";
import { grouped } from "../../values.js";

export interface TimeScale {
  readonly span: DaySpan;
  /** Where the day begins, `12.5%`. */
  readonly at: (day: Day) => string;
  /** The middle of the day. */
  readonly midst: (day: Day) => string;
  /** Width of a span, both ends counted, cut to the picture. */
  readonly width: (span: DaySpan) => string;
  /** The same as a share, 0 to 1. */
  readonly share: (span: DaySpan) => number;
  /** Whether any of it is in the picture. */
  readonly shows: (span: DaySpan) => boolean;
}

/** The season, and days before or after it on which stock is made. */
export function timeScale(plan: Plan): TimeScale {
  const batches = plan.stock?.making.batches ?? [];
  const from = batches.reduce((day, b) => earlier(day, b.startOn), plan.garden.season.from);
  const span = { from, to: later(plan.garden.season.to, from) };
  const first = dayNumber(span.from);
  const days = dayNumber(span.to) + 1 - first;
  const share = (n: number) => Math.min(1, Math.max(0, (n - first) / days));
  const percent = (x: number) => `${Number((x * 100).toFixed(2))}%`;
  const shareOf = ({ from: a, to: b }: DaySpan) => share(dayNumber(b) + 1) - share(dayNumber(a));
  return {
    span,
    at: (day) => percent(share(dayNumber(day))),
    midst: (day) => percent(share(dayNumber(day) + 0.5)),
    width: (s) => percent(shareOf(s)),
    share: shareOf,
    shows: (s) => s.from <= span.to && s.to >= span.from,
  };
}

/** Each month of the picture, cut to it. */
export function monthsOf(span: DaySpan): readonly DaySpan[] {
  const months = grouped([...eachDay(span)], (day) => day.slice(0, 7));
  return [...months.values()].map((days) => ({ from: days[0], to: days.at(-1) ?? days[0] }));
}
