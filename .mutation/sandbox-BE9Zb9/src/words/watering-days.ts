/** A day's watering, and what a round is of its week's, as a person says it. */
// @ts-nocheck

import { type Amounts, litersPerVolume, volumeText } from "../garden/index.js";
import type { BedRound, PlanWatering, PlanWateringWeek } from "../season/index.js";
import { waterMeasured } from "./cans.js";
import { nameInText } from "./names.js";
import { roughL, waterOfWeek, weeklyWater } from "./watering.js";

/** One bed's part of a day. */
export interface BedWater {
  readonly bedName: string;
  /** As it is poured ({@link pouredL}). */
  readonly waterL: number;
  readonly week: PlanWateringWeek;
}

/**
 * As a person pours it: whole litres, half gallons, never nothing; of 20 L or 5 gal on, 5 L and whole
 * gallons, so that little changes of the weather change no entry.
 */
export function pouredL(waterL: number, amounts: Amounts): number {
  const unitL = litersPerVolume[amounts];
  const [fineL, coarseL, coarseFromL] =
    amounts === "metric" ? [1, 5, 20] : [unitL / 2, unitL, 5 * unitL];
  const stepL = waterL < coarseFromL ? fineL : coarseL;
  return Math.max(1, Math.round(waterL / stepL)) * stepL;
}

/** Whether anything is left to pour in a week; what no can measures is nothing. */
export function isLeftToPour({ leftL = 0 }: PlanWateringWeek, amounts: Amounts): boolean {
  return weeklyWater(leftL, amounts) !== "none";
}

/**
 * The week as it is told is the sum of what is poured and the rounds' cans.
 *
 * @example "South wall: 40 L of this week's 97 L, 12 L of it in the rounds"
 */
export function bedWaterInFull({ bedName, waterL, week }: BedWater, amounts: Amounts): string {
  const { roundL = 0, leftL = 0 } = week;
  const toldL = pouredL(leftL, amounts) + roundL;
  const now = volumeText(waterL, amounts);
  const whole = waterOfWeek({ ...week, waterL: toldL }, amounts);
  const words = now === whole ? `${now}, all of this week's` : `${now} of this week's ${whole}`;
  return `${nameInText(bedName)}: ${words}`;
}

/**
 * What a round is of its bed's week: by the weather, that of a usual year and a round figure, so that a
 * published round does not change with each day's weather.
 *
 * @example "water: in a usual year the bed wants about 85 L this week, 12 L of it in these cans"
 */
export function roundOfWeek(
  { mixes }: BedRound,
  by: PlanWatering["by"],
  { waterL, usualL }: PlanWateringWeek,
  amounts: Amounts,
): string {
  const cansL = mixes
    .filter(({ route }) => route === "drench")
    .reduce((sum, mix) => sum + mix.waterL, 0);
  const wantedL = by === "amount" ? waterL : roughL(usualL, amounts);
  const wanted = weeklyWater(wantedL, amounts);
  const isEnough = wanted === "none";
  const whose = by === "amount" ? "the bed wants" : "in a usual year the bed wants";
  const wants = isEnough
    ? `${whose} none beside the rain this week`
    : `${whose} ${by === "amount" ? "" : "about "}${wanted} this week`;
  const inCans = waterMeasured(cansL, amounts);
  if (cansL === 0) return `water: ${wants}${isEnough ? "" : ", none of it in a spray"}`;
  return cansL < wantedL
    ? `water: ${wants}, ${inCans} of it in these cans`
    : `water: ${wants}; these cans bring ${inCans}`;
}
