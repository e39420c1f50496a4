// @ts-nocheck
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import type { StockSettings } from "../../../src/garden/garden.js";
import type { MakingRules } from "../../../src/stock/making-rules.js";
import { recipe } from "../../../src/stock/making/recipe.js";
import {
  bottleStock,
  recipeMeans,
  stockAsMeasured,
} from "../../../src/stock/making/usual-stock.js";
import { good } from "../chemistry/chemistry-cases.js";
import { chemistry } from "../chemistry/chemistry-fixture.js";

const making = parse(
  readFileSync(new URL("../../../src/stock/making.yaml", import.meta.url), "utf8"),
) as MakingRules;
const made = good(
  recipe(
    chemistry,
    making,
    { by: "volume", makeMl: 1000 },
    {
      acid: "citric",
      citricForm: "anhydrous",
      vinegarPercent: 5,
      shellPurity: 0.94,
      bottleMl: 500,
      eggs: { name: "EU M", dryShellG: 5.5 },
      temperatureC: 20,
    },
  ),
);
const measured = (m: Parameters<typeof stockAsMeasured>[2]) =>
  good(stockAsMeasured(chemistry, made, m, "shaken"));

describe("a bottle in hand", () => {
  test("unmeasured is as the recipe computes it", () => {
    expect(measured({})).toEqual(made.stock);
  });

  test("has the strength that was measured", () => {
    expect(measured({ strengthGPerL: 5 }).shakenGPerL).toBeCloseTo(5, 12);
  });

  test("has the pH that was measured, and the calcium that goes with it", () => {
    const sour = measured({ ph: 4 });
    expect(sour.ph).toBeCloseTo(4, 6);
    expect(sour.shakenGPerL).toBeLessThan(made.stock.shakenGPerL);
  });

  test("has both", () => {
    const both = measured({ ph: 5.2, strengthGPerL: 7 });
    expect(both.ph).toBeCloseTo(5.2, 6);
    expect(both.shakenGPerL).toBeCloseTo(7, 9);
  });

  test("cannot have a pH of 20, or no strength", () => {
    expect(stockAsMeasured(chemistry, made, { ph: 20 }, "shaken").ok).toBe(false);
    for (const strengthGPerL of [0, -1, NaN])
      expect(stockAsMeasured(chemistry, made, { strengthGPerL }, "shaken").ok).toBe(false);
  });

  test("of another acid than the garden's is of that acid", () => {
    const settings: StockSettings = {
      ...made.means,
      keep: "shelf",
      pour: "shaken",
      largestBatchMl: 2000,
      batches: [],
      begun: [],
      dropped: [],
    };
    const own = good(bottleStock(chemistry, making, settings, { acid: "citric" }));
    expect(own).toEqual(made.stock);
    const other = good(bottleStock(chemistry, making, settings, { acid: "vinegar", ph: 7 }));
    expect(other.crystals.mol.Ca).toBe(0);
    expect(other.ph).toBeCloseTo(7, 6);
    expect(recipeMeans(chemistry, settings)).toEqual(made.means);
  });
});
