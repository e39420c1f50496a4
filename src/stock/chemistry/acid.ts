/** The acids of the kitchen: what they bring into the jar and what is left of them. */
import { waterDensityKgPerL } from "./activity.js";
import type { Chemistry } from "./constants.js";
import { type Contents, noBystanders } from "./contents.js";
import type { Equilibrium } from "./equilibrium-types.js";

export type AcidDose =
  | { readonly kind: "citric"; readonly form: "anhydrous" | "monohydrate"; readonly grams: number }
  /** `percent` is g of acetic acid per 100 mL; the vinegar brings its own water. */
  | { readonly kind: "vinegar"; readonly percent: number; readonly volumeMl: number };

/** mol of the acid itself, and what it brings along. */
export function acidContents(chemistry: Chemistry, acid: AcidDose): Contents {
  const { gPerMol } = chemistry;
  if (acid.kind === "citric") {
    const crystal = acid.form === "anhydrous" ? "citricAnhydrous" : "citricMonohydrate";
    const mol = acid.grams / gPerMol[crystal];
    const crystalWaterG = mol * (gPerMol[crystal] - gPerMol.citricAnhydrous);
    return {
      waterKg: crystalWaterG / 1000,
      mol: [3 * mol, 0, mol, 0, 0],
      bystanders: noBystanders,
    };
  }
  const acidG = (acid.volumeMl * acid.percent) / 100;
  const mol = acidG / gPerMol.aceticAcid;
  const vinegarG = acid.volumeMl * vinegarDensityGPerMl(chemistry, acid.percent);
  return {
    waterKg: (vinegarG - acidG) / 1000,
    mol: [mol, 0, 0, mol, 0],
    bystanders: noBystanders,
  };
}

/** g/mL at 20 degC; a straight line from water through the density at 5 %. */
export function vinegarDensityGPerMl(chemistry: Chemistry, percent: number): number {
  const water = waterDensityKgPerL(20);
  return water + ((chemistry.volumes.vinegarGPerMlAt5Percent.value - water) * percent) / 5;
}

/** Hydrogen still on the acid or free, over the hydrogens that a molecule of it can give. */
export function acidLeftG(chemistry: Chemistry, acid: AcidDose, equilibrium: Equilibrium): number {
  const boundMol = acidHydrogenMol(chemistry, equilibrium);
  return acid.kind === "citric"
    ? (boundMol / 3) * chemistry.gPerMol.citricAnhydrous
    : boundMol * chemistry.gPerMol.aceticAcid;
}

export function acidHydrogenMol(chemistry: Chemistry, equilibrium: Equilibrium): number {
  return chemistry.solutes.reduce((sum, { counts }, i) => {
    const [hydrogen = 0, , citrate = 0, acetate = 0, carbonate = 0] = counts;
    const ofAcid = hydrogen > 0 && carbonate === 0 && (citrate > 0 || acetate > 0);
    const free = i === 0;
    return ofAcid || free ? sum + hydrogen * (equilibrium.soluteMol[i] ?? 0) : sum;
  }, 0);
}
