/** A place of one temperature, so that degree days can be reckoned in the head. */
// @ts-nocheck

import type { Thresholds, Warmer, Warmth } from "../../src/climate/index.js";
import type { Crop, CropWarmth } from "../../src/crops/crop.js";
import { addDays, day, type Day, daysBetween } from "../../src/dates.js";
import type { Garden, Planting } from "../../src/garden/garden.js";
import type { Here, Place } from "../../src/stages/place.js";
import { loadTables } from "../../src/tables.js";

const { catalogue } = loadTables();

export function cropWith(key: string, warmth: Partial<CropWarmth>): Crop {
  const found = catalogue.crops.find((c) => c.key === key);
  if (found === undefined) throw new Error(`no crop ${key}`);
  const none: CropWarmth = {
    method: "single-sine",
    baseC: 10,
    auto: true,
    reason: "for a test",
    sums: [],
    rows: [],
  };
  return { ...found, warmth: { ...none, ...warmth } };
}

export function aPlant(crop: Crop, times: Partial<Planting> = {}): Planting {
  return {
    id: "p",
    name: "p",
    bed: "b",
    crop: crop.key,
    cropWord: crop.key,
    waterL: 1,
    sprayL: 1,
    sprayIsUsual: true,
    level: 1,
    feed: "by-rule",
    path: [],
    seen: [],
    ...times,
  };
}

const seasonOf2027 = { from: day("2027-03-01"), to: day("2027-10-31") };

/** Every day as warm as another, covers and all. */
function evenWarmth(temperatureC: number): Warmth {
  const perDay = (thresholds: Thresholds, on: Day, warmer: readonly Warmer[] = []): number => {
    const added = warmer
      .filter(({ from, to }) => (from ?? on) <= on && on <= (to ?? on))
      .reduce((sum, { byC }) => sum + byC, 0);
    const { baseC, upperC = Infinity } = thresholds;
    return Math.max(0, Math.min(temperatureC + added, upperC) - baseC);
  };
  return {
    sum: ({ from, to }, thresholds, warmer) => {
      let sum = 0;
      for (let on = from; on <= to; on = addDays(on, 1)) sum += perDay(thresholds, on, warmer);
      return sum;
    },
    reached: (degreeDays, { from, until }, thresholds, warmer) => {
      if (degreeDays <= 0) return from;
      let sum = 0;
      for (let on = from; daysBetween(on, until) >= 0; on = addDays(on, 1)) {
        sum += perDay(thresholds, on, warmer);
        if (sum >= degreeDays - 1e-9) return on;
      }
      return undefined;
    },
  };
}

/** 50 degrees north, with no error of the means. */
export const climateForTests = {
  means: { maxC: [], minC: [] },
  origin: "a place for tests",
  errorC: 0,
  daySdC: 0,
  latitudeDeg: 50,
};

/** At 20 degrees C all year, 50 degrees north, with no error of the means and no frost. */
export function aWarmPlace(
  differs: Partial<Here> = {},
  temperatureC = 20,
  season: Garden["season"] = seasonOf2027,
): Place {
  return {
    hemisphere: "north",
    season,
    here: {
      climate: climateForTests,
      warmth: evenWarmth(temperatureC),
      wish: "auto",
      raisedAtC: 20,
      mostShiftDays: 28,
      rowBandShare: 0.25,
      cover: [],
      cropOf: () => undefined,
      ...differs,
    },
  };
}
