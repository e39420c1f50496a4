/** Litres a week for a bed: by the weather and what grows there, or the amount that the grower gave. */
// @ts-nocheck

import type { PlaceWeather } from "../climate/index.js";
import type { DaySpan } from "../dates.js";
import type { Bed, WateringWish } from "../garden/index.js";
import { given } from "../values.js";
import { byAmount } from "./by-amount.js";
import { byWeather, type WateringTables } from "./by-weather.js";
import { groundOf, type Grown, growingSpan } from "./growing.js";
import type { BedWatering, Shortfall, WateringWeek } from "./watering.js";
import { joinedWeeks } from "./weeks.js";

export interface WateringPlace {
  /** Absent where nothing is known of the climate: only amounts can be told then. */
  readonly weather: PlaceWeather | undefined;
  readonly season: DaySpan;
}

type WateredBed = Pick<Bed, "id" | "name" | "areaM2" | "cover" | "soil">;

/**
 * Weeks in which something grows in the bed outdoors, Monday to Sunday. With `auto` each planting gives
 * off reference evapotranspiration times its crop coefficient, over its ground, less the rain of the
 * week; nothing is carried over. A planting of which that can't be told stands in `unknown`.
 *
 * @param grown the bed's plantings with their lives
 * @source FAO-56 eqs 52, 58 and 66; what mulch and covers change has its own, in `watering-factors.yaml`
 */
export function bedWatering(
  bed: WateredBed,
  wish: WateringWish,
  grown: readonly Grown[],
  { weather, season }: WateringPlace,
  tables: WateringTables,
): BedWatering {
  const spans = grown.flatMap((one) => {
    const span = growingSpan(one, season);
    return span === undefined || one.crop === undefined ? [] : [{ ...one, crop: one.crop, span }];
  });
  const standing = spans.map((one) => ({ ...one, ground: groundOf(one, spans, bed) }));
  const listed = grown
    .filter(({ crop }) => crop === undefined)
    .map(({ planting }) => ({
      planting: planting.id,
      why: `\`${planting.cropWord}\` is no crop that is known`,
    }));
  const common = { bed: bed.id, bedName: bed.name };
  const each = standing.map((one) => byWeather(one, bed, weather, tables));
  const known = each.flatMap((one) => (one.ok ? [one.value] : []));
  const areas = known.map(({ watering }) => watering);
  const weeksBy = (key: "weeks" | "usualWeeks"): WateringWeek[] =>
    joinedWeeks(areas.map(({ areaM2, [key]: weeks }) => ({ areaM2, weeks })));
  if (wish !== "auto") {
    const amount = byAmount(bed, wish, standing);
    const shortfall = worstShortfall(amount.weeks, weeksBy("usualWeeks"));
    return { ...common, ...amount, ...given({ shortfall }) };
  }
  const [weeks, usualWeeks] = [weeksBy("weeks"), weeksBy("usualWeeks")];
  const usualRainMm = Math.max(
    0,
    ...usualWeeks.map(({ needMm = 0, rainMm = 0 }) => Math.min(needMm, rainMm)),
  );
  return {
    ...common,
    by: "weather",
    plantings: areas,
    unknown: [...each.flatMap((one) => (one.ok ? [] : [one.unknown])), ...listed],
    assumptions: [...new Set(known.flatMap(({ assumptions }) => assumptions))],
    weeks,
    usualWeeks,
    ...(usualRainMm >= 1 ? { usualRainMm } : {}),
  };
}

/** Of weeks in which less than half of what is asked for is poured, that with the smallest share. */
function worstShortfall(
  poured: readonly WateringWeek[],
  asked: readonly WateringWeek[],
): Shortfall | undefined {
  const asksL = new Map(asked.map(({ from, waterL }) => [from, waterL]));
  const short = poured.flatMap(({ from, to, waterL }) => {
    const week = { from, to, waterL, asksL: asksL.get(from) ?? 0 };
    return waterL < week.asksL / 2 ? [week] : [];
  });
  return short.sort((a, b) => a.waterL / a.asksL - b.waterL / b.asksL)[0];
}

/** Spans in which something that is known grows in the bed. */
export function growingSpans(grown: readonly Grown[], season: DaySpan): DaySpan[] {
  return grown.flatMap((one) => growingSpan(one, season) ?? []);
}
