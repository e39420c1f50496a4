/** Degree days of a place, summed through each year from New Year on. */
// @ts-nocheck

import { type Day, eachDay, yearOf } from "../dates.js";
import type { DayWeather, PlaceWeather, Thresholds } from "./climate.js";
import { degreeDays } from "./degree-days.js";
import { weatherOn } from "./weather-on.js";
import { isLeapYear } from "./year-ring.js";

/** Degrees added to days from the means, and to days of the weather files. */
export interface Added {
  readonly onMeansC: number;
  readonly onFilesC: number;
}

/** For each number of days from New Year on, 0 first, their degree days. */
export type YearSums = Float64Array;

/** What has been summed is kept, and years without a day of the files share it. */
export function sumsOfYears(
  place: PlaceWeather,
): (year: number, thresholds: Thresholds, added: Added) => YearSums {
  const yearsOfFiles = new Set([...place.days.keys()].map(yearOf));
  const weather = new Map<string, readonly DayWeather[]>();
  const sums = new Map<string, YearSums>();
  return (year, thresholds, added) => {
    const { method, baseC, upperC } = thresholds;
    const ofFiles = yearsOfFiles.has(year);
    const shared = ofFiles ? `${year}` : isLeapYear(year) ? "leap" : "common";
    const addedC = ofFiles ? [added.onMeansC, added.onFilesC] : [added.onMeansC];
    return once(sums, [shared, method, baseC, upperC, ...addedC].join(" "), () => {
      const days = once(weather, shared, () => weatherThrough(place, year));
      return summed(days, thresholds, added, place.climate.daySdC);
    });
  };
}

function once<T>(kept: Map<string, T>, key: string, make: () => T): T {
  const known = kept.get(key);
  if (known !== undefined) return known;
  const made = make();
  kept.set(key, made);
  return made;
}

function weatherThrough(place: PlaceWeather, year: number): readonly DayWeather[] {
  return [...eachDay({ from: `${year}-01-01` as Day, to: `${year}-12-31` as Day })].map((d) =>
    weatherOn(place, d),
  );
}

function summed(
  days: readonly DayWeather[],
  thresholds: Thresholds,
  added: Added,
  daySdC: number,
): YearSums {
  const sums = new Float64Array(days.length + 1);
  days.forEach((weather, i) => {
    const ofDay =
      weather.from === "means"
        ? spreadDegreeDays(weather, added.onMeansC, thresholds, daySdC)
        : warmedDegreeDays(weather, added.onFilesC, thresholds);
    sums[i + 1] = (sums[i] as number) + ofDay;
  });
  return sums;
}

// Three points of Gauss-Hermite quadrature: exact for means and spread, and for what a curve makes of
// them up to the fifth power. Smooth means alone give too little warmth near the base: Thom 1954,
// Monthly Weather Review 82:1-6 (from memory).
function spreadDegreeDays(
  weather: DayWeather,
  byC: number,
  thresholds: Thresholds,
  sdC: number,
): number {
  const farC = sdC * Math.sqrt(3);
  const at = (atC: number): number => warmedDegreeDays(weather, byC + atC, thresholds);
  return (at(-farC) + 4 * at(0) + at(farC)) / 6;
}

function warmedDegreeDays({ minC, maxC }: DayWeather, byC: number, thresholds: Thresholds): number {
  return degreeDays({ minC: minC + byC, maxC: maxC + byC }, thresholds);
}
