/** The weather of any day: of the files, else that which the means give. */
import { type Day, yearOf } from "../dates.js";
import type { DayWeather, MonthlyMeans, PlaceWeather } from "./climate.js";
import { dailyFromMonthly } from "./daily-means.js";
import { referenceEvapotranspirationMm } from "./evapotranspiration.js";
import { indexInYear, isLeapYear, monthsOfDays, onRing } from "./year-ring.js";

/** Rain of a day from the means is its share of the month's. */
export function weatherOn(place: PlaceWeather, d: Day): DayWeather {
  return (
    place.days.get(d) ??
    (usualYear(place.climate.means, isLeapYear(yearOf(d)))[indexInYear(d)] as DayWeather)
  );
}

/** What a meadow gives off on a day at a place, mm: asked for anew by each planting. */
export function meadowMmOn(place: PlaceWeather, d: Day): number {
  const ofPlace = meadows.get(place) ?? new Map<Day, number>();
  meadows.set(place, ofPlace);
  const known = ofPlace.get(d);
  if (known !== undefined) return known;
  const weather = weatherOn(place, d);
  const mm = referenceEvapotranspirationMm(d, weather, place.climate.latitudeDeg);
  ofPlace.set(d, mm);
  return mm;
}

const meadows = new WeakMap<PlaceWeather, Map<Day, number>>();

/** Of common years and of leap years. */
const usualYears = new WeakMap<MonthlyMeans, Map<boolean, readonly DayWeather[]>>();

function usualYear(means: MonthlyMeans, leap: boolean): readonly DayWeather[] {
  const years = usualYears.get(means) ?? new Map<boolean, readonly DayWeather[]>();
  usualYears.set(means, years);
  const known = years.get(leap);
  if (known !== undefined) return known;
  const [minC, maxC] = [means.minC, means.maxC].map(dailyFromMonthly);
  const days = monthsOfDays(leap).map(({ month, length }, i): DayWeather => {
    const rainMm = means.rainMm?.[month - 1];
    return {
      minC: onRing(minC as readonly number[], i, leap),
      maxC: onRing(maxC as readonly number[], i, leap),
      ...(rainMm === undefined ? {} : { rainMm: rainMm / length }),
      from: "means",
    };
  });
  years.set(leap, days);
  return days;
}
