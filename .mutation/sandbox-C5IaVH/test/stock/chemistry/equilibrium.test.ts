// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { solidKeys } from "../../../src/stock/chemistry/constants.js";
import { pureWater } from "../../../src/stock/chemistry/contents.js";
import type { Conditions } from "../../../src/stock/chemistry/equilibrium-types.js";
import { equilibrate } from "../../../src/stock/chemistry/equilibrium.js";
import { doubleBisection } from "../../bench/double-bisection.js";
import {
  anyConditions,
  contentsOf,
  dissolvedCalciumMol,
  good,
  kitchenMix,
  wildMix,
} from "./chemistry-cases.js";
import { chemistry } from "./chemistry-fixture.js";

const inAir: Conditions = {
  temperatureC: 25,
  gas: { kind: "held", logPco2: -3.4 },
  mayForm: solidKeys,
};
const closed: Conditions = { ...inAir, gas: { kind: "closed" } };

describe("a mixture at rest", () => {
  test("agrees with a plain double bisection on any kitchen mixture", () => {
    fc.assert(
      fc.property(kitchenMix, anyConditions, (mix, conditions) => {
        const contents = contentsOf(mix);
        const found = good(equilibrate(chemistry, contents, conditions));
        const judged = doubleBisection(chemistry, contents, conditions);
        expect(found.ph).toBeCloseTo(judged.ph, 7);
        expect(found.ionicStrengthMolPerKg / judged.ionicStrengthMolPerKg).toBeCloseTo(1, 7);
        expect(found.waterKg).toBeCloseTo(judged.waterKg, 8);
        expect(found.solidMol.calcite).toBeCloseTo(judged.calciteMol, 8);
        expect(found.solidMol.calciumCitrate).toBeCloseTo(judged.calciumCitrateMol, 8);
        if (mix.shellMol > 0)
          expect(dissolvedCalciumMol(found) / judged.dissolvedCalciumMol).toBeCloseTo(1, 7);
      }),
      { numRuns: 80 },
    );
  });

  test("conserves every component and cancels charge to 1e-9, whatever is mixed", () => {
    fc.assert(
      fc.property(wildMix, anyConditions, (mix, conditions) => {
        const result = equilibrate(chemistry, contentsOf(mix), {
          ...conditions,
          mayForm: ["calcite", ...conditions.mayForm],
        });
        if (!result.ok) {
          // Only where crystals bind more water than there is.
          expect(result.problems.map((p) => p.code)).toEqual(["no-liquid-left"]);
          expect(mix.citricMol / mix.waterKg).toBeGreaterThan(1);
          return;
        }
        expect(result.value.massError).toBeLessThanOrEqual(1e-9);
        expect(result.value.chargeError).toBeLessThanOrEqual(1e-9);
      }),
      { numRuns: 3000 },
    );
  });

  test("accounts for all calcium as dissolved, undissolved shell and crystals", () => {
    fc.assert(
      fc.property(kitchenMix, anyConditions, (mix, conditions) => {
        const found = good(equilibrate(chemistry, contentsOf(mix), conditions));
        const sum =
          dissolvedCalciumMol(found) + found.solidMol.calcite + 3 * found.solidMol.calciumCitrate;
        expect(Math.abs(sum - mix.shellMol)).toBeLessThanOrEqual(1e-12 * (1 + mix.shellMol));
      }),
    );
  });

  test("accounts for all water as liquid, in ions, in crystals and set free with the gas", () => {
    fc.assert(
      fc.property(kitchenMix, anyConditions, (mix, conditions) => {
        const found = good(equilibrate(chemistry, contentsOf(mix), conditions));
        const kgPerMol = chemistry.gPerMol.water / 1000;
        const sumKg =
          found.dissolved.waterKg +
          kgPerMol * (4 * found.solidMol.calciumCitrate - found.carbonDioxideOutMol);
        expect(sumKg).toBeCloseTo(mix.waterKg, 9);
      }),
    );
  });

  test("leaves no solid oversaturated that may form, and none undersaturated that is there", () => {
    fc.assert(
      fc.property(kitchenMix, anyConditions, (mix, conditions) => {
        const found = good(equilibrate(chemistry, contentsOf(mix), conditions));
        for (const key of solidKeys) {
          const mayForm = conditions.mayForm.includes(key);
          const mol = found.solidMol[key];
          const saturation = found.saturation[key];
          expect(mol).toBeGreaterThanOrEqual(-1e-15);
          if (mayForm && saturation !== undefined) expect(saturation).toBeLessThan(1e-9);
          if (mol > 1e-12) expect(Math.abs(saturation ?? NaN)).toBeLessThan(1e-9);
          if (!mayForm) expect(mol).toBe(0);
        }
      }),
    );
  });

  test("does not depend on the size of the jar", () => {
    fc.assert(
      fc.property(kitchenMix, anyConditions, fc.constantFrom(1e-3, 1e3), (mix, conditions, k) => {
        const one = good(equilibrate(chemistry, contentsOf(mix), conditions));
        const other = good(
          equilibrate(
            chemistry,
            contentsOf({
              shellMol: k * mix.shellMol,
              citricMol: k * mix.citricMol,
              aceticMol: k * mix.aceticMol,
              waterKg: k,
            }),
            conditions,
          ),
        );
        expect(other.ph).toBeCloseTo(one.ph, 8);
        expect(dissolvedCalciumMol(other) / k).toBeCloseTo(dissolvedCalciumMol(one), 10);
      }),
    );
  });
});

describe("the plainest mixtures", () => {
  test("pure water shut off from air is neutral", () => {
    const found = good(equilibrate(chemistry, pureWater(1), closed));
    expect(found.ph).toBeCloseTo(13.997 / 2, 3);
    expect(found.saturation.calcite).toBeUndefined();
    expect(found.saturation.calciumCitrate).toBeUndefined();
  });

  test("no acid and no shell in air is weakly sour with carbon dioxide alone", () => {
    const found = good(equilibrate(chemistry, pureWater(1), inAir));
    expect(found.ph).toBeGreaterThan(5.5);
    expect(found.ph).toBeLessThan(5.7);
    expect(found.carbonDioxideOutMol).toBeLessThan(0);
  });

  test("shell without acid hardly dissolves", () => {
    const mix = { shellMol: 1, citricMol: 0, aceticMol: 0, waterKg: 1 };
    const found = good(equilibrate(chemistry, contentsOf(mix), inAir));
    expect(found.solidMol.calcite).toBeGreaterThan(0.999);
  });

  test("acid without shell stays acid", () => {
    const mix = { shellMol: 0, citricMol: 0.3, aceticMol: 0, waterKg: 1 };
    expect(good(equilibrate(chemistry, contentsOf(mix), closed)).ph).toBeLessThan(2.2);
  });

  test("a mountain of shell in a spoon of water changes nothing but the heap", () => {
    const mix = { shellMol: 1, citricMol: 0.01, aceticMol: 0, waterKg: 1 };
    const heap = { ...mix, shellMol: 1e6 };
    const found = good(equilibrate(chemistry, contentsOf(mix), inAir));
    const heaped = good(equilibrate(chemistry, contentsOf(heap), inAir));
    expect(heaped.ph).toBeCloseTo(found.ph, 10);
    expect(heaped.solidMol.calcite - found.solidMol.calcite).toBeCloseTo(1e6 - 1, 6);
  });
});

describe("what is no mixture", () => {
  const codes = (contents = pureWater(1), conditions = inAir): string[] => {
    const result = equilibrate(chemistry, contents, conditions);
    return result.ok ? [] : result.problems.map((p) => p.code);
  };

  test("says that there is no water", () => {
    expect(codes(pureWater(0))).toEqual(["no-water"]);
    expect(codes(pureWater(-1))).toEqual(["no-water"]);
    expect(codes(pureWater(NaN))).toEqual(["no-water"]);
  });

  test("says that it would freeze or boil", () => {
    expect(codes(pureWater(1), { ...inAir, temperatureC: -0.1 })).toEqual([
      "temperature-out-of-range",
    ]);
    expect(codes(pureWater(1), { ...inAir, temperatureC: NaN })).toEqual([
      "temperature-out-of-range",
    ]);
  });

  test("says every amount that is none", () => {
    const contents = { ...pureWater(1), mol: { H: 0, Ca: -1, Cit: NaN, Ac: 0, CO3: Infinity } };
    expect(codes(contents)).toEqual(["not-a-quantity", "not-a-quantity", "not-a-quantity"]);
  });

  test("says that a gas pressure is none", () => {
    expect(codes(pureWater(1), { ...inAir, gas: { kind: "held", logPco2: NaN } })).toEqual([
      "not-a-quantity",
    ]);
  });

  test("says that crystals would bind all the water", () => {
    const dry = { shellMol: 1.5, citricMol: 1, aceticMol: 0, waterKg: 0.005 };
    expect(codes(contentsOf(dry))).toEqual(["no-liquid-left"]);
  });
});
