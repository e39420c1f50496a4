/** What a person can measure out of a bottle. */
// @ts-nocheck

import { type Amounts, mlPerTeaspoon } from "../garden/index.js";
import { ledgerMl } from "../stock/index.js";

/** How far the stock of one mix may be from the exact figure. */
export const roundingTolerance = 0.05;
/**
 * Coarsest first, each group tried with every way to fill the cans: whole mL, then what a syringe can
 * do; or quarter teaspoons, then eighths, and the syringe where no spoon comes near.
 */
const mlStepsMl = [[1, 0.5, 0.1]];
const spoonStepsMl = [
  [mlPerTeaspoon / 4, mlPerTeaspoon / 8],
  [0.5, 0.1],
];
export const measureStepsMl: Readonly<Record<Amounts, readonly (readonly number[])[]>> = {
  metric: mlStepsMl,
  imperial: mlStepsMl,
  us: spoonStepsMl,
};

/** Nothing less is asked into a can. */
export const leastStockMl: Readonly<Record<Amounts, number>> = {
  metric: 1,
  imperial: 1,
  us: ledgerMl(mlPerTeaspoon / 4),
};

export function isNear(ml: number, exactMl: number): boolean {
  return Math.abs(ml - exactMl) <= roundingTolerance * exactMl;
}

export function toStep(ml: number, stepMl: number): number {
  return ledgerMl(Math.round(ml / stepMl + 1e-9) * stepMl);
}
