/** The source water of a garden as a water report. */
import type { SourceWater } from "../../garden/index.js";
import type { Finding } from "../../problem.js";
import { given } from "../../values.js";
import type { Chemistry } from "./constants.js";
import { calciumOfHardness, sourceWater, type WaterReport } from "./source-water.js";
import { troubleAt } from "./trouble.js";

/** Hardness, alkalinity and calcium stand in for each other where only one is given. */
export function waterReport(
  chemistry: Chemistry,
  water: SourceWater | undefined,
): WaterReport | undefined {
  if (water === undefined) return undefined;
  const { hardnessMgPerL, alkalinityMgPerL, calciumMgPerL } = water;
  const hardness =
    hardnessMgPerL ??
    (calciumMgPerL === undefined
      ? alkalinityMgPerL
      : calciumMgPerL / calciumOfHardness(chemistry, 1));
  if (hardness === undefined) return undefined;
  return {
    hardnessMgPerL: hardness,
    ...given({ alkalinityMgPerL, calciumMgPerL }),
  };
}

export function waterFindings(
  water: WaterReport | undefined,
  chemistry: Chemistry,
  temperatureC: number,
): Finding[] {
  if (water === undefined) return [];
  const found = sourceWater(chemistry, water, 1, temperatureC);
  return found.ok ? [] : found.problems.map((t) => troubleAt(t, ["source_water"]));
}
