/** Water and rate -> fillings of the can, with stock that a person can measure. */
import { type Amounts, mlPerTeaspoon, stockText, volumeText } from "../garden/index.js";
import type { CanFill } from "../season/index.js";
import { ledgerMl, ledgerSum } from "../stock/index.js";

/** How far the stock of one mix may be from the exact figure. */
export const roundingTolerance = 0.05;

/**
 * Coarsest first: whole mL, then what a syringe can do; or quarter teaspoons, then the syringe. The
 * last is finer than any syringe; only absurdly small mixes come there.
 */
const measureStepsMl: Record<"ml" | "spoons", readonly number[]> = {
  ml: [1, 0.5, 0.1, 0.01],
  spoons: [mlPerTeaspoon / 4, mlPerTeaspoon / 8, 0.5, 0.1, 0.01],
};
/** The least that the ledger counts. */
const leastMl = 0.01;

/** A part can this small, and this small a share of the water, is not worth a walk. */
const leastPartFillL = 0.05;
const leastPartShare = 0.01;

export interface CanRequest {
  readonly waterL: number;
  readonly rateMlPerL: number;
  readonly canL: number;
  readonly amounts: Amounts;
}

/**
 * Full fills, then at most one part fill. Stock is rounded to the coarsest measure that keeps the
 * sum within {@link roundingTolerance} of rate times water, and counted in whole hundredths of a mL:
 * the one rounding between rate and ledger.
 */
export function canFills({ waterL, rateMlPerL, canL, amounts }: CanRequest): CanFill[] {
  // Water is told to a millionth of a litre; two US gallons are 7.570823568 L.
  const full = Math.floor(waterL / canL + 1e-6);
  const restL = waterL - full * canL;
  const isWorthIt = full === 0 || restL >= Math.min(leastPartFillL, leastPartShare * waterL);
  const partL = isWorthIt ? restL : 0;
  const exactMl = rateMlPerL * waterL;
  const steps = measureStepsMl[amounts === "us" ? "spoons" : "ml"];
  const rounded = steps.map((stepMl) => ({
    fullMl: toStep(rateMlPerL * canL, stepMl),
    partMl: toStep(rateMlPerL * partL, stepMl),
  }));
  const isNear = ({ fullMl, partMl }: { fullMl: number; partMl: number }): boolean =>
    Math.abs(full * fullMl + partMl - exactMl) <= roundingTolerance * exactMl &&
    (full === 0 || fullMl > 0) &&
    (partL === 0 || partMl > 0);
  const best = rounded.find(isNear) ?? {
    fullMl: atLeast(rateMlPerL * canL),
    partMl: atLeast(rateMlPerL * partL),
  };
  const fill = (count: number, isFull: boolean, liters: number, stockMl: number): CanFill => ({
    count,
    full: isFull,
    waterL: liters,
    stockMl,
    waterText: volumeText(liters, amounts),
    stockText: stockText(stockMl, amounts),
  });
  return [
    ...(full > 0 ? [fill(full, true, canL, best.fullMl)] : []),
    ...(partL > 0 ? [fill(1, false, partL, best.partMl)] : []),
  ];
}

/** Stock in all of them, mL. */
export function fillsMl(fills: readonly CanFill[]): number {
  return ledgerSum(fills.map(({ count, stockMl }) => count * stockMl));
}

function toStep(ml: number, stepMl: number): number {
  return ledgerMl(Math.round(ml / stepMl + 1e-9) * stepMl);
}

function atLeast(ml: number): number {
  return ml > 0 ? Math.max(leastMl, ledgerMl(ml)) : 0;
}
