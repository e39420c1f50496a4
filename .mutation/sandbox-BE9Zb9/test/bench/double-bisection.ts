/**
 * The same chemistry worked out the plain way, as a judge of the solver and a yardstick of its speed:
 * halve on pH until charges cancel, and within that halve on free calcium until calcium adds up;
 * around both, repeat until the ionic strength stays. No matrix, no logarithms of amounts, no phase
 * switching: a solid that may form simply caps an activity.
 */
// @ts-nocheck

import { debyeHuckelA, waterActivity } from "../../src/stock/chemistry/activity.js";
import type { Chemistry } from "../../src/stock/chemistry/constants.js";
import type { Contents } from "../../src/stock/chemistry/contents.js";
import type { Conditions } from "../../src/stock/chemistry/equilibrium-types.js";

export interface Judged {
  readonly ph: number;
  readonly ionicStrengthMolPerKg: number;
  readonly waterKg: number;
  readonly dissolvedCalciumMol: number;
  readonly calciteMol: number;
  readonly calciumCitrateMol: number;
}

const halvings = 60;

export function doubleBisection(
  chemistry: Chemistry,
  contents: Contents,
  conditions: Conditions,
): Judged {
  const { temperatureC: t, gas, mayForm } = conditions;
  const T = t + 273.15;
  const atT = (logK: number, enthalpyKj: number): number =>
    10 ** (logK - ((1000 * enthalpyKj) / 8.314462618 / Math.LN10) * (1 / T - 1 / 298.15));
  const K = Object.fromEntries(
    chemistry.species.map((s) => [s.name, atT(s.logK, s.enthalpyKjPerMol)]),
  );
  const k = (name: string): number => {
    const value = K[name];
    if (value === undefined) throw new Error(`no constant for ${name}`);
    return value;
  };
  const { calcite, calciumCitrate, carbonDioxide } = chemistry.phases;
  const calciteK = atT(calcite.logK, calcite.enthalpyKjPerMol);
  const citrateK = atT(calciumCitrate.logK, calciumCitrate.enthalpyKjPerMol);
  const gasK = atT(carbonDioxide.logK, carbonDioxide.enthalpyKjPerMol);
  const A = debyeHuckelA(chemistry, t);
  const { Ca, Cit, Ac, CO3: C } = contents.mol;
  const { sodiumMol: na, magnesiumMol: mg, chlorideMol: cl } = contents.bystanders;

  let I = 0.01;
  let aw = 1;
  let W = contents.waterKg;
  for (let round = 0; round < 500; round++) {
    const root = Math.sqrt(I);
    const g = (z: number): number => 10 ** (-A * z * z * (root / (1 + root) - 0.3 * I));
    const [g1, g2, g3] = [g(1), g(2), g(3)];

    const at = (h: number, ca: number) => {
      const oh = (k("OH-") * aw) / h / g1;
      const caOh = (k("CaOH+") * ca * aw) / h / g1;
      const perCit = [
        1 / g3,
        (k("HCit-2") * h) / g2,
        (k("H2Cit-") * h * h) / g1,
        k("H3Cit") * h ** 3,
        (k("CaCit-") * ca) / g1,
        k("CaHCit") * ca * h,
        (k("CaH2Cit+") * ca * h * h) / g1,
      ] as const;
      const citPoly = perCit.reduce((a, b) => a + b);
      const citCap = mayForm.includes("calciumCitrate")
        ? Math.sqrt(citrateK / (ca ** 3 * aw ** 4))
        : Infinity;
      const cit = Math.min(Cit / W / citPoly, citCap);
      const ac = Ac / W / (1 / g1 + k("HAc") * h + (k("CaAc+") * ca) / g1);
      const perCo3 = [
        1 / g2,
        (k("HCO3-") * h) / g1,
        k("H2CO3") * h * h,
        k("CaCO3") * ca,
        (k("CaHCO3+") * ca * h) / g1,
      ] as const;
      const co3Poly = perCo3.reduce((a, b) => a + b);
      const co3 =
        gas.kind === "held"
          ? (gasK * 10 ** gas.logPco2 * aw) / h ** 2
          : Math.min(C / W / co3Poly, mayForm.includes("calcite") ? calciteK / ca : Infinity);
      const cct = (Cit - W * cit * citPoly) / 2;
      const calciteClosed = gas.kind === "held" ? 0 : C - W * co3 * co3Poly;
      const caAc = (ca * ac * k("CaAc+")) / g1;
      const caDissolved =
        ca / g2 +
        caOh +
        cit * (perCit[4] + perCit[5] + perCit[6]) +
        caAc +
        co3 * (perCo3[3] + perCo3[4]);
      const charge =
        h / g1 -
        oh +
        (2 * ca) / g2 +
        caOh +
        cit * (-3 * perCit[0] - 2 * perCit[1] - perCit[2] - perCit[4] + perCit[6]) -
        ac / g1 +
        caAc +
        co3 * (-2 * perCo3[0] - perCo3[1] + perCo3[4]) +
        (na + 2 * mg - cl) / W;
      const strength =
        (h / g1 +
          oh +
          (4 * ca) / g2 +
          caOh +
          cit * (9 * perCit[0] + 4 * perCit[1] + perCit[2] + perCit[4] + perCit[6]) +
          ac / g1 +
          caAc +
          co3 * (4 * perCo3[0] + perCo3[1] + perCo3[4]) +
          (na + 4 * mg + cl) / W) /
        2;
      const solutes =
        h / g1 +
        oh +
        ca / g2 +
        caOh +
        cit * citPoly +
        ac * (1 / g1 + k("HAc") * h + (k("CaAc+") * ca) / g1) +
        co3 * co3Poly +
        (na + mg + cl) / W;
      return {
        charge,
        strength,
        solutes,
        cct,
        caDissolved,
        calcite: calciteClosed,
        carbon: co3 * co3Poly,
        bound: oh + caOh,
        caNeeded: W * caDissolved + 3 * cct + calciteClosed,
      };
    };

    const withCalcium = (h: number) => {
      if (Ca === 0) return at(h, 0);
      let high = 5;
      if (gas.kind === "held" && mayForm.includes("calcite")) {
        const cap = calciteK / ((gasK * 10 ** gas.logPco2 * aw) / h ** 2);
        const full = at(h, cap);
        if (full.caNeeded <= Ca) return { ...full, calcite: Ca - full.caNeeded };
        high = Math.log10(cap);
      }
      let low = -30;
      for (let i = 0; i < halvings; i++) {
        const middle = (low + high) / 2;
        if (at(h, 10 ** middle).caNeeded > Ca) high = middle;
        else low = middle;
      }
      return at(h, 10 ** ((low + high) / 2));
    };

    let acid = -3;
    let base = 15;
    for (let i = 0; i < halvings; i++) {
      const middle = (acid + base) / 2;
      if (withCalcium(10 ** -middle).charge > 0) acid = middle;
      else base = middle;
    }
    const ph = (acid + base) / 2;
    const found = withCalcium(10 ** -ph);
    const gasOut = gas.kind === "held" ? C - W * found.carbon - found.calcite : 0;
    const boundMol = W * found.bound + 4 * found.cct - gasOut;
    const nextW = contents.waterKg - (boundMol * chemistry.gPerMol.water) / 1000;
    const nextAw = waterActivity(found.solutes, 0.017);
    const settled =
      Math.abs(found.strength - I) < 1e-10 * found.strength &&
      Math.abs(nextAw - aw) < 1e-11 &&
      Math.abs(nextW / W - 1) < 1e-11;
    if (settled)
      return {
        ph,
        ionicStrengthMolPerKg: I,
        waterKg: W,
        dissolvedCalciumMol: W * found.caDissolved,
        calciteMol: found.calcite,
        calciumCitrateMol: found.cct,
      };
    I += 0.7 * (found.strength - I);
    aw = nextAw;
    W = nextW;
  }
  throw new Error("the judge found no answer");
}
