/**
 * Solids and gas that are there fix relations between activities; each takes one unknown away. Which
 * solids are there is found by trying: none may have a negative amount, none left out may be
 * oversaturated.
 */
// @ts-nocheck

import type { PhaseKey } from "./constants.js";
import { leastEnergy } from "./least-energy.js";
import type { Phase } from "./thermo.js";

/** A mixture at given activity coefficients, water activity and mass of water. */
export interface IdealMixture {
  /** Dissolved kinds that can exist here: component counts and ln of (constant x water mass / gamma). */
  readonly counts: readonly (readonly number[])[];
  readonly constants: readonly number[];
  /** mol, and whether there is any, per component. */
  readonly totals: readonly number[];
  readonly present: readonly boolean[];
  readonly lnWaterActivity: number;
  /** Always there: the gas held at a given pressure. */
  readonly held: readonly Phase[];
  /** There or not, as equilibrium has it. */
  readonly mayForm: readonly Phase[];
}

export interface Assemblage {
  /** ln of activity per component; -Infinity where absent. */
  readonly lnActivity: readonly number[];
  /** mol of each dissolved kind. */
  readonly amounts: readonly number[];
  /** mol by phase name; gas that left the liquid is positive. */
  readonly phaseMol: Readonly<Partial<Record<PhaseKey, number>>>;
  /** The solids that are there, to start from next time. */
  readonly there: readonly Phase[];
  readonly steps: number;
}

const saturationSlack = 1e-11;

/** ln(ion activity product / K): negative while the phase would dissolve. */
export function lnSaturation(
  phase: Phase,
  lnActivity: readonly number[],
  lnWaterActivity: number,
): number {
  let sum = phase.waterCount * lnWaterActivity - phase.lnK;
  phase.counts.forEach((count, j) => {
    if (count !== 0) sum += count * (lnActivity[j] as number);
  });
  return sum;
}

/**
 * The one set of solids that equilibrium allows. Starting from the set in `guess` and the activities
 * in `lnActivity`; undefined when the numbers leave what a double can hold.
 */
export function settlePhases(
  mixture: IdealMixture,
  guess: readonly Phase[],
  lnActivity: readonly number[],
): Assemblage | undefined {
  let there = guess;
  let from = lnActivity;
  let steps = 0;
  // At fixed activity coefficients the energy is convex, so that one set is right, and swapping the
  // worst offender finds it; the bound is for ties that rounding could swap for ever.
  for (let swap = 0; swap < 12; swap++) {
    const found = balance(mixture, there, from);
    if (!found) return undefined;
    steps += found.steps;
    from = found.lnActivity;
    const offender = worstOffender(mixture, found);
    if (!offender || swap === 11) return { ...found, steps };
    there = there.includes(offender)
      ? there.filter((phase) => phase !== offender)
      : mixture.mayForm.filter((phase) => phase === offender || there.includes(phase));
  }
  return undefined;
}

function worstOffender(mixture: IdealMixture, found: Assemblage): Phase | undefined {
  let worst: Phase | undefined;
  let most = 0;
  for (const phase of mixture.mayForm) {
    const mol = found.phaseMol[phase.name];
    if (mol !== undefined) {
      const relative = -mol / ((mixture.totals[phase.pivot] as number) || 1);
      if (relative > 1e-15 && relative > most) [worst, most] = [phase, Infinity];
    } else {
      const over = lnSaturation(phase, found.lnActivity, mixture.lnWaterActivity);
      if (over > saturationSlack && over > most) [worst, most] = [phase, over];
    }
  }
  return worst;
}

/** Balances with exactly these solids there, be their amounts negative. */
function balance(
  mixture: IdealMixture,
  there: readonly Phase[],
  from: readonly number[],
): Assemblage | undefined {
  const phases = [...mixture.held, ...there];
  const free = mixture.present.flatMap((present, j) =>
    present && !phases.some((phase) => phase.pivot === j) ? [j] : [],
  );
  // ln activity of component j = base[j] + slopes[j] . v, v being those of the free components.
  const base = mixture.present.map((present) => (present ? 0 : -Infinity));
  const slopes = mixture.present.map((_, j) => free.map((k): number => (j === k ? 1 : 0)));
  for (const phase of phases) {
    const pivotCount = phase.counts[phase.pivot] as number;
    let constant = phase.lnK - phase.waterCount * mixture.lnWaterActivity;
    const slope = free.map(() => 0);
    phase.counts.forEach((count, j) => {
      if (count === 0 || j === phase.pivot) return;
      constant -= count * (base[j] as number);
      free.forEach((_, k) => {
        slope[k] = (slope[k] as number) - count * ((slopes[j] as number[])[k] as number);
      });
    });
    base[phase.pivot] = constant / pivotCount;
    slopes[phase.pivot] = slope.map((s) => s / pivotCount);
  }

  const { rows, constants } = reducedRows(mixture, base, slopes, free.length);
  const totals = free.map((_, k) =>
    mixture.totals.reduce(
      (sum, total, j) => sum + total * ((slopes[j] as number[])[k] as number),
      0,
    ),
  );
  const lowest = leastEnergy(
    rows,
    constants,
    totals,
    free.map((j) => from[j] as number),
  );
  if (!lowest) return undefined;
  const lnActivity = base.map((b, j) =>
    lowest.at.reduce((sum, v, k) => sum + ((slopes[j] as number[])[k] as number) * v, b),
  );
  return {
    lnActivity,
    amounts: lowest.amounts,
    phaseMol: phaseAmounts(mixture, phases, lowest.amounts),
    there,
    steps: lowest.steps,
  };
}

function reducedRows(
  mixture: IdealMixture,
  base: readonly number[],
  slopes: readonly (readonly number[])[],
  width: number,
): { rows: number[][]; constants: number[] } {
  const constants = mixture.constants.slice();
  const rows = mixture.counts.map((counts, i) => {
    const row = new Array<number>(width).fill(0);
    for (let j = 0; j < counts.length; j++) {
      const count = counts[j] as number;
      if (count === 0) continue;
      constants[i] = (constants[i] as number) + count * (base[j] as number);
      const slope = slopes[j] as readonly number[];
      for (let k = 0; k < width; k++) row[k] = (row[k] as number) + count * (slope[k] as number);
    }
    return row;
  });
  return { rows, constants };
}

/** What of each pivot component is not dissolved; the last phase first, as earlier pivots are in it. */
function phaseAmounts(
  mixture: IdealMixture,
  phases: readonly Phase[],
  amounts: readonly number[],
): Partial<Record<PhaseKey, number>> {
  const left = mixture.totals.slice();
  mixture.counts.forEach((counts, i) => {
    for (let j = 0; j < left.length; j++)
      left[j] = (left[j] as number) - (counts[j] as number) * (amounts[i] as number);
  });
  const mol: Partial<Record<PhaseKey, number>> = {};
  for (const phase of [...phases].reverse()) {
    const amount = (left[phase.pivot] as number) / (phase.counts[phase.pivot] as number);
    mol[phase.name] = amount;
    phase.counts.forEach((count, j) => {
      left[j] = (left[j] as number) - count * amount;
    });
  }
  return mol;
}
