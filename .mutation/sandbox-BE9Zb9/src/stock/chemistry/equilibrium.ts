/**
 * What a mixture of calcium, citrate, acetate, carbonate and water comes to rest as. Our own solver:
 * a convex balance at given activity coefficients (`phase-rule.ts`) inside a search for the ionic
 * strength that gives those coefficients.
 */
// @ts-nocheck

import { type Chemistry, componentKeys } from "./constants.js";
import type { Contents } from "./contents.js";
import { report } from "./equilibrium-report.js";
import type { Conditions, Equilibrium } from "./equilibrium-types.js";
import { firstGuess, type Medium, mediumOf, mixtureOf, settleIn } from "./mixture.js";
import { type Phase, type Thermo, thermoAt } from "./thermo.js";
import {
  badQuantities,
  failed,
  isQuantity,
  type MixResult,
  type MixTrouble,
  trouble,
} from "./trouble.js";

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
  const problems = contentsTroubles(chemistry, contents, conditions);
  if (problems.length > 0) return failed(...problems);
  const thermo = thermoAt(chemistry, temperatureC);
  const spareMol = conditions.mayForm.includes("calcite") ? spareCalciteMol(contents) : 0;
  if (spareMol > 0) {
    const { mol } = contents;
    const dissolving = { ...mol, Ca: mol.Ca - spareMol, CO3: mol.CO3 - spareMol };
    const found = search(chemistry, { ...contents, mol: dissolving }, conditions, thermo);
    if (!found.ok) return found;
    const { solidMol } = found.value;
    if (solidMol.calcite > 0) {
      const calcite = solidMol.calcite + spareMol;
      return { ok: true, value: { ...found.value, solidMol: { ...solidMol, calcite } } };
    }
  }
  return search(chemistry, contents, conditions, thermo);
}

/**
 * Shell far beyond what can dissolve, put aside so that its sheer weight does not drown the few ions
 * in rounding: all but what the hydrogen can take and a mole per kg of water, a hundred times what
 * carbon dioxide dissolves.
 */
function spareCalciteMol({ mol, waterKg }: Contents): number {
  return Math.min(mol.Ca, mol.CO3) - Math.max(mol.H, 0) - waterKg;
}

function contentsTroubles(
  { components }: Chemistry,
  contents: Contents,
  conditions: Conditions,
): MixTrouble[] {
  const { temperatureC, gas } = conditions;
  // Hydrogen may be below nought: a base.
  const found = componentKeys.flatMap((key) => {
    const mol = contents.mol[key];
    if (key === "H" || isQuantity(mol)) return [];
    return badQuantities({ [`${components[key].word} (mol)`]: mol });
  });
  if (!Number.isFinite(contents.mol.H))
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
  let before: Tried | undefined;
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
    ) {
      const value = report(mixture, medium, found, steps);
      // Nothing leaves here whose balances do not close.
      const closes = value.massError <= closesTo && value.chargeError <= closesTo;
      return closes ? { ok: true, value } : failed(doesNotSettle);
    }
    if (miss > 0) low = Math.max(low, x);
    else high = Math.min(high, x);
    // The ends were found in a slightly other water; let go of them when they meet.
    if (high - low <= 1e-9 * high) [low, high] = [0, strongestMolPerKg];
    const next = secant({ x, miss }, before) ?? made.ionicStrength;
    before = { x, miss };
    medium = {
      ionicStrength: next > low && next < high ? next : between(low, high),
      waterActivity: made.waterActivity,
      waterKg,
    };
  }
  return medium.waterKg < 1e-6 * contents.waterKg ? failed(noLiquidLeft) : failed(doesNotSettle);
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

interface Tried {
  readonly x: number;
  readonly miss: number;
}

function secant({ x, miss }: Tried, before: Tried | undefined): number | undefined {
  if (!before || before.miss === miss) return undefined;
  return x - (miss * (x - before.x)) / (miss - before.miss);
}

function between(low: number, high: number): number {
  return low > 0 && high / low > 10 ? Math.sqrt(low * high) : (low + high) / 2;
}
