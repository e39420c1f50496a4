/** A day's watering, and what a round is of its week's, as a person says it. */
import { type Amounts, counted, litersPerVolume, volumeText } from "../garden/index.js";
import type { BedRound, PlanWatering, PlanWateringWeek } from "../season/index.js";
import { waterMeasured } from "./cans.js";
import { nameInText, namesWithin } from "./names.js";
import { weeklyWater, waterOfWeek } from "./watering.js";

/** What a calendar's title may have. */
const titleLetters = 40;

/** One bed's part of a day. */
export interface BedWater {
  readonly bedName: string;
  /** As it is poured ({@link pouredL}). */
  readonly waterL: number;
  readonly week: PlanWateringWeek;
}

/** As a person pours it: whole litres, half gallons; never nothing. */
export function pouredL(waterL: number, amounts: Amounts): number {
  const stepL = amounts === "metric" ? 1 : litersPerVolume[amounts] / 2;
  return Math.max(1, Math.round(waterL / stepL)) * stepL;
}

/** Beds by falling amounts: `Water 84 L: South wall, Glasshouse, …` */
export function wateringTitle(beds: readonly BedWater[], amounts: Amounts): string {
  const inAllL = beds.reduce((sum, { waterL }) => sum + waterL, 0);
  const before = `Water ${volumeText(inAllL, amounts)}: `;
  return namesWithin(
    before,
    beds.map(({ bedName }) => bedName),
    titleLetters,
  );
}

/** `South wall: 42 L of this week's 96 L, 12 L of it in the rounds` */
export function bedWaterInFull({ bedName, waterL, week }: BedWater, amounts: Amounts): string {
  const [now, whole] = [volumeText(waterL, amounts), waterOfWeek(week, amounts)];
  const words = now === whole ? `${now}, all of this week's` : `${now} of this week's ${whole}`;
  return `${nameInText(bedName)}: ${words}`;
}

/**
 * What a round is of its bed's week: by the weather, that of a usual year and a round figure, so that a
 * published round does not change with each day's weather.
 *
 * @example "water: in a usual year the bed wants some 85 L this week, 12 L of it in these cans"
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
  const wanted = by === "amount" ? weeklyWater(waterL, amounts) : roughWater(usualL, amounts);
  const isEnough = wanted === "none";
  const bed = by === "amount" ? "the bed" : "in a usual year the bed";
  const wants = isEnough
    ? `${bed} wants none beside the rain this week`
    : `${bed} wants ${by === "amount" ? "" : "some "}${wanted} this week`;
  const inCans = waterMeasured(cansL, amounts);
  if (cansL === 0) return `water: ${wants}${isEnough ? "" : ", none of it in a spray"}`;
  return cansL < usualL
    ? `water: ${wants}, ${inCans} of it in these cans`
    : `water: ${wants}; these cans bring ${inCans}`;
}

/** `85 L`, `7 L`, `22 gal`, or `none` */
function roughWater(liters: number, amounts: Amounts): string {
  const unitL = litersPerVolume[amounts];
  const [step, from] = amounts === "metric" ? [5, 10] : [1, 3];
  const units = liters / unitL;
  return weeklyWater(units < from ? liters : Math.round(units / step) * step * unitL, amounts);
}
