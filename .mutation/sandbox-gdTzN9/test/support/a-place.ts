/** Places and their climates for tests. */
// @ts-nocheck

import type { DayWeather, MonthlyMeans, PlaceWeather } from "../../src/climate/index.js";
import type { Day } from "../../src/dates.js";
import { loadTables } from "../../src/tables.js";

/** Weather of twelve means, and of single days where they are given. */
export function placeWeather(
  means: MonthlyMeans,
  days: Iterable<readonly [Day, DayWeather]> = [],
  daySdC = loadTables().climate.day_sd_c,
): PlaceWeather {
  return {
    climate: {
      means,
      origin: "a test",
      errorC: 0.76,
      daySdC,
      latitudeDeg: 50,
    },
    days: new Map(days),
  };
}

/** The same weather half a year on: of a place as far south as this one is north. */
export function halfAYearOn(means: MonthlyMeans): MonthlyMeans {
  const turned = (months: readonly number[]): number[] => [
    ...months.slice(6),
    ...months.slice(0, 6),
  ];
  return { maxC: turned(means.maxC), minC: turned(means.minC) };
}

/**
 * Points of CRU CL 2.0 (New, Lister, Hulme and Makin 2002, Climate Research 21:1-25), means of 1961 to
 * 1990 with the rise to 1979 to 2013 (CHELSA V1.1 less CRU) added: means in degC.
 */
export const cruPoints = {
  // 37.84 N 4.85 W, 90 m.
  cordoba: cruPoint(
    0.8,
    [13.4, 15.2, 18.1, 20.5, 25.5, 30.3, 35.2, 34.8, 30.5, 23.8, 17.3, 13.6],
    [3.3, 4.2, 5.5, 7.7, 10.7, 14.3, 17.2, 17.2, 15.1, 11, 6.3, 3.6],
  ),
  // 44.13 N 123.22 W, 109 m.
  eugene: cruPoint(
    0.7,
    [8.3, 11, 13.3, 15.6, 19.1, 22.8, 26.7, 27, 24.2, 18, 11.5, 8.2],
    [1.7, 2.6, 3.5, 4.4, 6.5, 9.4, 10.9, 11.2, 9.1, 6.2, 4.2, 2.1],
  ),
  // Tri-county Airport, North Carolina, 36.30 N 77.17 W, 21 m.
  lewiston: cruPoint(
    0.6,
    [9.9, 11.4, 16.7, 21.9, 26.1, 29.8, 31.7, 31, 27.9, 22.8, 17.7, 12.2],
    [-2.7, -1.5, 2.7, 7.2, 12.7, 17, 19.5, 19, 15.5, 8.9, 3.7, -0.4],
  ),
} as const;

function cruPoint(riseC: number, maxC: readonly number[], minC: readonly number[]): MonthlyMeans {
  const raised = (months: readonly number[]): number[] => months.map((t) => t + riseC);
  return { maxC: raised(maxC), minC: raised(minC) };
}
