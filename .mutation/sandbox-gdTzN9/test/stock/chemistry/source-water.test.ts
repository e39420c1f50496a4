// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { openAir } from "../../../src/stock/chemistry/brew.js";
import { equilibrate } from "../../../src/stock/chemistry/equilibrium.js";
import {
  rainWater,
  sourceWater,
  tapCalciumMgPerL,
  type WaterReport,
} from "../../../src/stock/chemistry/source-water.js";
import { good } from "./chemistry-cases.js";
import { chemistry } from "./chemistry-fixture.js";

const mgPerL = fc.double({ min: 0, max: 500, noNaN: true });

describe("source water", () => {
  test("brings the calcium of its hardness, or what the report says", () => {
    expect(tapCalciumMgPerL(chemistry, { hardnessMgPerL: 100 })).toBeCloseTo(40.04, 2);
    expect(tapCalciumMgPerL(chemistry, { hardnessMgPerL: 100, calciumMgPerL: 31 })).toBe(31);
    const water = good(sourceWater(chemistry, { hardnessMgPerL: 100 }, 1, 20));
    expect(1000 * water.mol.Ca * chemistry.gPerMol.calcium).toBeCloseTo(40.04, 2);
  });

  test("takes hardness that is no calcium for magnesium", () => {
    const water = good(sourceWater(chemistry, { hardnessMgPerL: 100, calciumMgPerL: 20 }, 1, 20));
    const hardnessMol = water.mol.Ca + water.bystanders.magnesiumMol;
    expect(hardnessMol * chemistry.gPerMol.calciumCarbonate * 1000).toBeCloseTo(100, 9);
  });

  test("is electrically neutral and in balance with air, whatever the report", () => {
    fc.assert(
      fc.property(mgPerL, mgPerL, fc.double({ min: 0, max: 1, noNaN: true }), (h, a, part) => {
        const report: WaterReport = {
          hardnessMgPerL: h,
          alkalinityMgPerL: a,
          calciumMgPerL: 0.4 * h * part,
        };
        const water = good(sourceWater(chemistry, report, 1, 15));
        const still = good(
          equilibrate(chemistry, water, {
            temperatureC: 15,
            gas: openAir(chemistry),
            mayForm: [],
          }),
        );
        expect(Math.abs(still.carbonDioxideOutMol)).toBeLessThan(1e-12);
        expect(still.chargeError).toBeLessThan(1e-9);
      }),
    );
  });

  test("of rain is faintly sour, of chalk limy", () => {
    const ph = (report: WaterReport): number =>
      good(
        equilibrate(chemistry, good(sourceWater(chemistry, report, 1, 25)), {
          temperatureC: 25,
          gas: { kind: "closed" },
          mayForm: [],
        }),
      ).ph;
    expect(ph(rainWater)).toBeLessThan(5.8);
    expect(ph({ hardnessMgPerL: 300 })).toBeGreaterThan(8.3);
  });

  test("with more calcium than hardness is a mix-up of units", () => {
    const result = sourceWater(chemistry, { hardnessMgPerL: 100, calciumMgPerL: 100 }, 1, 20);
    expect(result.ok).toBe(false);
  });

  test("with negative figures is refused, each named", () => {
    const report = { hardnessMgPerL: -1, alkalinityMgPerL: -2 };
    const result = sourceWater(chemistry, report, 1, 20);
    const messages = result.ok ? [] : result.problems.map((p) => p.message);
    expect(messages).toContain("hardness (mg/L as CaCO3) is -1");
    expect(messages).toContain("alkalinity (mg/L as CaCO3) is -2");
  });
});
