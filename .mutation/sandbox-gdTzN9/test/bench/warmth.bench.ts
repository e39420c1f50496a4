/**
 * Warmth of ten years of daily weather for 40 beds, to be under 300 ms: a bed is planted each year and
 * asks for three stages, by its own thresholds, with the band of the means' error on both sides; and
 * for comparison the same days walked one by one, which is what is done where nothing is kept (a tenth of
 * the beds).
 */
// @ts-nocheck

import { bench, describe } from "vitest";
import { degreeDays } from "../../src/climate/degree-days.js";
import {
  type DayWeather,
  degreeDayMethods,
  type PlaceWeather,
  type Thresholds,
  type Warmer,
  type Warmth,
  warmthOf,
  weatherOn,
} from "../../src/climate/index.js";
import { addDays, type Day, day } from "../../src/dates.js";
import { cruPoints, placeWeather } from "../support/a-place.js";

const firstYear = 2017;
const years = Array.from({ length: 10 }, (_, i) => firstYear + i);
const beds = Array.from({ length: 40 }, (_, i) => i);
const bands: readonly (readonly Warmer[])[] = [0, -0.76, 0.76].map((byC) => [
  { byC, onMeansOnly: true },
]);

/** Anew each time, so that nothing is kept from the run before. */
function tenYears(): PlaceWeather {
  const means = { maxC: [...cruPoints.eugene.maxC], minC: [...cruPoints.eugene.minC] };
  const first = day(`${firstYear}-01-01`);
  // The last half year is from the means, as in a season under way.
  const days = Array.from({ length: 3470 }, (_, i): [Day, DayWeather] => {
    const d = addDays(first, i);
    const { minC, maxC } = weatherOn(placeWeather(means), d);
    const byC = 4 * Math.sin(i * 1.7);
    return [d, { minC: minC + byC, maxC: maxC + byC, from: "seen" }];
  });
  return placeWeather(means, days);
}

function ofBed(bed: number): Thresholds {
  return {
    method: degreeDayMethods[bed % 3] ?? "simple",
    baseC: 4 + (bed % 8),
    ...(bed % 2 === 0 ? { upperC: 28 } : {}),
  };
}

function season(year: number, bed: number): { readonly from: Day; readonly until: Day } {
  return { from: addDays(day(`${year}-04-01`), bed), until: day(`${year + 1}-03-31`) };
}

function askAll(reached: Warmth["reached"], some: readonly number[]): void {
  for (const bed of some)
    for (const year of years)
      for (const sum of [150, 600, 1200])
        for (const warmer of bands) reached(sum, season(year, bed), ofBed(bed), warmer);
}

function dayByDay(place: PlaceWeather): Warmth["reached"] {
  return (sum, { from, until }, thresholds) => {
    let soFar = 0;
    for (let d = from; d <= until; d = addDays(d, 1)) {
      soFar += degreeDays(weatherOn(place, d), thresholds);
      if (soFar >= sum) return d;
    }
    return undefined;
  };
}

const place = tenYears();

describe("ten years of daily weather", () => {
  bench(
    "warmth of 40 beds",
    () => {
      askAll(warmthOf(place).reached, beds);
    },
    { iterations: 20, warmupIterations: 2, time: 0 },
  );
  bench(
    "day by day, 4 of them",
    () => {
      askAll(dayByDay(place), beds.slice(0, 4));
    },
    { iterations: 5, warmupIterations: 1, time: 0 },
  );
});
