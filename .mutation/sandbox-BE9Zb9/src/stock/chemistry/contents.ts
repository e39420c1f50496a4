/** What is in a vessel, counted by building blocks, so that mixing is adding. */
// @ts-nocheck

import {
  type Chemistry,
  componentKeys,
  type ComponentMol,
  type Crystal,
  crystalKeys,
  recordOf,
} from "./constants.js";

export interface Contents {
  /** All water, also what is bound in ions; crystals count theirs apart. */
  readonly waterKg: number;
  /** An acid brings its hydrogens, carbon dioxide is 2 H + CO3 - H2O. */
  readonly mol: ComponentMol;
  /** Ions that only carry charge. */
  readonly bystanders: Bystanders;
}

/** Sodium and the like have a charge of +1, chloride and the like of -1. */
const bystanderKeys = ["sodiumMol", "magnesiumMol", "chlorideMol"] as const;
type Bystanders = Readonly<Record<(typeof bystanderKeys)[number], number>>;

export const noMol: ComponentMol = recordOf(componentKeys, () => 0);
export const noBystanders: Bystanders = recordOf(bystanderKeys, () => 0);

export function pureWater(waterKg: number): Contents {
  return { waterKg, mol: noMol, bystanders: noBystanders };
}

export function mixed(a: Contents, b: Contents): Contents {
  return {
    waterKg: a.waterKg + b.waterKg,
    mol: recordOf(componentKeys, (key) => a.mol[key] + b.mol[key]),
    bystanders: recordOf(bystanderKeys, (key) => a.bystanders[key] + b.bystanders[key]),
  };
}

export function scaled(a: Contents, share: number): Contents {
  return {
    waterKg: a.waterKg * share,
    mol: recordOf(componentKeys, (key) => a.mol[key] * share),
    bystanders: recordOf(bystanderKeys, (key) => a.bystanders[key] * share),
  };
}

/** What the white holds: crystals that come out of the liquid, as what they would dissolve into. */
export function crystalContents(
  chemistry: Chemistry,
  solidMol: Readonly<Record<Crystal, number>>,
): Contents {
  return crystalKeys
    .map((key): Contents => {
      const { of: perMol } = chemistry.phases[key];
      const mol = solidMol[key];
      return {
        waterKg: ((perMol.H2O ?? 0) * mol * chemistry.gPerMol.water) / 1000,
        mol: recordOf(componentKeys, (component) => (perMol[component] ?? 0) * mol),
        bystanders: noBystanders,
      };
    })
    .reduce(mixed);
}
