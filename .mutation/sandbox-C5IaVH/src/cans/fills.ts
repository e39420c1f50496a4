/** Water and rate -> fillings of the can, with stock that a person can measure. */
// @ts-nocheck

import { litersPerUsGallon, mlPerCup } from "../garden/index.js";
import type { CanFill } from "../season/index.js";
import { ledgerSum } from "../stock/index.js";
import { type CanRequest, type CansOfWater, carried, jugFills } from "./jug.js";
import { isNear, leastStockMl, measureStepsMl, roundingTolerance, toStep } from "./measuring.js";

/** How far its water may be: a can is filled by eye. */
const waterTolerance = 0.1;

/** A US can is filled to the quarter of a gallon; a small one by the cup. */
const usWaterStepsL = [litersPerUsGallon / 4, mlPerCup / 1000, mlPerCup / 4000];

/** A part can this small, and this small a share of the water, is not worth a walk. */
const leastPartFillL = 0.05;
const leastPartShare = 0.01;

/**
 * Full fills, then at most one part fill. Stock is rounded to the coarsest measure that keeps the
 * sum within {@link roundingTolerance} of rate times water, and counted in whole hundredths of a mL:
 * the one rounding between rate and ledger. A part can too thin to measure is left to the full ones;
 * where each can would be too thin, the stock comes from a jug.
 */
export function canFills(request: CanRequest): CanFill[] {
  const { waterL, rateMlPerL, canL, amounts } = request;
  const [plainest, ...others] = cansOfWater(request);
  const exactMl = rateMlPerL * waterL;
  // A log may hold that none was given.
  const leastMl = exactMl > 0 ? leastStockMl[amounts] : 0;
  const best = measureStepsMl[amounts]
    .flatMap((stepsMl) => [plainest, ...others].flatMap((cans) => waysToMeasure(cans, stepsMl)))
    .find(({ full, fullMl, partMl }) => isNear(full * fullMl + partMl, exactMl));
  if (best === undefined) return jugFills(request, plainest);
  return carried(best, canL, amounts, (_, isFull) => ({
    stockMl: isFull ? best.fullMl : best.partMl,
  }));

  /** None where a can would be too thin. */
  function waysToMeasure({ full, partL }: CansOfWater, stepsMl: readonly number[]): Measured[] {
    const evenMlPerL = exactMl / (full * canL + partL);
    // A full can gets the same in every bed where it may.
    const rates = full === 0 ? [evenMlPerL] : [rateMlPerL, evenMlPerL];
    // Rounding up makes no thin can a thicker one.
    const thinnestL = partL === 0 ? canL : partL;
    return stepsMl.flatMap((stepMl) =>
      rates
        .filter((rate) => rate * thinnestL >= leastMl * (1 - roundingTolerance))
        .map((rate) => ({
          full,
          partL,
          fullMl: toStep(rate * canL, stepMl),
          partMl: toStep(rate * partL, stepMl),
        }))
        .filter(({ fullMl, partMl }) => (partL === 0 ? fullMl : partMl) >= leastMl),
    );
  }
}

interface Measured extends CansOfWater {
  /** Stock in each. */
  readonly fullMl: number;
  readonly partMl: number;
}

/** The ways to carry the water, the one that is read best first. */
function cansOfWater({ waterL, canL, amounts }: CanRequest): [CansOfWater, ...CansOfWater[]] {
  // Water is told to a millionth of a litre; two US gallons are 7.570823568 L.
  const full = Math.floor(waterL / canL + 1e-6);
  const restL = waterL - full * canL;
  const isWorthIt = full === 0 || restL >= Math.min(leastPartFillL, leastPartShare * waterL);
  const exactly = { full, partL: isWorthIt ? restL : 0 };
  const steps = amounts === "us" ? usWaterStepsL : [];
  const rounded = steps.map((stepL): CansOfWater => {
    const partL = Math.round(restL / stepL) * stepL;
    return partL < canL - 1e-6 ? { full, partL } : { full: full + 1, partL: 0 };
  });
  const isNearEnough = (cans: CansOfWater): boolean =>
    Math.abs(cans.full * canL + cans.partL - waterL) <= waterTolerance * waterL;
  const [first = exactly, ...others] = [...rounded, exactly, { full, partL: 0 }].filter(
    isNearEnough,
  );
  return [first, ...others];
}

/** Stock poured for all of them, mL: with a jug, what goes into that, though more than its cans take. */
export function fillsMl(fills: readonly CanFill[]): number {
  const jug = fills[0]?.jug;
  if (jug !== undefined) return jug.stockMl;
  return ledgerSum(fills.map(({ count, stockMl }) => count * stockMl));
}
