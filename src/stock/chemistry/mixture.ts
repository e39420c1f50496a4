/** A mixture at rest in a given medium: activity coefficients fixed, everything else free. */
import { waterActivity } from "./activity.js";
import type { Chemistry } from "./constants.js";
import type { Contents } from "./contents.js";
import type { Conditions } from "./equilibrium-types.js";
import { type Assemblage, settlePhases } from "./phase-rule.js";
import { lnGammaUnit, type Phase, type Thermo } from "./thermo.js";

// Below this (mol per kg of water) a component is not there.
const absentMolPerKg = 1e-18;

export interface Mixture {
  readonly chemistry: Chemistry;
  readonly thermo: Thermo;
  readonly contents: Contents;
  readonly present: readonly boolean[];
  /** Indexes into `chemistry.solutes` of what can exist here. */
  readonly kinds: readonly number[];
  readonly counts: readonly (readonly number[])[];
  readonly held: readonly Phase[];
  readonly mayForm: readonly Phase[];
}

/** What activity coefficients depend on, and the mass of liquid water. */
export interface Medium {
  readonly ionicStrength: number;
  readonly waterActivity: number;
  readonly waterKg: number;
}

export function mixtureOf(
  chemistry: Chemistry,
  contents: Contents,
  conditions: Conditions,
  thermo: Thermo,
): Mixture {
  const { gas } = conditions;
  const least = absentMolPerKg * contents.waterKg;
  const present = contents.mol.map((n, j) => j === 0 || n > least);
  if (gas.kind === "held") present[thermo.carbonDioxide.pivot] = true;
  const possible = (counts: readonly number[]): boolean =>
    counts.every((count, j) => count === 0 || present[j] === true);
  const kinds = chemistry.solutes.flatMap((s, i) => (possible(s.counts) ? [i] : []));
  const mayForm = [
    ...(conditions.calciteMayForm ? [thermo.calcite] : []),
    ...(conditions.citrateSolidMayForm ? [thermo.calciumCitrate] : []),
  ].filter((phase) => possible(phase.counts));
  const held =
    gas.kind === "held"
      ? [{ ...thermo.carbonDioxide, lnK: thermo.carbonDioxide.lnK + gas.logPco2 * Math.LN10 }]
      : [];
  const counts = kinds.map((i) => chemistry.solutes[i]?.counts ?? []);
  return { chemistry, thermo, contents, present, kinds, counts, held, mayForm };
}

export function settleIn(
  mixture: Mixture,
  medium: Medium,
  guess: readonly Phase[],
  lnActivity: readonly number[],
): Assemblage | undefined {
  const { chemistry, thermo, kinds } = mixture;
  const lnGamma = lnGammaUnit(chemistry, thermo, medium.ionicStrength);
  const lnWaterActivity = Math.log(medium.waterActivity);
  const lnWaterKg = Math.log(medium.waterKg);
  const constants = kinds.map((i) => {
    const solute = chemistry.solutes[i];
    if (!solute) return -Infinity;
    return (
      (thermo.lnK[i] as number) +
      solute.waterCount * lnWaterActivity +
      lnWaterKg -
      solute.charge * solute.charge * lnGamma
    );
  });
  return settlePhases(
    {
      counts: mixture.counts,
      constants,
      totals: mixture.contents.mol,
      present: mixture.present,
      lnWaterActivity,
      held: mixture.held,
      mayForm: mixture.mayForm,
    },
    guess,
    lnActivity,
  );
}

/** The medium that an assemblage makes for itself. */
export function mediumOf(mixture: Mixture, medium: Medium, found: Assemblage): Medium {
  const { chemistry, kinds, contents } = mixture;
  const { sodiumMol, magnesiumMol, chlorideMol } = contents.bystanders;
  let soluteMol = sodiumMol + magnesiumMol + chlorideMol;
  let chargedMol = sodiumMol + 4 * magnesiumMol + chlorideMol;
  let boundWaterMol = 0;
  for (let k = 0; k < kinds.length; k++) {
    const solute = chemistry.solutes[kinds[k] as number];
    const mol = found.amounts[k] as number;
    if (!solute) continue;
    soluteMol += mol;
    chargedMol += solute.charge * solute.charge * mol;
    boundWaterMol += solute.waterCount * mol;
  }
  for (const phase of [...mixture.held, ...mixture.mayForm])
    boundWaterMol += phase.waterCount * (found.phaseMol[phase.name] ?? 0);
  return {
    ionicStrength: chargedMol / 2 / medium.waterKg,
    waterActivity: waterActivity(
      soluteMol / medium.waterKg,
      chemistry.physical.waterActivitySlopeKgPerMol.value,
    ),
    waterKg: contents.waterKg - (boundWaterMol * chemistry.gPerMol.water) / 1000,
  };
}

/** ln of activities to start from: acid or neutral by who outweighs whom. */
export function firstGuess(mixture: Mixture): number[] {
  const { mol, waterKg } = mixture.contents;
  const [hydrogen = 0, calcium = 0, , , carbonate = 0] = mol;
  const acid = hydrogen > 2 * Math.min(calcium, carbonate) ? 3 : 7;
  const spread = [0, -1, acid === 3 ? -14 : -5, -1, acid === 3 ? -30 : -9];
  return mol.map((n, j) =>
    j === 0
      ? -acid * Math.LN10
      : n > 0
        ? Math.log(n / waterKg) + (spread[j] as number)
        : Math.log(1e-5) + (spread[j] as number),
  );
}
