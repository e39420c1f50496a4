/** The constants at one temperature, as natural logarithms ready for the solver. */
import { daviesTerm, debyeHuckelA, kelvinAt0C } from "./activity.js";
import { type Chemistry, countsOf, type Reaction, waterCountOf } from "./constants.js";

export interface Phase {
  readonly name: "carbonDioxide" | "calcite" | "calciumCitrate";
  readonly counts: readonly number[];
  readonly waterCount: number;
  /** Of dissolution. */
  readonly lnK: number;
  /** Index of the component whose activity this phase settles when it is there. */
  readonly pivot: number;
}

export interface Thermo {
  readonly temperatureC: number;
  readonly debyeHuckelA: number;
  /** Of formation, in the order of `chemistry.solutes`. */
  readonly lnK: readonly number[];
  readonly carbonDioxide: Phase;
  readonly calcite: Phase;
  readonly calciumCitrate: Phase;
}

// van 't Hoff from 25 degC with a constant enthalpy.
function lnKAt(chemistry: Chemistry, reaction: Omit<Reaction, "of" | "source">, T: number): number {
  const perK = (1000 * reaction.enthalpyKjPerMol) / chemistry.physical.gasConstantJPerMolK.value;
  return reaction.logK * Math.LN10 - perK * (1 / T - 1 / (25 + kelvinAt0C));
}

/** Temperature in degC, 0 to 100. */
export function thermoAt(chemistry: Chemistry, temperatureC: number): Thermo {
  const T = temperatureC + kelvinAt0C;
  // Calcium, citrate and carbonate in this order, so that each phase's other components are already
  // settled when its own turn comes.
  const pivots = { carbonDioxide: 4, calcite: 1, calciumCitrate: 2 } as const;
  const phase = (name: Phase["name"]): Phase => {
    const reaction = chemistry.phases[name];
    return {
      name,
      counts: countsOf(reaction.of),
      waterCount: waterCountOf(reaction.of),
      lnK: lnKAt(chemistry, reaction, T),
      pivot: pivots[name],
    };
  };
  return {
    temperatureC,
    debyeHuckelA: debyeHuckelA(chemistry, temperatureC),
    lnK: chemistry.solutes.map((s) => lnKAt(chemistry, s, T)),
    carbonDioxide: phase("carbonDioxide"),
    calcite: phase("calcite"),
    calciumCitrate: phase("calciumCitrate"),
  };
}

/** ln of the activity coefficient of a singly charged ion; times z squared for others. */
export function lnGammaUnit(chemistry: Chemistry, thermo: Thermo, ionicStrength: number): number {
  const slope = chemistry.physical.daviesSlopeKgPerMol.value;
  return -Math.LN10 * daviesTerm(thermo.debyeHuckelA, ionicStrength, slope);
}
