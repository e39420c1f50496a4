/** What mulch and a cover change of a bed's water. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type Bed, type CoverKind, keepsRainOut, type Mulch, standsOn } from "../garden/index.js";
import type { Coefficients, FoundCoefficients } from "./coefficients.js";
import type { Factor, WateringFactors } from "./factors.js";

type Known = Extract<FoundCoefficients, { readonly ok: true }>;

/**
 * Film takes a share of all. Straw and its like take a share of what the soil gives off: in the initial
 * period that is nearly all, later what the whole gives off above the plants alone.
 *
 * @source in `watering-factors.yaml`
 */
export function underMulch(
  { whole, plantsAlone }: Known,
  mulch: Mulch | undefined,
  factors: WateringFactors,
): Coefficients {
  if (mulch === undefined) return whole;
  if (mulch === "black-film") {
    const left = 1 - factors.plastic_mulch_less_kc_percent.value / 100;
    return { initial: whole.initial * left, mid: whole.mid * left, end: whole.end * left };
  }
  const less = factors.organic_mulch_less_evaporation_percent.value / 100;
  const later = (key: "mid" | "end"): number =>
    whole[key] - less * Math.max(0, whole[key] - plantsAlone[key]);
  return { initial: whole.initial * (1 - less), mid: later("mid"), end: later("end") };
}

/** The roof over a bed on a day: it keeps rain out and the air still. Fleece does neither. */
export function roofOn(
  { cover }: Pick<Bed, "cover">,
  d: Day,
): Exclude<CoverKind, "fleece"> | undefined {
  return cover && keepsRainOut(cover) && standsOn(cover, d) ? cover.kind : undefined;
}

/** Under a roof, against the meadow outdoors; FAO-56 eq. 52 does not hold inside. */
export function roofFactor(roof: Exclude<CoverKind, "fleece">, factors: WateringFactors): Factor {
  return factors[`cover_${roof}_et_percent`];
}
