/** The acids of the kitchen: what they bring into the jar and what is left of them. */
// @ts-nocheck

import type { Acid } from "../../garden/index.js";
import { waterDensityKgPerL } from "./activity.js";
import type { Chemistry, ComponentKey, SubstanceKey } from "./constants.js";
import { type Contents, noMol, pureWater } from "./contents.js";
import type { Equilibrium } from "./equilibrium-types.js";
import { badQuantities, type MixTrouble, trouble } from "./trouble.js";

export type AcidDose =
  | { readonly kind: "citric"; readonly form: "anhydrous" | "monohydrate"; readonly grams: number }
  /** `percent` is g of acetic acid per 100 mL; the vinegar brings its own water. */
  | { readonly kind: "vinegar"; readonly percent: number; readonly volumeMl: number };

interface Molecule {
  readonly hydrogens: number;
  /** What is left when the hydrogens are gone. */
  readonly anion: ComponentKey;
  readonly pure: SubstanceKey;
}
const molecules: Readonly<Record<Acid, Molecule>> = {
  citric: { hydrogens: 3, anion: "Cit", pure: "citricAnhydrous" },
  vinegar: { hydrogens: 1, anion: "Ac", pure: "aceticAcid" },
};
const anions = Object.values(molecules).map(({ anion }) => anion);

/** mol of the acid itself, and what it brings along. */
export function acidContents(chemistry: Chemistry, acid: AcidDose): Contents {
  const { gPerMol } = chemistry;
  switch (acid.kind) {
    case "citric": {
      const crystal = acid.form === "anhydrous" ? "citricAnhydrous" : "citricMonohydrate";
      const mol = acid.grams / gPerMol[crystal];
      const crystalWaterG = mol * (gPerMol[crystal] - gPerMol.citricAnhydrous);
      return withWater(acid.kind, mol, crystalWaterG);
    }
    case "vinegar": {
      const { pureG, weighedG } = acidMeasures(chemistry, acid);
      const mol = pureG / gPerMol.aceticAcid;
      return withWater(acid.kind, mol, weighedG - pureG);
    }
  }
}

function withWater(acid: Acid, mol: number, waterG: number): Contents {
  const { hydrogens, anion } = molecules[acid];
  return { ...pureWater(waterG / 1000), mol: { ...noMol, H: hydrogens * mol, [anion]: mol } };
}

/** Negative amounts, and vinegar that no kitchen has. */
export function acidTroubles(chemistry: Chemistry, acid: AcidDose): MixTrouble[] {
  switch (acid.kind) {
    case "citric":
      return badQuantities({ "citric acid (g)": acid.grams });
    case "vinegar": {
      const found = badQuantities({ "vinegar (mL)": acid.volumeMl });
      const most = chemistry.kitchen.vinegarLargestPercent.value;
      if (!(acid.percent >= 0 && acid.percent <= most))
        found.push(
          trouble(
            "not-kitchen-vinegar",
            `vinegar of ${acid.percent} %`,
            `give the acidity on the bottle, usually 4 to 8 %; over ${most} % acetic acid burns and is not for this`,
          ),
        );
      return found;
    }
  }
}

export function scaledAcid(acid: AcidDose, factor: number): AcidDose {
  switch (acid.kind) {
    case "citric":
      return { ...acid, grams: acid.grams * factor };
    case "vinegar":
      return { ...acid, volumeMl: acid.volumeMl * factor };
  }
}

export interface AcidMeasures {
  /** Crystals as they come from the bag; of vinegar, the acetic acid in it. */
  readonly pureG: number;
  /** On a scale, with the water that vinegar brings. */
  readonly weighedG: number;
  /** Nought for crystals. */
  readonly volumeMl: number;
}

export function acidMeasures({ volumes }: Chemistry, acid: AcidDose): AcidMeasures {
  switch (acid.kind) {
    case "citric":
      return { pureG: acid.grams, weighedG: acid.grams, volumeMl: 0 };
    case "vinegar": {
      const { percent, volumeMl } = acid;
      // At 20 degC; a straight line from water through the density at 5 %.
      const water = waterDensityKgPerL(20);
      const gPerMl = water + ((volumes.vinegarGPerMlAt5Percent.value - water) * percent) / 5;
      return { pureG: (volumeMl * percent) / 100, weighedG: volumeMl * gPerMl, volumeMl };
    }
  }
}

/** Hydrogen still on the acid or free, over the hydrogens that a molecule of it can give. */
export function acidLeftG(chemistry: Chemistry, acid: AcidDose, equilibrium: Equilibrium): number {
  const { hydrogens, pure } = molecules[acid.kind];
  return (acidHydrogenMol(chemistry, equilibrium) / hydrogens) * chemistry.gPerMol[pure];
}

export function acidHydrogenMol(chemistry: Chemistry, equilibrium: Equilibrium): number {
  const free = chemistry.components.H.name;
  return chemistry.solutes.reduce((sum, { name, of }, i) => {
    const hydrogen = of.H ?? 0;
    const ofAcid = hydrogen > 0 && anions.some((anion) => anion in of);
    return ofAcid || name === free ? sum + hydrogen * (equilibrium.soluteMol[i] ?? 0) : sum;
  }, 0);
}
