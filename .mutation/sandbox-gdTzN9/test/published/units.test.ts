/**
 * Quantities as growers write them against published values and against js-quantities, a general
 * library of units that shares no code or table with ours.
 */
// @ts-nocheck

import Qty from "js-quantities";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { litersPerImperialGallon } from "../../src/garden/amounts.js";
import { litersPerUsGallon, mlPerTeaspoon } from "../../src/garden/us-measures.js";
import type { Amounts } from "../../src/garden/garden.js";
import { parseQuantity, parseRate } from "../../src/garden/quantity.js";
import type { UnitKind } from "../../src/garden/units.js";
import { loadTables } from "../../src/tables.js";

const { units } = loadTables();

function base(text: string, kind: UnitKind, amounts: Amounts = "us"): number {
  const parsed = parseQuantity(text, kind, { units, amounts });
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
}

// Exact in our table, six places or more in theirs.
const sameAs = (ours: number, theirs: number): void => {
  expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-6 * Math.abs(theirs));
};

describe("js-quantities 1.8 agrees on every unit that both know", () => {
  test.each<[string, UnitKind, string, string]>([
    ["mL", "volume", "ml", "l"],
    ["cL", "volume", "cl", "l"],
    ["m3", "volume", "m3", "l"],
    ["gal", "volume", "gal", "l"],
    ["qt", "volume", "qt", "l"],
    ["pt", "volume", "pt", "l"],
    ["cup", "volume", "cu", "l"],
    ["fl oz", "volume", "floz", "l"],
    ["tbsp", "volume", "tbs", "l"],
    ["tsp", "volume", "tsp", "l"],
    ["oz", "mass", "oz", "g"],
    ["lb", "mass", "lb", "g"],
    ["kg", "mass", "kg", "g"],
    ["in", "length", "in", "m"],
    ["ft", "length", "ft", "m"],
    ["yd", "length", "yd", "m"],
    ["ft2", "area", "ft2", "m2"],
    ["yd2", "area", "yd2", "m2"],
    ["ha", "area", "hectare", "m2"],
    ["hours", "time", "h", "day"],
    ["weeks", "time", "week", "day"],
    ["g/L", "concentration", "g/l", "mg/l"],
  ])("%s of %s", (unit, kind, theirs, theirBase) => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), (thousandths) => {
        const number = thousandths / 1000;
        sameAs(base(`${number} ${unit}`, kind), Qty(`${number} ${theirs}`).to(theirBase).scalar);
      }),
      { numRuns: 20 },
    );
  });

  test("and on rates, volume by volume", () => {
    for (const [text, above, below] of [
      ["2 tsp per gal", "2 tsp", "1 gal"],
      ["1/2 fl oz per gal", "0.5 floz", "1 gal"],
      ["10 mL in 4 L", "10 ml", "4 l"],
      ["1 tbsp per 2 qt", "1 tbs", "2 qt"],
    ] as const) {
      const ours = parseRate(text, { units, amounts: "us" });
      const theirs = Qty(above).div(Qty(below)).to("ml/l").scalar;
      sameAs(ours.ok ? ours.value : NaN, theirs);
    }
  });
});

describe("NIST Handbook 44, Appendix C, tables of equivalents", () => {
  test("one gallon is 231 cubic inches exactly: 231 x 0.0254^3 m3", () => {
    expect(base("1 gal", "volume")).toBeCloseTo(231 * 0.0254 ** 3 * 1000, 12);
    expect(litersPerUsGallon).toBe(base("1 gal", "volume"));
  });

  test("one measuring cup is 8 fluid ounces exactly, half a liquid pint, 237 mL", () => {
    expect(base("1 cup", "volume")).toBeCloseTo(8 * base("1 fl oz", "volume"), 12);
    expect(base("1 cup", "volume")).toBeCloseTo(base("1 pt", "volume") / 2, 12);
    expect(Math.round(base("1 cup", "volume") * 1000)).toBe(237);
  });

  test("one cubic foot is 7.481 gallons, one cubic yard 0.765 cubic metre", () => {
    const cubicFootL = base("1 ft", "length") ** 3 * 1000;
    expect(cubicFootL / base("1 gal", "volume")).toBeCloseTo(7.481, 3);
    expect(base("1 yd", "length") ** 3).toBeCloseTo(0.765, 3);
  });
});

describe("Fourmilab, The Hacker's Diet, units of volume", () => {
  test("a teaspoon is a 768th of a gallon and 4.928922 mL, a tablespoon 14.78676 mL", () => {
    expect(base("768 tsp", "volume")).toBeCloseTo(base("1 gal", "volume"), 12);
    expect(base("1 tsp", "volume") * 1000).toBeCloseTo(4.928922, 6);
    expect(mlPerTeaspoon).toBeCloseTo(4.928922, 6);
    expect(base("1 tbsp", "volume") * 1000).toBeCloseTo(14.78676, 5);
  });

  test("a fluid ounce is 29.57353 mL, a pint 473.1765 mL, a quart 946.3529 mL", () => {
    expect(base("1 fl oz", "volume") * 1000).toBeCloseTo(29.57353, 5);
    expect(base("1 pt", "volume") * 1000).toBeCloseTo(473.1765, 4);
    expect(base("1 qt", "volume") * 1000).toBeCloseTo(946.3529, 4);
  });
});

test("Weights and Measures Act 1985, schedule 1: a pint is an eighth of a gallon of 4.54609 L", () => {
  expect(8 * base("1 pt", "volume", "imperial")).toBeCloseTo(4.54609, 12);
  expect(litersPerImperialGallon).toBe(base("1 gal", "volume", "imperial"));
});
