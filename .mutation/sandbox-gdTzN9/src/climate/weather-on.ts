/** The weather of any day: of the files, else that which the means give. */
// @ts-nocheck

import { type Day, monthOf, yearOf } from "../dates.js";
import type { DayWeather, PlaceWeather } from "./climate.js";
import { dailyFromMonthly } from "./daily-means.js";
import { daysInMonth, indexInYear, isLeapYear, onRing } from "./year-ring.js";

/** Rain of a day from the means is its share of the month's. */
export function weatherOn(place: PlaceWeather, d: Day): DayWeather {
  const ofFile = place.days.get(d);
  if (ofFile) return ofFile;
  const { maxC, minC, rainMm } = place.climate.means;
  const ofDay = (means: readonly number[]): number =>
    onRing(dailyFromMonthly(means), indexInYear(d), isLeapYear(yearOf(d)));
  const rain = rainMm?.[monthOf(d) - 1];
  return {
    minC: ofDay(minC),
    maxC: ofDay(maxC),
    ...(rain === undefined ? {} : { rainMm: rain / daysInMonth(d) }),
    from: "means",
  };
}
