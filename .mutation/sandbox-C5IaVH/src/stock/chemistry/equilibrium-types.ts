/** What the solver is asked and what it answers. */
// @ts-nocheck

import type { SolidKey } from "./constants.js";
import type { Contents } from "./contents.js";

/** Held: gas of this pressure (atm, log10) comes and goes. Closed: none does. */
export type Gas = { readonly kind: "held"; readonly logPco2: number } | { readonly kind: "closed" };

export interface Conditions {
  /** 0 to 100. */
  readonly temperatureC: number;
  readonly gas: Gas;
  readonly mayForm: readonly SolidKey[];
}

export interface Equilibrium {
  readonly ph: number;
  readonly ionicStrengthMolPerKg: number;
  readonly waterActivity: number;
  /** Liquid water at rest. */
  readonly waterKg: number;
  /** mol of each of `chemistry.solutes`. */
  readonly soluteMol: readonly number[];
  /** The liquid alone. */
  readonly dissolved: Contents;
  readonly solidMol: Readonly<Record<SolidKey, number>>;
  /** Carbon dioxide that left; negative when some was taken up. */
  readonly carbonDioxideOutMol: number;
  /** log10(ion activity product / solubility product); undefined where an ion is missing. */
  readonly saturation: Readonly<Record<SolidKey, number | undefined>>;
  /** Worst over the components, relative to what of it is there. */
  readonly massError: number;
  /** Sum of charges over sum of their sizes. */
  readonly chargeError: number;
  /** Newton steps in all. */
  readonly steps: number;
}
