/** Tap, well or rain water, from the figures of a water report. */
import type { SourceWater } from "../../garden/index.js";
import type { Finding } from "../../problem.js";
import { given, rememberingFor } from "../../values.js";
import { waterDensityKgPerL } from "./activity.js";
import { openAir } from "./brew.js";
import type { Chemistry } from "./constants.js";
import { type Contents, noMol } from "./contents.js";
import { equilibrate } from "./equilibrium.js";
import { badQuantities, failed, type MixResult, trouble, troubleAt } from "./trouble.js";

/** Alkalinity is taken as equal to the hardness, calcium as all of it, where they are not given. */
export interface WaterReport extends SourceWater {
  /** mg/L as CaCO3. */
  readonly hardnessMgPerL: number;
}

/** Water that holds nothing. */
export const rainWater: WaterReport = { hardnessMgPerL: 0, alkalinityMgPerL: 0 };

/** Hardness, alkalinity and calcium stand in for each other where only one is given. */
export function waterReport(
  chemistry: Chemistry,
  water: SourceWater = {},
): WaterReport | undefined {
  const { alkalinityMgPerL, calciumMgPerL } = water;
  const ofCalcium = calciumMgPerL && calciumMgPerL / calciumOfHardness(chemistry, 1);
  const hardnessMgPerL = water.hardnessMgPerL ?? ofCalcium ?? alkalinityMgPerL;
  if (hardnessMgPerL === undefined) return undefined;
  return { hardnessMgPerL, ...given({ alkalinityMgPerL, calciumMgPerL }) };
}

/** mg/L of calcium in water of that hardness, if calcium makes all of it. */
export function calciumOfHardness(chemistry: Chemistry, hardnessMgPerL: number): number {
  return (hardnessMgPerL * chemistry.gPerMol.calcium) / chemistry.gPerMol.calciumCarbonate;
}

/** mg/L of calcium that the water brings. */
export function tapCalciumMgPerL(chemistry: Chemistry, report: WaterReport): number {
  return report.calciumMgPerL ?? calciumOfHardness(chemistry, report.hardnessMgPerL);
}

/**
 * `litres` of that water, stood in the open so that it is in balance with air. Hardness that is not
 * calcium is magnesium; sodium or chloride makes up the charge. Magnesium is taken to bind nothing.
 * Trouble: negative figures, more calcium than the hardness allows.
 */
export const sourceWater: (
  chemistry: Chemistry,
  report: WaterReport,
  litres: number,
  temperatureC: number,
) => MixResult<Contents> = rememberingFor(500, waterKey, stoodWater);

function waterKey(report: WaterReport, litres: number, temperatureC: number): string {
  const { hardnessMgPerL, alkalinityMgPerL, calciumMgPerL } = report;
  return [hardnessMgPerL, alkalinityMgPerL, calciumMgPerL, litres, temperatureC].join(" ");
}

function stoodWater(
  chemistry: Chemistry,
  report: WaterReport,
  litres: number,
  temperatureC: number,
): MixResult<Contents> {
  const { hardnessMgPerL, alkalinityMgPerL = hardnessMgPerL } = report;
  const calciumMgPerL = tapCalciumMgPerL(chemistry, report);
  const problems = badQuantities({
    "hardness (mg/L as CaCO3)": hardnessMgPerL,
    "alkalinity (mg/L as CaCO3)": alkalinityMgPerL,
    "calcium in the water (mg/L)": calciumMgPerL,
    "water (L)": litres,
  });
  const mostMgPerL = calciumOfHardness(chemistry, hardnessMgPerL);
  // A report rounds its figures: let the two differ by a twentieth.
  if (calciumMgPerL > 1.05 * mostMgPerL + 1)
    problems.push(
      trouble(
        "not-a-quantity",
        `calcium of ${calciumMgPerL} mg/L is more than a hardness of ${hardnessMgPerL} mg/L as CaCO3 can hold (${mostMgPerL.toFixed(0)} mg/L)`,
        "look at the units in the water report: hardness in mg/L as CaCO3, calcium in mg/L",
      ),
    );
  if (problems.length > 0) return failed(...problems);

  const { calcium, calciumCarbonate } = chemistry.gPerMol;
  const calciumMol = (litres * calciumMgPerL) / 1000 / calcium;
  const hardnessMol = (litres * hardnessMgPerL) / 1000 / calciumCarbonate;
  const alkalinityMol = (2 * litres * alkalinityMgPerL) / 1000 / calciumCarbonate;
  const magnesiumMol = Math.max(0, hardnessMol - calciumMol);
  const uncoveredMol = alkalinityMol - 2 * calciumMol - 2 * magnesiumMol;
  return inAir(
    chemistry,
    {
      waterKg: litres * waterDensityKgPerL(temperatureC),
      mol: { ...noMol, H: alkalinityMol, Ca: calciumMol, CO3: alkalinityMol },
      bystanders: {
        sodiumMol: Math.max(0, uncoveredMol),
        magnesiumMol,
        chlorideMol: Math.max(0, -uncoveredMol),
      },
    },
    temperatureC,
  );
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

/** The same liquid with the carbon dioxide of open air in it; no solid forms. */
export function inAir(
  chemistry: Chemistry,
  contents: Contents,
  temperatureC: number,
): MixResult<Contents> {
  const found = equilibrate(chemistry, contents, {
    temperatureC,
    gas: openAir(chemistry),
    mayForm: [],
  });
  return found.ok ? { ok: true, value: found.value.dissolved } : found;
}
