/** Water as a solvent, and how far ions in it depart from ideal. */
// @ts-nocheck

import type { Chemistry } from "./constants.js";

export const kelvinAt0C = 273.15;

/**
 * Density of pure water at 1 atm, kg/L, 0 to 100 degC. Kell, J. Chem. Eng. Data 20 (1975) 97, eq. 16;
 * good to 1e-5.
 */
export function waterDensityKgPerL(temperatureC: number): number {
  const t = temperatureC;
  const numerator =
    999.83952 +
    t *
      (16.945176 +
        t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
  return numerator / (1 + 16.87985e-3 * t) / 1000;
}

/** Relative permittivity of water at 1 atm. Bradley and Pitzer, J. Phys. Chem. 83 (1979) 1599. */
export function waterPermittivity(temperatureC: number): number {
  const T = temperatureC + kelvinAt0C;
  const pressureBar = 1.01325;
  const at1000Bar = 342.79 * Math.exp(T * (-5.0866e-3 + T * 9.469e-7));
  const c = -2.0525 + 3115.9 / (T - 182.89);
  const b = -8032.5 + 4.2142e6 / T + 2.1417 * T;
  return at1000Bar + c * Math.log((b + pressureBar) / (b + 1000));
}

/** Debye-Huckel A, (kg/mol)^0.5, decimal logarithm: e^3 sqrt(2 N rho) / (8 pi ln10 (eps k T)^1.5). */
export function debyeHuckelA(chemistry: Chemistry, temperatureC: number): number {
  const { physical } = chemistry;
  const chargeC = physical.elementaryChargeC.value;
  const densityKgPerM3 = 1000 * waterDensityKgPerL(temperatureC);
  const thermalFJPerM =
    waterPermittivity(temperatureC) *
    physical.vacuumPermittivityFPerM.value *
    physical.boltzmannJPerK.value *
    (temperatureC + kelvinAt0C);
  return (
    (chargeC ** 3 * Math.sqrt(2 * physical.avogadroPerMol.value * densityKgPerM3)) /
    (8 * Math.PI * Math.LN10 * thermalFJPerM ** 1.5)
  );
}

/**
 * Minus log10 of the activity coefficient of a singly charged ion; times the square of the charge for
 * others, nought for the uncharged. Davies 1962: A (sqrt(I)/(1+sqrt(I)) - 0.3 I). Fair to about 0.5
 * mol/kg, a stretch to 1.
 */
export function daviesTerm(a: number, ionicStrength: number, slopeKgPerMol: number): number {
  const root = Math.sqrt(ionicStrength);
  return a * (root / (1 + root) - slopeKgPerMol * ionicStrength);
}

// Where Raoult's straight line would run towards nought we let it level off, so that any mixture has
// an answer; solutions this strong are outside the model anyway.
const straightUpToMolPerKg = 20;

/** Activity of water, from the sum of all solute molalities (mol/kg). */
export function waterActivity(soluteMolPerKg: number, slopeKgPerMol: number): number {
  if (soluteMolPerKg <= straightUpToMolPerKg) return 1 - slopeKgPerMol * soluteMolPerKg;
  const there = 1 - slopeKgPerMol * straightUpToMolPerKg;
  return there * Math.exp((-slopeKgPerMol * (soluteMolPerKg - straightUpToMolPerKg)) / there);
}
