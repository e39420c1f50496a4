/** What was found, told in amounts, with the errors of its balances. */
import type { Equilibrium } from "./equilibrium-types.js";
import type { Medium, Mixture } from "./mixture.js";
import { type Assemblage, lnSaturation } from "./phase-rule.js";
import type { Phase } from "./thermo.js";

export function report(
  mixture: Mixture,
  medium: Medium,
  found: Assemblage,
  steps: number,
): Equilibrium {
  const { chemistry, thermo, contents, kinds } = mixture;
  const soluteMol = chemistry.solutes.map(() => 0);
  kinds.forEach((i, k) => (soluteMol[i] = found.amounts[k] as number));
  const calciteMol = found.phaseMol.calcite ?? 0;
  const calciumCitrateMol = found.phaseMol.calciumCitrate ?? 0;
  const carbonDioxideOutMol = found.phaseMol.carbonDioxide ?? 0;
  const dissolvedMol = contents.mol.map(() => 0);
  let boundWaterMol = 0;
  chemistry.solutes.forEach((solute, i) => {
    boundWaterMol += solute.waterCount * (soluteMol[i] as number);
    solute.counts.forEach((count, j) => {
      dissolvedMol[j] = (dissolvedMol[j] as number) + count * (soluteMol[i] as number);
    });
  });
  const lnAw = Math.log(medium.waterActivity);
  const saturation = (phase: Phase): number | undefined => {
    const ln = lnSaturation(phase, found.lnActivity, lnAw);
    return Number.isFinite(ln) ? ln / Math.LN10 : undefined;
  };
  return {
    ph: -(found.lnActivity[0] as number) / Math.LN10,
    ionicStrengthMolPerKg: medium.ionicStrength,
    waterActivity: medium.waterActivity,
    waterKg: medium.waterKg,
    soluteMol,
    dissolved: {
      waterKg: medium.waterKg + (boundWaterMol * chemistry.gPerMol.water) / 1000,
      mol: dissolvedMol,
      bystanders: contents.bystanders,
    },
    calciteMol,
    calciumCitrateMol,
    carbonDioxideOutMol,
    calciteSaturation: saturation(thermo.calcite),
    calciumCitrateSaturation: saturation(thermo.calciumCitrate),
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
  contents.mol.forEach((total, j) => {
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
