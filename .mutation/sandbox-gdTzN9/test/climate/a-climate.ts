/** Climates for tests: a test states only what it is about. */
// @ts-nocheck

import type { PlaceClimate } from "../../src/climate/climate.js";

interface ClimateDiffers {
  readonly minC?: readonly number[];
  readonly maxC?: readonly number[];
  readonly latitudeDeg?: number;
  readonly longitudeDeg?: number;
}

/** Mean minima of Potsdam's kind unless told otherwise, days ten degrees wide. */
export function placeClimate({
  minC = temperate,
  maxC,
  ...where
}: ClimateDiffers = {}): PlaceClimate {
  return {
    means: { minC, maxC: maxC ?? minC.map((c) => c + 10) },
    origin: "a test",
    errorC: 0.76,
    daySdC: 3.5,
    latitudeDeg: where.latitudeDeg ?? 52,
    ...(where.longitudeDeg === undefined ? {} : { longitudeDeg: where.longitudeDeg }),
  };
}

/** degC, January first. */
export const temperate: readonly number[] = [-2, -2, 1, 4, 8, 12, 14, 13, 10, 6, 2, -1];
