/** Rain that plants can use. */
import { daysInMonth, type PlaceClimate, type PlaceWeather } from "../climate/index.js";
import { type Day, monthOf } from "../dates.js";

// USDA Soil Conservation Service, as FAO's CROPWAT has it (FAO Irrigation and Drainage Paper 46, 1992):
// of a month's rain, mm.
export function effectiveRainMm(monthMm: number): number {
  return monthMm <= 250 ? (monthMm * (125 - 0.2 * monthMm)) / 125 : 125 + 0.1 * monthMm;
}

/**
 * A gauge's rain as it fell; else the usable rain of the month's mean, spread evenly over its days:
 * rain of a forecast has not fallen. Undefined where nobody told any.
 */
export function usableRainMm(place: PlaceWeather, d: Day): number | undefined {
  const told = place.days.get(d);
  if (told?.isRainSeen && told.rainMm !== undefined) return told.rainMm;
  const monthMm = place.climate.means.rainMm?.[monthOf(d) - 1];
  return monthMm === undefined ? undefined : effectiveRainMm(monthMm) / daysInMonth(d);
}

const usualYears = new WeakMap<PlaceClimate, PlaceWeather>();

/** The place as its monthly means have it: one and the same for all who ask. */
export function usualYear({ climate }: PlaceWeather): PlaceWeather {
  const usual = usualYears.get(climate) ?? { climate, days: new Map() };
  usualYears.set(climate, usual);
  return usual;
}
