/** Days on which a bed is watered. */
// @ts-nocheck

import type { PlaceWeather } from "../climate/index.js";
import { type Day, type DaySpan, eachDay, weekdayOf, within } from "../dates.js";
import type { Bed, Garden } from "../garden/index.js";
import type { WateringFactors } from "./factors.js";
import { roofOn } from "./surroundings.js";
import type { BedWatering, WateringDay } from "./watering.js";

/** What tells whether a bed gets water on a day, its rounds aside. */
export interface WaterSources {
  readonly garden: Pick<Garden, "watering" | "feeding">;
  readonly bed: Pick<Bed, "cover">;
  /** Only days of weather files tell when it rained. */
  readonly place: PlaceWeather | undefined;
  readonly factors: Pick<WateringFactors, "wetting_rain_mm">;
}

/**
 * What is left of each week beside its rounds, in like parts on its watering days; none on days on
 * which the grower is away or nothing grows. A day of rain that came off the week already has no part;
 * of any other the part is left to the rain. A week without any watering day has none.
 *
 * @param by only weeks by the weather have seen rain taken off
 * @param growing spans in which something grows in the bed
 */
export function wateringDays(
  { by, weeks }: Pick<BedWatering, "by" | "weeks">,
  growing: readonly DaySpan[],
  sources: WaterSources,
): WateringDay[] {
  const isWet = (d: Day): boolean => isWetByRain(d, sources);
  const isTakenOff = (d: Day): boolean =>
    by === "weather" && isWet(d) && sources.place?.days.get(d)?.isRainSeen === true;
  const hasPart = (d: Day): boolean =>
    growing.some((span) => within(d, span)) && isWateredOn(d, sources.garden) && !isTakenOff(d);
  return weeks.flatMap(({ from, to, leftL = 0 }) => {
    const days = leftL > 0 ? [...eachDay({ from, to })].filter(hasPart) : [];
    return days.filter((day) => !isWet(day)).map((day) => ({ day, waterL: leftL / days.length }));
  });
}

type WateringGarden = WaterSources["garden"];

/** A watering day on which the grower is there. */
export function isWateredOn(d: Day, garden: WateringGarden): boolean {
  return isWateringDay(d, garden) && !isAwayOn(d, garden);
}

export function isWateringDay(d: Day, { watering }: WateringGarden): boolean {
  return watering.days.includes(weekdayOf(d));
}

export function isAwayOn(d: Day, { feeding }: WateringGarden): boolean {
  return feeding.away.some((span) => within(d, span));
}

/** By the rain that a weather file tells of that day. */
export function isWetByRain(d: Day, { bed, place, factors }: WaterSources): boolean {
  return (
    roofOn(bed, d) === undefined &&
    (place?.days.get(d)?.rainMm ?? 0) >= factors.wetting_rain_mm.value
  );
}
