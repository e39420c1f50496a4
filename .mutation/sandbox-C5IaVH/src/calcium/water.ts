/** The calcium of the water that is poured from tap or well; rain brings none. */
// @ts-nocheck

import { type SourceWater, withoutDust } from "../garden/index.js";
import { type CalciumAmount, type Extent, spread } from "./extent.js";
import { exactly, type Range, scaled } from "./range.js";
import type { CalciumLimits } from "./tables.js";

export interface WaterCalcium extends CalciumAmount {
  /** L poured on the planting in the season. */
  readonly waterL: number;
  readonly calciumMgPerL: Range;
}

/** Undefined where the water, or how much of it is poured, is not known. */
export function waterCalcium(
  waterL: number | undefined,
  water: SourceWater | undefined,
  extent: Extent,
  limits: CalciumLimits,
): WaterCalcium | undefined {
  const calciumMgPerL = calciumInSource(water, limits);
  if (waterL === undefined || calciumMgPerL === undefined) return undefined;
  return { ...spread(scaled(calciumMgPerL, waterL / 1000), extent), waterL, calciumMgPerL };
}

/** mg/L: as the water report has it, else by hardness, of which magnesium is a part. */
export function calciumInSource(
  { calciumMgPerL, hardnessMgPerL }: SourceWater = {},
  limits: CalciumLimits,
): Range | undefined {
  if (calciumMgPerL !== undefined) return exactly(calciumMgPerL);
  if (hardnessMgPerL === undefined) return undefined;
  // Hardness is told as CaCO3, of which 40.04 % is calcium: molar masses 40.078 and 100.087.
  return scaled(
    limits.calcium_share_of_hardness,
    hardnessMgPerL * limits.calcium_in_hardness.value,
  );
}

/** Undefined where neither hardness nor calcium is known; alkalinity says too little of calcium. */
export function isSoft(
  { calciumMgPerL, hardnessMgPerL }: SourceWater = {},
  limits: CalciumLimits,
): boolean | undefined {
  if (calciumMgPerL === undefined && hardnessMgPerL === undefined) return undefined;
  return (
    withoutDust(calciumMgPerL ?? 0) < limits.soft_water_calcium_mg_per_l.value &&
    withoutDust(hardnessMgPerL ?? 0) < limits.soft_water_hardness_mg_per_l.value
  );
}
