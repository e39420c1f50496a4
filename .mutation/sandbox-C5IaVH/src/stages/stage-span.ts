/** Dated stages, and where a day falls among them. */
// @ts-nocheck

import type { StageName } from "../crops/index.js";
import { type Day, type DaySpan, within } from "../dates.js";

/** One stage of one planting, with its dates and where they come from. Both ends count. */
export interface StageSpan extends DaySpan {
  readonly stage: StageName;
  /** BBCH codes, as in `69-71`. */
  readonly bbch: string;
  /** In words, e.g. `FAO-56 Table 11, Tomato, Mediterranean, planted April/May; scaled ...`. */
  readonly origin: string;
  /** Of its first day. */
  readonly warmth?: StageWarmth;
}

/** What warmth says of the first day of a stage, where the crop has sums and the place a climate. */
export interface StageWarmth {
  /** Absent where warmth doesn't reach it before the season's end. */
  readonly day?: Day;
  /** As early and as late as the sums and the means leave it, before it is held near the calendar's. */
  readonly earliest?: Day;
  readonly latest?: Day;
  /** The first day by stage lengths alone. */
  readonly calendar: Day;
  /** The stage begins by it. */
  readonly isFollowed: boolean;
  /** It was held back: warmth moves a date only so far. */
  readonly isHeldBack?: true;
  /** What is counted: degree days (degC) above the base from then on. */
  readonly degreeDays: number;
  readonly baseC: number;
  /** From where it counts, in words: `planting out on 2027-05-20`. */
  readonly after: string;
  /** What a plant raised indoors had before that day, and in how many days; counted besides. */
  readonly indoors?: { readonly degreeDays: number; readonly days: number };
  /** Who published the sum, or what it was reckoned from. */
  readonly sources: readonly string[];
}

/** The stage on a day, if the planting is in the bed then. */
export function stageOn(spans: readonly StageSpan[], day: Day): StageSpan | undefined {
  return spans.find((span) => within(day, span));
}

/** The stage on a day or, before and after the life that is reckoned, its first or last one. */
export function stageNearest(spans: readonly StageSpan[], day: Day): StageSpan | undefined {
  const [first] = spans;
  return stageOn(spans, day) ?? (first !== undefined && day < first.from ? first : spans.at(-1));
}

/** First to last day of all spans. */
export function lifeSpan(spans: readonly StageSpan[]): DaySpan | undefined {
  const [first, last] = [spans[0], spans.at(-1)];
  return first && last ? { from: first.from, to: last.to } : undefined;
}
