/**
 * A mixture at rest in a given medium: activity coefficients fixed, everything else free. Here what is
 * known by key becomes the columns of the solver; `equilibrium-report.ts` turns its answer back.
 */
// @ts-nocheck

import { waterActivity } from "./activity.js";
import {
  type Chemistry,
  columnsOf,
  componentKeys,
  type ComponentMol,
  solidKeys,
} from "./constants.js";
import type { Contents } from "./contents.js";
import type { Conditions } from "./equilibrium-types.js";
import { type Assemblage, type IdealMixture, settlePhases } from "./phase-rule.js";
import { lnGammaUnit, type Phase, type Thermo } from "./thermo.js";

export const hydrogenColumn = componentKeys.indexOf("H");

// Below this (mol per kg of water) a component is not there.
const absentMolPerKg = 1e-18;

/** What is known of it before a medium is. */
export interface Mixture extends Omit<IdealMixture, "constants" | "lnWaterActivity"> {
  readonly chemistry: Chemistry;
  readonly thermo: Thermo;
  readonly contents: Contents;
  /** Indexes into `chemistry.solutes` of what can exist here. */
  readonly kinds: readonly number[];
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
  const totals = columnsOf(contents.mol);
  const present = totals.map((n, j) => j === hydrogenColumn || n > least);
  const { carbonDioxide } = thermo.phases;
  if (gas.kind === "held") present[carbonDioxide.pivot] = true;
  const possible = (counts: readonly number[]): boolean =>
    counts.every((count, j) => count === 0 || present[j] === true);
  const kinds = chemistry.solutes.flatMap((s, i) => (possible(s.counts) ? [i] : []));
  const mayForm = solidKeys
    .filter((key) => conditions.mayForm.includes(key))
    .map((key) => thermo.phases[key])
    .filter((phase) => possible(phase.counts));
  const held =
    gas.kind === "held"
      ? [{ ...carbonDioxide, lnK: carbonDioxide.lnK + gas.logPco2 * Math.LN10 }]
      : [];
  const counts = kinds.map((i) => chemistry.solutes[i]?.counts ?? []);
  return { chemistry, thermo, contents, totals, present, kinds, counts, held, mayForm };
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
  const { counts, totals, present, held, mayForm } = mixture;
  // Spreading the mixture would cost the solver a third of its time.
  const ideal = { counts, constants, totals, present, lnWaterActivity, held, mayForm };
  return settlePhases(ideal, guess, lnActivity);
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

// ln of the activity of hydrogen, and for the others of the share that is free.
const freeInAcid: ComponentMol = { H: -3 * Math.LN10, Ca: -1, Cit: -14, Ac: -1, CO3: -30 };
const freeInNeutral: ComponentMol = { H: -7 * Math.LN10, Ca: -1, Cit: -5, Ac: -1, CO3: -9 };

/** ln of activities to start from: acid or neutral by who outweighs whom. */
export function firstGuess({ contents: { mol, waterKg } }: Mixture): number[] {
  const free = mol.H > 2 * Math.min(mol.Ca, mol.CO3) ? freeInAcid : freeInNeutral;
  return componentKeys.map((key) =>
    key === "H" ? free.H : Math.log(mol[key] > 0 ? mol[key] / waterKg : 1e-5) + free[key],
  );
}
