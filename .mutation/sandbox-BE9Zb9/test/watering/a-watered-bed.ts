/** Beds, plantings and places for tests of watering: a test states only what it is about. */
// @ts-nocheck

import type { DayWeather, PlaceWeather } from "../../src/climate/climate.js";
import { day, type Day } from "../../src/dates.js";
import type { Bed, Planting } from "../../src/garden/garden.js";
import { plantingLife } from "../../src/stages/planting-life.js";
import { loadTables } from "../../src/tables.js";
import type { Grown } from "../../src/watering/growing.js";
import { aPlant } from "../stages/a-warm-place.js";

const { catalogue } = loadTables();
export const { cropCoefficients, wateringFactors } = loadTables();
export const tables = { cropCoefficients, wateringFactors };

export const season = { from: day("2027-03-01"), to: day("2027-10-31") };

export const grown = (key: string, times: Partial<Planting>, id = key): Grown => {
  const crop = catalogue.crops.find((c) => c.key === key);
  if (crop === undefined) throw new Error(`no crop ${key}`);
  const planting = { ...aPlant(crop, times), id };
  return { planting, crop, life: plantingLife(planting, crop, { hemisphere: "north", season }) };
};

export const bed = (differs: Partial<Bed> = {}): Bed => ({
  id: "b",
  name: "b",
  amendments: [],
  plantings: [],
  ...differs,
});

interface PlaceDiffers {
  readonly minC?: number;
  readonly maxC?: number;
  /** Of each month, mm; `none` where it is not known. */
  readonly rainMm?: number | "none";
  readonly latitudeDeg?: number;
  readonly days?: Readonly<Record<string, Omit<DayWeather, "from">>>;
  /** Of which file the days are. */
  readonly from?: "seen" | "forecast";
}

/** Every month alike: 10 to 20 degC and no rain, at 50 degrees north, unless told otherwise. */
export function aPlace({
  minC = 10,
  maxC = 20,
  rainMm = 0,
  latitudeDeg = 50,
  days = {},
  from = "seen",
}: PlaceDiffers = {}): PlaceWeather {
  const months = (value: number): number[] => Array<number>(12).fill(value);
  return {
    climate: {
      means: {
        minC: months(minC),
        maxC: months(maxC),
        ...(rainMm === "none" ? {} : { rainMm: months(rainMm) }),
      },
      origin: "a test",
      errorC: 0,
      daySdC: 0,
      latitudeDeg,
    },
    days: new Map(
      Object.entries(days).map(([on, weather]): [Day, DayWeather] => [
        day(on),
        { ...weather, from, ...(from === "seen" ? { isRainSeen: true } : {}) },
      ]),
    ),
  };
}
