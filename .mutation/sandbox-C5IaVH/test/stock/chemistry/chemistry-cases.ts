/** Mixtures to try the solver on: kitchen-like, and far beyond any kitchen. */
// @ts-nocheck

import fc from "fast-check";
import { solidKeys } from "../../../src/stock/chemistry/constants.js";
import { type Contents, noBystanders } from "../../../src/stock/chemistry/contents.js";
import type { Conditions, Equilibrium } from "../../../src/stock/chemistry/equilibrium-types.js";
import type { MixResult } from "../../../src/stock/chemistry/trouble.js";

/** Powers of ten between the two, each decade as likely. */
export function decades(from: number, to: number): fc.Arbitrary<number> {
  return fc.double({ min: from, max: to, noNaN: true }).map((x) => 10 ** x);
}

/** Nought or some. */
function some(amount: fc.Arbitrary<number>): fc.Arbitrary<number> {
  return fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 4, arbitrary: amount });
}

const anyGas: fc.Arbitrary<Conditions["gas"]> = fc.oneof(
  fc.record({
    kind: fc.constant("held" as const),
    logPco2: fc.double({ min: -5, max: 0, noNaN: true }),
  }),
  fc.constant({ kind: "closed" as const }),
);

export const anyConditions: fc.Arbitrary<Conditions> = fc.record({
  temperatureC: fc.double({ min: 0, max: 100, noNaN: true }),
  gas: anyGas,
  mayForm: fc.subarray([...solidKeys]),
});

export interface Mix {
  readonly shellMol: number;
  readonly citricMol: number;
  readonly aceticMol: number;
  readonly waterKg: number;
}

export function contentsOf(mix: Mix): Contents {
  const { shellMol, citricMol, aceticMol, waterKg } = mix;
  return {
    waterKg,
    mol: {
      H: 3 * citricMol + aceticMol,
      Ca: shellMol,
      Cit: citricMol,
      Ac: aceticMol,
      CO3: shellMol,
    },
    bystanders: noBystanders,
  };
}

/** mol in a kg of water, up to about what a kitchen would mix. */
export const kitchenMix: fc.Arbitrary<Mix> = fc.record({
  shellMol: some(decades(-5, 0.3)),
  citricMol: some(decades(-5, -0.3)),
  aceticMol: some(decades(-4, 0)),
  waterKg: fc.constant(1),
});

/** From traces to a shovelful of shell in a spoon of water; acid up to 12 mol per kg of it. */
export const wildMix: fc.Arbitrary<Mix> = fc
  .record({
    shellMolPerKg: some(decades(-12, 4)),
    citricMolPerKg: some(decades(-12, 0.9)),
    aceticMolPerKg: some(decades(-12, 1.08)),
    waterKg: decades(-6, 3),
  })
  .map((m) => ({
    shellMol: m.shellMolPerKg * m.waterKg,
    citricMol: m.citricMolPerKg * m.waterKg,
    aceticMol: m.aceticMolPerKg * m.waterKg,
    waterKg: m.waterKg,
  }));

export function good<T>(result: MixResult<T>): T {
  if (!result.ok) throw new Error(result.problems.map((p) => p.message).join("; "));
  return result.value;
}

export function dissolvedCalciumMol(found: Equilibrium): number {
  return found.dissolved.mol.Ca;
}
