/** The water side of a plan. */
// @ts-nocheck

import type { BedWatering, DryGap, WateringDay, WateringWeek } from "../watering/index.js";

/** Litres a week for a bed, with what its rounds bring of it. */
export interface PlanWatering extends Omit<
  BedWatering,
  "plantings" | "weeks" | "usualWeeks" | "assumptions"
> {
  readonly weeks: readonly PlanWateringWeek[];
  /** Sorted; also those that are past. */
  readonly days: readonly WateringDay[];
  /** The longest time without water; absent where nothing grows, or every day is a watering day. */
  readonly dryGap?: DryGap;
}

export interface PlanWateringWeek extends WateringWeek {
  /** To be poured in a usual year, by monthly means alone, L. */
  readonly usualL: number;
}
