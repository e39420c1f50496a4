/** Shapes of what beds need to be watered with, week by week. */
// @ts-nocheck

import type { Day, DaySpan } from "../dates.js";

/** A week, Monday to Sunday; amounts are those of its days on which anything grows. */
export interface WateringWeek extends DaySpan {
  /** What grows there gives off so much, mm over its area; absent where the grower gave an amount. */
  readonly needMm?: number;
  /** Rain that it can use of it, mm; absent where no rain is known, or the grower gave an amount. */
  readonly rainMm?: number;
  /** To be poured, L; never negative. */
  readonly waterL: number;
  /** In the cans of that week's rounds, L; absent as long as the rounds are not known. */
  readonly roundL?: number;
  /** To be poured beside the rounds, L; never negative. */
  readonly leftL?: number;
}

/** Litres a week from the weather that is known, and those of a usual year, by monthly means alone. */
export interface Weeks {
  readonly weeks: readonly WateringWeek[];
  readonly usualWeeks: readonly WateringWeek[];
}

export interface PlantingWatering extends Weeks {
  readonly planting: string;
  /** Ground that it has of the bed; absent where it is not known, and not asked for. */
  readonly areaM2?: number;
}

/** What can't be told, and why, in words for the grower. */
export interface UnknownWatering {
  readonly planting: string;
  readonly why: string;
}

/**
 * A bed's water. By the weather its weeks are the sums of its plantings', those in `unknown` left out;
 * an amount is the grower's, and is shared among what grows by its ground.
 */
export interface BedWatering extends Weeks {
  readonly bed: string;
  readonly bedName: string;
  readonly by: "weather" | "amount";
  readonly plantings: readonly PlantingWatering[];
  readonly unknown: readonly UnknownWatering[];
  /** What was taken as usual, in words for the grower. */
  readonly assumptions: readonly string[];
  /** By the weather: the most rain that is taken off a week of a usual year, mm; absent below 1. */
  readonly usualRainMm?: number;
  /** Where an amount is less than half of what a usual year asks for in some week: the worst one. */
  readonly shortfall?: Shortfall;
}

/** A week of a usual year. */
export interface Shortfall extends DaySpan {
  /** Of the grower's amount, L. */
  readonly waterL: number;
  /** By the weather, L: at least so much, as of some plantings it may not be known. */
  readonly asksL: number;
}

/** One on which a bed is watered. */
export interface WateringDay {
  readonly day: Day;
  /** Its part of the week's that is left beside the rounds, L. */
  readonly waterL: number;
}

/** Days on end without water while something grows in the bed. */
export interface DryGap extends DaySpan {
  readonly days: number;
  /** It would be shorter, were the grower there. */
  readonly isAway: boolean;
}
