/** The constants at one temperature, as natural logarithms ready for the solver. */
// @ts-nocheck

import { daviesTerm, debyeHuckelA, kelvinAt0C } from "./activity.js";
import {
  type Chemistry,
  type Counts,
  type PhaseKey,
  phaseKeys,
  type Reaction,
  recordOf,
} from "./constants.js";

export interface Phase extends Counts {
  readonly name: PhaseKey;
  /** Of dissolution. */
  readonly lnK: number;
  /** Column of the component whose activity this phase settles when it is there. */
  readonly pivot: number;
}

export interface Thermo {
  readonly temperatureC: number;
  readonly debyeHuckelA: number;
  /** Of formation, in the order of `chemistry.solutes`. */
  readonly lnK: readonly number[];
  readonly phases: Readonly<Record<PhaseKey, Phase>>;
}

// van 't Hoff from 25 degC with a constant enthalpy.
function lnKAt(chemistry: Chemistry, reaction: Omit<Reaction, "of" | "source">, T: number): number {
  const perK = (1000 * reaction.enthalpyKjPerMol) / chemistry.physical.gasConstantJPerMolK.value;
  return reaction.logK * Math.LN10 - perK * (1 / T - 1 / (25 + kelvinAt0C));
}

/** Temperature in degC, 0 to 100. */
export function thermoAt(chemistry: Chemistry, temperatureC: number): Thermo {
  const T = temperatureC + kelvinAt0C;
  const phases = recordOf(phaseKeys, (name): Phase => {
    const { counts, waterCount, pivot } = chemistry.phases[name];
    return { name, counts, waterCount, lnK: lnKAt(chemistry, chemistry.phases[name], T), pivot };
  });
  return {
    temperatureC,
    debyeHuckelA: debyeHuckelA(chemistry, temperatureC),
    lnK: chemistry.solutes.map((s) => lnKAt(chemistry, s, T)),
    phases,
  };
}

/** ln of the activity coefficient of a singly charged ion; times z squared for others. */
export function lnGammaUnit(chemistry: Chemistry, thermo: Thermo, ionicStrength: number): number {
  const slope = chemistry.physical.daviesSlopeKgPerMol.value;
  return -Math.LN10 * daviesTerm(thermo.debyeHuckelA, ionicStrength, slope);
}
