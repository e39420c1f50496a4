/**
 * What FAO-56 (Allen and others 1998) makes of the sun, and the program does not: radiation, vapour,
 * wind, evaporation. Its worked examples so put the program's own sun to the proof.
 */
// @ts-nocheck

import type { Day } from "../../src/dates.js";
import { dayLengthH, extraterrestrialMjM2 } from "../../src/climate/sun.js";

export interface Place {
  readonly latitudeDeg: number;
  readonly heightM: number;
}

export interface Air {
  readonly minC: number;
  readonly maxC: number;
  readonly vapourKPa: number;
  /** At 2 m, m/s. */
  readonly windMS: number;
}

/** Degrees and minutes; south where the degrees are below 0. */
export function latitude(degrees: number, minutes: number): number {
  return degrees + (Math.sign(degrees) * minutes) / 60;
}

// Eq. 7.
const pressureKPa = (heightM: number): number => 101.3 * ((293 - 0.0065 * heightM) / 293) ** 5.26;

// Eq. 8.
export const psychrometricKPaPerC = (heightM: number): number => 0.000665 * pressureKPa(heightM);

// Eq. 11.
export const saturationKPa = (t: number): number => 0.6108 * Math.exp((17.27 * t) / (t + 237.3));

// Eq. 12.
export const meanSaturationKPa = (minC: number, maxC: number): number =>
  (saturationKPa(minC) + saturationKPa(maxC)) / 2;

// Eq. 13.
export const slopeKPaPerC = (t: number): number => (4098 * saturationKPa(t)) / (t + 237.3) ** 2;

// Eq. 17.
export const vapourKPa = (air: {
  minC: number;
  maxC: number;
  leastPercent: number;
  mostPercent: number;
}): number =>
  (saturationKPa(air.minC) * air.mostPercent + saturationKPa(air.maxC) * air.leastPercent) / 200;

// Eq. 35.
export const solarMjM2 = (d: Day, latitudeDeg: number, sunshineH: number): number =>
  (0.25 + (0.5 * sunshineH) / dayLengthH(d, latitudeDeg)) * extraterrestrialMjM2(d, latitudeDeg);

// Eq. 37.
export const clearSkyMjM2 = (d: Day, { latitudeDeg, heightM }: Place): number =>
  (0.75 + 2e-5 * heightM) * extraterrestrialMjM2(d, latitudeDeg);

// Eq. 38, of grass.
export const netShortwaveMjM2 = (solar: number): number => 0.77 * solar;

// Eq. 39.
export function netLongwaveMjM2(
  air: Pick<Air, "minC" | "maxC" | "vapourKPa">,
  solar: number,
  clearSky: number,
): number {
  const [low, high] = [(air.minC + 273.16) ** 4, (air.maxC + 273.16) ** 4];
  return (
    ((4.903e-9 * (low + high)) / 2) *
    (0.34 - 0.14 * Math.sqrt(air.vapourKPa)) *
    ((1.35 * solar) / clearSky - 0.35)
  );
}

// Eq. 43: of a month, from the means of the months before and after.
export const soilHeatMjM2 = (beforeC: number, afterC: number): number => 0.07 * (afterC - beforeC);

// Eq. 44: the same, where the month after is not known.
export const soilHeatSoFarMjM2 = (beforeC: number, monthC: number): number =>
  0.14 * (monthC - beforeC);

// Eq. 47.
export const windAt2M = (windMS: number, heightM: number): number =>
  (windMS * 4.87) / Math.log(67.8 * heightM - 5.42);

// Eq. 50, inland.
export const solarFromRangeMjM2 = (
  d: Day,
  latitudeDeg: number,
  { minC, maxC }: Pick<Air, "minC" | "maxC">,
): number => 0.16 * Math.sqrt(maxC - minC) * extraterrestrialMjM2(d, latitudeDeg);

// Eq. 6, mm of grass in a day; the temperature's mean is that of its two ends.
export function penmanMonteithMm(
  d: Day,
  place: Place,
  air: Air,
  energy: { readonly solarMjM2: number; readonly soilHeatMjM2: number },
): number {
  const meanC = (air.minC + air.maxC) / 2;
  const net =
    netShortwaveMjM2(energy.solarMjM2) -
    netLongwaveMjM2(air, energy.solarMjM2, clearSkyMjM2(d, place));
  const slope = slopeKPaPerC(meanC);
  const psychrometric = psychrometricKPaPerC(place.heightM);
  const deficit = meanSaturationKPa(air.minC, air.maxC) - air.vapourKPa;
  return (
    (0.408 * slope * (net - energy.soilHeatMjM2) +
      ((psychrometric * 900) / (meanC + 273)) * air.windMS * deficit) /
    (slope + psychrometric * (1 + 0.34 * air.windMS))
  );
}
