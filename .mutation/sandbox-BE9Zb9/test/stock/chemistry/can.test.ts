// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CanInput, type CanLiquid, dilute } from "../../../src/stock/chemistry/can.js";
import { rainWater } from "../../../src/stock/chemistry/source-water.js";
import { good } from "./chemistry-cases.js";
import { chemistry, citricStock } from "./chemistry-fixture.js";

const finished = citricStock(15);
const usual: CanInput = {
  stockMlPerL: 2.5,
  pour: "shaken",
  water: { hardnessMgPerL: 120 },
  temperatureC: 15,
  air: "closed",
};
const can = (input: Partial<CanInput> = {}, stock = finished): CanLiquid =>
  good(dilute(chemistry, stock, { ...usual, ...input }));

describe("stock in the can", () => {
  test("shaken at the trade's rate dissolves wholly and doubles what a hard tap brings", () => {
    const mix = can();
    expect(mix.settlesMgPerL).toBe(0);
    expect(mix.calciumFromStockMgPerL).toBeCloseTo(2.5 * finished.shakenGPerL, 6);
    expect(mix.calciumMgPerL).toBeCloseTo(mix.calciumFromStockMgPerL + mix.calciumFromTapMgPerL, 6);
    expect(mix.calciumFromTapMgPerL).toBeCloseTo(0.9975 * 48.05, 1);
  });

  test("poured clear brings next to nothing", () => {
    expect(can({ pour: "clear" }).calciumFromStockMgPerL).toBeLessThan(0.6);
  });

  test("poured strong leaves crystals on the ground of the can", () => {
    const mix = can({ stockMlPerL: 20 });
    expect(mix.settlesMgPerL).toBeGreaterThan(100);
    expect(mix.calciumInCrystalsMgPerL / mix.settlesMgPerL).toBeCloseTo(
      (3 * chemistry.gPerMol.calcium) / chemistry.gPerMol.calciumCitrateTetrahydrate,
      9,
    );
  });

  test("poured at 10 mL per L leaves solid as the water is hard: none in rain, 23 mg/L at a hardness of 50, 146 at 200", () => {
    // The rate is of stock of the reference strength.
    const stockMlPerL = (10 * 17.75) / finished.shakenGPerL;
    const leaves = (hardnessMgPerL: number): number =>
      can({ stockMlPerL, water: { hardnessMgPerL }, temperatureC: 20 }).settlesMgPerL;
    expect([0, 50, 200].map((mgPerL) => Math.round(leaves(mgPerL)))).toEqual([0, 23, 146]);
  });

  test("leaves no less solid in harder water", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (stockMlPerL, hardnessMgPerL, moreMgPerL) => {
          const leaves = (mgPerL: number): number =>
            can({ stockMlPerL, water: { hardnessMgPerL: mgPerL } }).settlesMgPerL;
          expect(leaves(hardnessMgPerL + moreMgPerL)).toBeGreaterThanOrEqual(
            leaves(hardnessMgPerL) - 1e-6,
          );
        },
      ),
    );
  });

  test("keeps every mg of calcium, dissolved or settled", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 400, noNaN: true }),
        fc.constantFrom("shaken" as const, "clear" as const),
        fc.constantFrom("closed" as const, "open" as const),
        (stockMlPerL, hardnessMgPerL, pour, air) => {
          const mix = can({ stockMlPerL, water: { hardnessMgPerL }, pour, air });
          expect(mix.calciumMgPerL + mix.calciumInCrystalsMgPerL).toBeCloseTo(
            mix.calciumFromStockMgPerL + mix.calciumFromTapMgPerL,
            6,
          );
        },
      ),
    );
  });

  test("of a stock still acid makes the can sour, and says so", () => {
    const sour = can({ water: rainWater }, citricStock(4));
    expect(sour.ph).toBeLessThan(5);
    expect(sour.phOutside).toBe("low");
  });

  test("of a finished stock stays within what plants bear, in any usual water", () => {
    for (const water of [rainWater, { hardnessMgPerL: 50 }, { hardnessMgPerL: 200 }])
      for (const air of ["closed", "open"] as const)
        expect(can({ water, air }).phOutside).toBeUndefined();
  });

  test("tells the water's own pH beside its mixture's", () => {
    const mix = can({ water: { hardnessMgPerL: 350 }, air: "open" });
    expect(mix.phOutside).toBe("high");
    expect(mix.waterPh).toBeGreaterThan(8.7);
    expect(mix.ph).toBeLessThan(mix.waterPh);
  });

  test("of soda-softened water is too limy, and says so", () => {
    const water = { hardnessMgPerL: 5, alkalinityMgPerL: 400 };
    expect(can({ water, air: "open" }).phOutside).toBe("high");
  });

  test("without stock is the tap's own water", () => {
    const mix = can({ stockMlPerL: 0 });
    expect(mix.calciumMgPerL).toBeCloseTo(mix.calciumFromTapMgPerL, 9);
  });

  test("of nothing but stock is the stock", () => {
    const mix = can({ stockMlPerL: 1000, temperatureC: 20, air: "open" });
    expect(mix.ph).toBeCloseTo(finished.ph, 6);
    expect(mix.calciumMgPerL + mix.calciumInCrystalsMgPerL).toBeCloseTo(
      1000 * finished.shakenGPerL,
      4,
    );
  });

  test("cannot be more than all or less than nothing of it", () => {
    for (const stockMlPerL of [-1, 1001, NaN])
      expect(dilute(chemistry, finished, { ...usual, stockMlPerL }).ok).toBe(false);
  });
});
