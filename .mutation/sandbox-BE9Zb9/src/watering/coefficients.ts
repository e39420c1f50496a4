/** What crops give off against a meadow, and how that changes over their lives. */
// @ts-nocheck

import type { Crop } from "../crops/index.js";
import { type Day, daysBetween } from "../dates.js";
import type { Planting } from "../garden/index.js";
import type { GrowthPeriods } from "../stages/index.js";
import { given } from "../values.js";

/** Of the initial and middle periods, and of the last day; between them straight lines. */
export interface Coefficients {
  readonly initial: number;
  readonly mid: number;
  readonly end: number;
}

export interface CoefficientRow {
  readonly crop?: string;
  readonly group?: string;
  readonly printed_name: string;
  readonly kc_initial: number;
  readonly kc_mid: number;
  readonly kc_mid_staked?: number;
  readonly kc_end: number;
  readonly kcb_mid: number;
  readonly kcb_end: number;
  readonly source: string;
}

/** `crop-coefficients.yaml`. */
export interface CoefficientTable {
  readonly coefficients: readonly CoefficientRow[];
  readonly unknown: readonly { readonly crop: string; readonly reason: string }[];
}

/** A crop's coefficients with those of its plants alone; or why they are not known, in words. */
export type FoundCoefficients =
  | {
      readonly ok: true;
      readonly whole: Coefficients;
      readonly plantsAlone: Omit<Coefficients, "initial">;
      /** The row is not the crop's own, but that of a group: its name. */
      readonly ofGroup?: string;
    }
  | { readonly ok: false; readonly why: string };

export function coefficientsOf(
  crop: Crop,
  { habit }: Pick<Planting, "habit">,
  { coefficients, unknown }: CoefficientTable,
): FoundCoefficients {
  const refused = unknown.find((row) => row.crop === crop.key);
  if (refused !== undefined) return { ok: false, why: refused.reason };
  const own = coefficients.find((row) => row.crop === crop.key);
  const row = own ?? coefficients.find((r) => r.group === crop.group);
  if (row === undefined)
    return { ok: false, why: `FAO-56 has no crop coefficient for ${crop.name} or its kind` };
  const isStaked = (habit ?? crop.usualHabit) === "cordon";
  const mid = (isStaked ? row.kc_mid_staked : undefined) ?? row.kc_mid;
  return {
    ok: true,
    whole: { initial: row.kc_initial, mid, end: row.kc_end },
    // Taller plants give off more; the soil under them does not.
    plantsAlone: { mid: row.kcb_mid + mid - row.kc_mid, end: row.kcb_end },
    ...given({ ofGroup: own === undefined ? row.printed_name : undefined }),
  };
}

// FAO-56 eq. 66: level in the initial and middle periods, straight in development and late season.
export function coefficientOn(
  d: Day,
  { development, mid, late, end }: GrowthPeriods,
  kc: Coefficients,
): number {
  const shareOf = (from: Day, next: Day, endDays: number): number => {
    const lengthDays = daysBetween(from, next) + endDays;
    if (d < from) return 0;
    return lengthDays <= 0 ? 1 : Math.min(1, (daysBetween(from, d) + 1) / lengthDays);
  };
  const rise = shareOf(development, mid, 0);
  const fall = shareOf(late, end, 1);
  return kc.initial + rise * (kc.mid - kc.initial) + fall * (kc.end - kc.mid);
}
