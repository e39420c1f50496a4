/** The calcium of the soil, as a test has it: a stock, of which a crop takes up a small part. */
// @ts-nocheck

import { addDays, type Day } from "../dates.js";
import type { Soil, SoilTest } from "../garden/index.js";
import { given } from "../values.js";
import { type CalciumAmount, type Extent, onGround } from "./extent.js";
import { exactly, percentOf, type Range, scaled } from "./range.js";
import type { CalciumLimits, CalciumTables, ExtractRow } from "./tables.js";

/** Exchangeable calcium within the depth of the sample. */
export interface SoilCalcium extends CalciumAmount {
  readonly test: SoilTest;
  /** What the laboratory calls its extract; absent where the test has no calcium. */
  readonly extractName?: string;
  /** How much of it the crop takes up, in per cent. */
  readonly takenPercent?: Range;
  /** It is worth repeating. */
  readonly isOld?: true;
}

/** Undefined without a test. */
export function soilCalcium(
  soil: Soil | undefined,
  extent: Extent,
  need: CalciumAmount | undefined,
  seasonFrom: Day,
  { extracts, limits }: Pick<CalciumTables, "extracts" | "limits">,
): SoilCalcium | undefined {
  const test = soil?.test;
  if (test === undefined) return undefined;
  const row = extractOf(test, extracts);
  const perM2G = row?.measures === "soil" ? stockPerM2G(test, soil?.kind, limits) : undefined;
  return {
    ...(perM2G && onGround(perM2G, extent)),
    test,
    ...given({
      extractName: row?.name,
      takenPercent: perM2G && need?.perM2G && percentOf(need.perM2G, perM2G),
    }),
    ...(test.on < addDays(seasonFrom, -365 * limits.old_test_years.value)
      ? { isOld: true as const }
      : {}),
  };
}

/** Undefined where the test has no calcium. */
export function extractOf(
  { calciumPpm, extract }: SoilTest,
  extracts: readonly ExtractRow[],
): ExtractRow | undefined {
  return calciumPpm === undefined ? undefined : extracts.find((row) => row.extract === extract);
}

// g/m2 = ppm x density (kg/L) x depth (cm) / 100: arithmetic; mg in a kg, and 10 L of soil to the cm of a m2.
function stockPerM2G(
  { calciumPpm = 0, depthCm, densityKgPerL }: SoilTest,
  kind: Soil["kind"],
  limits: CalciumLimits,
): Range {
  const usual =
    kind === "potting-mix"
      ? limits.potting_mix_density_kg_per_l
      : exactly(limits.soil_density_kg_per_l.value);
  const density = densityKgPerL === undefined ? usual : exactly(densityKgPerL);
  return scaled(density, (calciumPpm * (depthCm ?? limits.soil_depth_cm.value)) / 100);
}
