/** What was found, told in amounts by key, with the errors of its balances. */
// @ts-nocheck

import { componentKeys, recordOf, solidKeys } from "./constants.js";
import type { Equilibrium } from "./equilibrium-types.js";
import { hydrogenColumn, type Medium, type Mixture } from "./mixture.js";
import { type Assemblage, lnSaturation } from "./phase-rule.js";

export function report(
  mixture: Mixture,
  medium: Medium,
  found: Assemblage,
  steps: number,
): Equilibrium {
  const { chemistry, thermo, contents, kinds } = mixture;
  const soluteMol = chemistry.solutes.map(() => 0);
  kinds.forEach((i, k) => (soluteMol[i] = found.amounts[k] as number));
  const dissolvedMol = mixture.totals.map(() => 0);
  let boundWaterMol = 0;
  chemistry.solutes.forEach((solute, i) => {
    boundWaterMol += solute.waterCount * (soluteMol[i] as number);
    solute.counts.forEach((count, j) => {
      dissolvedMol[j] = (dissolvedMol[j] as number) + count * (soluteMol[i] as number);
    });
  });
  const lnAw = Math.log(medium.waterActivity);
  return {
    ph: -(found.lnActivity[hydrogenColumn] as number) / Math.LN10,
    ionicStrengthMolPerKg: medium.ionicStrength,
    waterActivity: medium.waterActivity,
    waterKg: medium.waterKg,
    soluteMol,
    dissolved: {
      waterKg: medium.waterKg + (boundWaterMol * chemistry.gPerMol.water) / 1000,
      mol: recordOf(componentKeys, (_, j) => dissolvedMol[j] as number),
      bystanders: contents.bystanders,
    },
    solidMol: recordOf(solidKeys, (key) => found.phaseMol[key] ?? 0),
    carbonDioxideOutMol: found.phaseMol.carbonDioxide ?? 0,
    saturation: recordOf(solidKeys, (key) => {
      const ln = lnSaturation(thermo.phases[key], found.lnActivity, lnAw);
      return Number.isFinite(ln) ? ln / Math.LN10 : undefined;
    }),
    ...errors(mixture, found, dissolvedMol, soluteMol),
    steps,
  };
}

function errors(
  mixture: Mixture,
  found: Assemblage,
  dissolvedMol: readonly number[],
  soluteMol: readonly number[],
): { massError: number; chargeError: number } {
  const { chemistry, contents } = mixture;
  const phases = [...mixture.held, ...mixture.mayForm];
  let massError = 0;
  mixture.totals.forEach((total, j) => {
    if (mixture.present[j] !== true) return;
    let sum = dissolvedMol[j] as number;
    let size = Math.abs(total);
    chemistry.solutes.forEach((s, i) => {
      size += Math.abs((s.counts[j] as number) * (soluteMol[i] as number));
    });
    for (const phase of phases) {
      const mol = (phase.counts[j] as number) * (found.phaseMol[phase.name] ?? 0);
      sum += mol;
      size += Math.abs(mol);
    }
    if (size > 0) massError = Math.max(massError, Math.abs(sum - total) / size);
  });
  const { sodiumMol, magnesiumMol, chlorideMol } = contents.bystanders;
  let charge = sodiumMol + 2 * magnesiumMol - chlorideMol;
  let size = sodiumMol + 2 * magnesiumMol + chlorideMol;
  chemistry.solutes.forEach((s, i) => {
    charge += s.charge * (soluteMol[i] as number);
    size += Math.abs(s.charge) * (soluteMol[i] as number);
  });
  return { massError, chargeError: Math.abs(charge) / size };
}
