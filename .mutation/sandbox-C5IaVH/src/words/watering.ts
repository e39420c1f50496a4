/** What beds are watered with, and how evenly, as a person says it. */
// @ts-nocheck

import { addDays, type Day, type DaySpan, monthOf, within, yearOf } from "../dates.js";
import {
  type Amounts,
  counted,
  decimal,
  litersPerVolume,
  nameOfMonth,
  shortDate,
  shortDay,
  volumeText,
} from "../garden/index.js";
import { grouped } from "../values.js";
import type { BedWatering, DryGap, Shortfall, WateringWeek } from "../watering/index.js";
import { unbroken } from "./figures.js";
import { rainText } from "./weather.js";

/** Nobody pours a week's water nearer: `38 L`, `10 1/2 gal`, or `none`. */
export function weeklyWater(liters: number, amounts: Amounts): string {
  const unitL = litersPerVolume[amounts];
  const units = liters / unitL;
  const step = amounts === "metric" || units >= 20 ? 1 : 0.5;
  const rounded = Math.round(units / step) * step;
  return rounded === 0 ? "none" : volumeText(rounded * unitL, amounts);
}

/** To 5 L, or a gallon; less than two of these as it is poured. */
export function roughL(liters: number, amounts: Amounts): number {
  const stepL = amounts === "metric" ? 5 : litersPerVolume[amounts];
  return liters < 2 * stepL ? liters : Math.round(liters / stepL) * stepL;
}

/** Means of the weeks of each month: `May 15 L, Jun 51 L, Jul and Aug 70 L, Sep to Nov none`. */
export function waterByMonth(weeks: readonly WateringWeek[], amounts: Amounts): string {
  const months = [...meansByMonth(weeks)].map(([count, liters]) => ({
    month: ((count - 1) % 12) + 1,
    text: weeklyWater(liters, amounts),
  }));
  const runs: { text: string; months: number[] }[] = [];
  for (const { month, text } of months) {
    const last = runs.at(-1);
    if (last?.text === text) last.months.push(month);
    else runs.push({ text, months: [month] });
  }
  return runs.map((run) => unbroken(`${monthsInShort(run.months)} ${run.text}`)).join(", ");
}

/** Litres a week, by months counted from the year 0, each of which begins with 12 times its year and 1. */
export function meansByMonth(weeks: readonly WateringWeek[]): Map<number, number> {
  return new Map(
    [...grouped(weeks, monthOfWeek)].map(([month, those]) => [
      month,
      those.reduce((sum, { waterL }) => sum + waterL, 0) / those.length,
    ]),
  );
}

function monthOfWeek(week: WateringWeek): number {
  return 12 * yearOf(midweek(week)) + monthOf(midweek(week));
}

/** A week is of the month that most of its days are of. */
function midweek({ from }: DaySpan): Day {
  return addDays(from, 3);
}

function monthsInShort(months: readonly number[]): string {
  const [first = "", ...others] = months.map((month) => nameOfMonth(month).slice(0, 3));
  const last = others.at(-1);
  return last === undefined ? first : `${first} ${others.length === 1 ? "and" : "to"} ${last}`;
}

/** `66 L (round 18 L)`, or nothing where nothing grows there this week. */
export function weekInRow(weeks: readonly WateringWeek[], today: Day, amounts: Amounts): string {
  const week = weeks.find((one) => within(today, one));
  if (week === undefined) return "";
  const inRounds = weeklyWater(week.roundL ?? 0, amounts);
  const whole = weeklyWater(week.waterL, amounts);
  return inRounds === "none" ? whole : `${whole} (round ${inRounds})`;
}

/** `66 L, 18 L of it in the rounds`, `none: the rain is enough` */
export function waterOfWeek(
  { waterL, rainMm, roundL = 0 }: WateringWeek,
  amounts: Amounts,
): string {
  const whole = weeklyWater(waterL, amounts);
  const inRounds = weeklyWater(roundL, amounts);
  if (inRounds === "none")
    return whole === "none" && (rainMm ?? 0) > 0 ? `${whole}: the rain is enough` : whole;
  if (roundL >= waterL) return `${whole}, and the rounds bring ${inRounds}`;
  return `${whole}, ${inRounds} of it in the rounds`;
}

/** Beds of which the same holds, by name, or together where it holds for many. */
export function bedsInWords(names: readonly string[], ofBeds: number): string {
  if (names.length <= mostBeds) return names.join(", ");
  return names.length === ofBeds ? `all ${ofBeds} beds` : `${names.length} of ${ofBeds} beds`;
}

/** So many can be named one by one. */
const mostBeds = 4;

function spanOf({ from, to, days }: DryGap, amounts: Amounts): string {
  const first = shortDate(from, amounts);
  return days === 1 ? first : `${first} to ${shortDate(to, amounts)}`;
}

/** `20 days, 8 Jul to 27 Jul, while you are away` */
export function dryGapInShort(gap: DryGap, amounts: Amounts): string {
  return `${counted(gap.days, "day")}, ${spanOf(gap, amounts)}${gap.isAway ? ", while you are away" : ""}`;
}

/** `dry for 20 days (8 Jul to 27 Jul) while you are away: have someone water` */
export function dryGapWords(gap: DryGap, amounts: Amounts): string {
  const mend = gap.isAway ? " while you are away: have someone water" : "";
  return `without water for ${counted(gap.days, "day")} (${spanOf(gap, amounts)})${mend}`;
}

/** The first advice where a sign was seen: evenness, by the days on which the bed gets water. */
export function dryBeforeSign(gap: DryGap, amounts: Amounts): string {
  return `Water first: up to that day the bed was without water for ${counted(gap.days, "day")} at the longest (${spanOf(gap, amounts)}), by your watering days, the rounds and the rain that is known.`;
}

/**
 * Whoever pours what is told and nothing more needs that rain.
 *
 * @example "The usual rain of the place is taken off already, up to 11 mm a week (1 mm is 1 L per
 *   m2): in a week without rain pour that too."
 */
export function usualRainTakenOff(
  waterings: readonly Pick<BedWatering, "usualRainMm">[],
  amounts: Amounts,
): string | undefined {
  const rained = waterings.filter(({ usualRainMm = 0 }) => usualRainMm > 0);
  if (rained.length === 0) return undefined;
  const mostMm = Math.max(...rained.map(({ usualRainMm = 0 }) => usualRainMm));
  // Not `in`, which a sentence takes for the word.
  const depth =
    amounts === "us" ? `${decimal(mostMm / 25.4, 1)} inches` : rainText(mostMm, amounts);
  const measure = amounts === "us" ? "" : " (1 mm is 1 L per m2)";
  const where =
    rained.length === waterings.length ? "" : " for beds outdoors with `watering: auto`";
  return `The usual rain of the place is taken off already${where}, up to ${depth} a week${measure}: in a week without rain pour that too.`;
}

/** `lettuce: cannot tell, since how much ground it has is not known (`area:`, or `plants:`)` */
export function unknownWater(names: readonly string[], why: string): string {
  return `${names.join(", ")}: cannot tell, since ${why}`;
}

/** `10 L a week; in the week from 12 Jul the weather of a usual year asks for about 60 L` */
export function shortfallWords({ from, waterL, asksL }: Shortfall, amounts: Amounts): string {
  const asked = weeklyWater(roughL(asksL, amounts), amounts);
  return `${weeklyWater(waterL, amounts)} a week; in the week from ${shortDate(from, amounts)} the weather of a usual year asks for about ${asked}`;
}

/**
 * A can of feed is no watering: told by the round that brings the smallest share of its week's water.
 * Undefined where each round is all the water of its week.
 */
export function feedIsNoWatering(
  waterings: readonly Pick<BedWatering, "bedName" | "weeks">[],
  amounts: Amounts,
): string | undefined {
  const rounds = waterings.flatMap(({ bedName, weeks }) =>
    weeks.flatMap(({ from, waterL, roundL = 0 }) =>
      roundL > 0 && roundL < waterL ? [{ bedName, from, waterL, roundL }] : [],
    ),
  );
  const [least] = rounds.sort((a, b) => a.roundL / a.waterL - b.roundL / b.waterL);
  if (least === undefined) return undefined;
  const { bedName, from, waterL, roundL } = least;
  return `A can of feed is not the plants' water: in the week from ${shortDay(from, amounts)} the round brings ${bedName} ${weeklyWater(roundL, amounts)} of ${weeklyWater(waterL, amounts)}. What a round brings comes off its week.`;
}
