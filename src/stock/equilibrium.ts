/**
 * What a mixture of calcium, citrate, acetate, carbonate and water comes to rest as. Our own solver:
 * a convex balance at given activity coefficients (`phase-rule.ts`) inside a search for the ionic
 * strength that gives those coefficients.
 */
import { waterActivity } from "./activity.js";
import type { Chemistry } from "./constants.js";
import type { Contents } from "./contents.js";
import { type Assemblage, lnSaturation, settlePhases } from "./phase-rule.js";
import { lnGammaUnit, type Phase, type Thermo, thermoAt } from "./thermo.js";
import { badQuantities, failed, type MixResult, type MixTrouble, trouble } from "./trouble.js";

/** Held: gas of this pressure (atm, log10) comes and goes. Closed: none does. */
export type Gas = { readonly kind: "held"; readonly logPco2: number } | { readonly kind: "closed" };

export interface Conditions {
  /** 0 to 100. */
  readonly temperatureC: number;
  readonly gas: Gas;
  readonly calciteMayForm: boolean;
  readonly citrateSolidMayForm: boolean;
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
  readonly calciteMol: number;
  /** Tricalcium dicitrate tetrahydrate. */
  readonly calciumCitrateMol: number;
  /** Carbon dioxide that left; negative when some was taken up. */
  readonly carbonDioxideOutMol: number;
  /** log10(ion activity product / solubility product); undefined where an ion is missing. */
  readonly calciteSaturation: number | undefined;
  readonly calciumCitrateSaturation: number | undefined;
  /** Worst over the components, relative to what of it is there. */
  readonly massError: number;
  /** Sum of charges over sum of their sizes. */
  readonly chargeError: number;
  /** Newton steps in all. */
  readonly steps: number;
}

// Below this (mol per kg of water) a component is not there.
const absentMolPerKg = 1e-18;
const strongestMolPerKg = 80;
const settled = 1e-11;
const closesTo = 1e-9;

/**
 * The equilibrium of `contents` under `conditions`. Trouble: temperature outside 0 to 100 degC, no
 * water, amounts that are no quantities, crystals that would take up all water.
 */
export function equilibrate(
  chemistry: Chemistry,
  contents: Contents,
  conditions: Conditions,
): MixResult<Equilibrium> {
  const { temperatureC } = conditions;
  const problems = contentsTroubles(contents, conditions);
  if (problems.length > 0) return failed(...problems);
  const thermo = thermoAt(chemistry, temperatureC);
  const spareMol = conditions.calciteMayForm ? spareCalciteMol(contents) : 0;
  if (spareMol > 0) {
    const found = search(chemistry, withoutCalcite(contents, spareMol), conditions, thermo);
    if (!found.ok) return found;
    const { calciteMol } = found.value;
    if (calciteMol > 0)
      return { ok: true, value: { ...found.value, calciteMol: calciteMol + spareMol } };
  }
  return search(chemistry, contents, conditions, thermo);
}

/**
 * Shell far beyond what can dissolve, put aside so that its sheer weight does not drown the few ions
 * in rounding: all but what the hydrogen can take and a mole per kg of water, a hundred times what
 * carbon dioxide dissolves.
 */
function spareCalciteMol(contents: Contents): number {
  const [hydrogen = 0, calcium = 0, , , carbonate = 0] = contents.mol;
  return Math.min(calcium, carbonate) - Math.max(hydrogen, 0) - contents.waterKg;
}

function withoutCalcite(contents: Contents, mol: number): Contents {
  return { ...contents, mol: contents.mol.map((n, j) => (j === 1 || j === 4 ? n - mol : n)) };
}

function contentsTroubles(contents: Contents, conditions: Conditions): MixTrouble[] {
  const { temperatureC, gas } = conditions;
  const [, calcium, citrate, acetate, carbonate] = contents.mol;
  const found = badQuantities({
    "calcium (mol)": calcium ?? NaN,
    "citrate (mol)": citrate ?? NaN,
    "acetate (mol)": acetate ?? NaN,
    "carbonate (mol)": carbonate ?? NaN,
  });
  if (!Number.isFinite(contents.mol[0] ?? NaN))
    found.push(trouble("not-a-quantity", "hydrogen (mol) is no number", "give a number"));
  if (gas.kind === "held" && !(gas.logPco2 >= -20 && gas.logPco2 <= 2))
    found.push(
      trouble(
        "not-a-quantity",
        `log pCO2 is ${gas.logPco2}`,
        "give the decimal logarithm of atmospheres, -20 to 2; air is -3.4",
      ),
    );
  if (!(temperatureC >= 0 && temperatureC <= 100))
    found.push(
      trouble(
        "temperature-out-of-range",
        `${temperatureC} degC`,
        "give 0 to 100 degC: liquid water",
      ),
    );
  if (!(contents.waterKg > 0 && Number.isFinite(contents.waterKg)))
    found.push(trouble("no-water", `water is ${contents.waterKg} kg`, "add water"));
  return found;
}

interface Mixture {
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

/** What activity coefficients depend on. */
interface Medium {
  readonly ionicStrength: number;
  readonly waterActivity: number;
  readonly waterKg: number;
}

function mixtureOf(
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

function settleIn(
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
function mediumOf(mixture: Mixture, medium: Medium, found: Assemblage): Medium {
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

/**
 * The ionic strength whose activity coefficients give it back. At nought the mixture is always
 * stronger than assumed, far up always weaker, so a root lies between: secant steps, kept inside by
 * halving. Water activity and mass follow along, as they hardly move.
 */
function search(
  chemistry: Chemistry,
  contents: Contents,
  conditions: Conditions,
  thermo: Thermo,
): MixResult<Equilibrium> {
  const mixture = mixtureOf(chemistry, contents, conditions, thermo);
  let medium: Medium = { ionicStrength: 0.05, waterActivity: 1, waterKg: contents.waterKg };
  let guess: readonly Phase[] = [];
  let lnActivity: readonly number[] = firstGuess(mixture);
  let low = 0;
  let high = strongestMolPerKg;
  let before: { x: number; miss: number } | undefined;
  let steps = 0;

  for (let round = 0; round < 200; round++) {
    const found = settleIn(mixture, medium, guess, lnActivity);
    if (!found) break;
    steps += found.steps;
    guess = found.there;
    lnActivity = found.lnActivity;
    const made = mediumOf(mixture, medium, found);
    // A first wrong guess may ask for more water than there is; only if it lasts is it so.
    if (!(made.waterKg > 0) && round > 60) return failed(noLiquidLeft);
    const waterKg = Math.max(made.waterKg, medium.waterKg / 4);
    const x = medium.ionicStrength;
    const miss = made.ionicStrength - x;
    if (
      Math.abs(miss) <= settled * made.ionicStrength &&
      Math.abs(made.waterActivity - medium.waterActivity) <= settled &&
      Math.abs(waterKg / medium.waterKg - 1) <= settled
    )
      return checked(report(mixture, medium, found, steps));
    if (miss > 0) low = Math.max(low, x);
    else high = Math.min(high, x);
    // The ends were found in a slightly other water; let go of them when they meet.
    if (high - low <= 1e-9 * high) [low, high] = [0, strongestMolPerKg];
    const next = secant(x, miss, before) ?? made.ionicStrength;
    before = { x, miss };
    medium = {
      ionicStrength: next > low && next < high ? next : between(low, high),
      waterActivity: made.waterActivity,
      waterKg,
    };
  }
  return medium.waterKg < 1e-6 * contents.waterKg ? failed(noLiquidLeft) : failed(doesNotSettle);
}

/** Nothing leaves here whose balances do not close. */
function checked(found: Equilibrium): MixResult<Equilibrium> {
  const closes = found.massError <= closesTo && found.chargeError <= closesTo;
  return closes ? { ok: true, value: found } : failed(doesNotSettle);
}

const noLiquidLeft = trouble(
  "no-liquid-left",
  "the crystals would take up all the water",
  "use more water for this much acid and shell",
);
const doesNotSettle = trouble(
  "does-not-settle",
  "no balance found: the mixture is far stronger than the solution model reaches",
  "use more water",
);

function secant(
  x: number,
  miss: number,
  before: { x: number; miss: number } | undefined,
): number | undefined {
  if (!before || before.miss === miss) return undefined;
  return x - (miss * (x - before.x)) / (miss - before.miss);
}

function between(low: number, high: number): number {
  return low > 0 && high / low > 10 ? Math.sqrt(low * high) : (low + high) / 2;
}

/** ln of activities to start from: acid or neutral by who outweighs whom. */
function firstGuess(mixture: Mixture): number[] {
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

function report(mixture: Mixture, medium: Medium, found: Assemblage, steps: number): Equilibrium {
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
