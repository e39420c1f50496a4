/** Degree days of one day from its two temperatures. */
// @ts-nocheck

import type { DayWeather, DegreeDayMethod, Thresholds } from "./climate.js";

type Temperatures = Pick<DayWeather, "minC" | "maxC">;

const ways: Readonly<
  Record<DegreeDayMethod, (day: Temperatures, baseC: number, upperC: number) => number>
> = { simple, modified, "single-sine": singleSine };

/** degC times days, never below 0. Methods differ where a temperature lies beyond a threshold. */
export function degreeDays(day: Temperatures, thresholds: Thresholds): number {
  const { method, baseC, upperC = Infinity } = thresholds;
  return Math.max(0, ways[method](day, baseC, upperC));
}

// McMaster and Wilhelm 1997, Agricultural and Forest Meteorology 87:291-300, method 1: the mean less
// the base. Both temperatures are first cut to the upper limit: so the same as AquaCrop's method 3
// (FAO, AquaCrop reference manual), whose raising of the high to the base changes no result.
function simple({ minC, maxC }: Temperatures, baseC: number, upperC: number): number {
  return (Math.min(minC, upperC) + Math.min(maxC, upperC)) / 2 - baseC;
}

// The same, method 2 (AquaCrop's too; the 86/50 F rule of maize): both temperatures are first moved
// between the thresholds, so that a cold night takes nothing from a warm day.
function modified({ minC, maxC }: Temperatures, baseC: number, upperC: number): number {
  const between = (t: number): number => Math.max(baseC, Math.min(t, upperC));
  return (between(minC) + between(maxC)) / 2 - baseC;
}

// Zalom and others 1983, University of California leaflet 21373: a sine through the two temperatures;
// horizontal cut-off, so that above the upper limit warmth counts as at the limit.
function singleSine(day: Temperatures, baseC: number, upperC: number): number {
  return sineAbove(day, baseC) - sineAbove(day, upperC);
}

/** Area between the day's sine and a threshold below it. */
function sineAbove({ minC, maxC }: Temperatures, thresholdC: number): number {
  if (maxC <= thresholdC) return 0;
  const meanC = (minC + maxC) / 2;
  if (minC >= thresholdC) return meanC - thresholdC;
  const halfRangeC = (maxC - minC) / 2;
  const crossing = Math.asin((thresholdC - meanC) / halfRangeC);
  return (
    ((meanC - thresholdC) * (Math.PI / 2 - crossing) + halfRangeC * Math.cos(crossing)) / Math.PI
  );
}
