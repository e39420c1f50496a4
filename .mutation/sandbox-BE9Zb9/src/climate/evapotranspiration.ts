/** What a well watered meadow gives off in a day, from the day's temperatures alone. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { extraterrestrialMjM2 } from "./sun.js";

/**
 * Reference evapotranspiration, mm a day; 0 where there is no sun, or no warmth to speak of.
 *
 * @param latitudeDeg south is negative
 * @source FAO-56 (Allen and others 1998), eq. 52; low where wind passes 3 m/s, high where air is humid
 */
export function referenceEvapotranspirationMm(
  d: Day,
  { minC, maxC }: { readonly minC: number; readonly maxC: number },
  latitudeDeg: number,
): number {
  const meanC = (minC + maxC) / 2;
  const rangeC = Math.max(0, maxC - minC);
  // FAO-56 eq. 52; 0.408 turns MJ/m2 into mm, eq. 20.
  const mm = 0.0023 * (meanC + 17.8) * Math.sqrt(rangeC) * 0.408;
  return Math.max(0, mm * extraterrestrialMjM2(d, latitudeDeg));
}
