/** Units against the definitions they rest on; each title names its source. */
// @ts-nocheck

import { expect, test } from "vitest";
import type { Unit, UnitKind } from "../../src/garden/units.js";
import { units } from "../data/data-files.js";

function factor(unit: string, kind: UnitKind, system: Unit["system"] = "any"): number {
  const found = units.find((u) => u.unit === unit && u.kind === kind && u.system === system);
  if (found === undefined) throw new Error(`units.yaml has no ${unit}`);
  return found.factor;
}

test("NIST Handbook 44, Appendix C: the US gallon is 231 cubic inches, 3.785411784 L exactly", () => {
  const inchM = factor("in", "length");
  expect(factor("gal", "volume", "us")).toBe(3.785411784);
  expect(231 * inchM ** 3 * 1000).toBeCloseTo(3.785411784, 12);
});

test("NIST Handbook 44, Appendix C: the teaspoon is a 768th of a gallon, 4.928922 mL", () => {
  expect(factor("tsp", "volume", "us") * 1000).toBeCloseTo(4.928922, 6);
  expect(factor("cup", "volume", "us") * 1000).toBeCloseTo(236.5882365, 7);
});

test("Weights and Measures Act 1985, schedule 1: the gallon is 4.54609 cubic decimetres", () => {
  expect(factor("gal", "volume", "imperial")).toBe(4.54609);
  expect(factor("fl oz", "volume", "imperial") * 160).toBeCloseTo(4.54609, 12);
});

test("International yard and pound, by definition: 0.9144 m and 453.59237 g", () => {
  expect(factor("yd", "length")).toBe(0.9144);
  expect(factor("lb", "mass")).toBe(453.59237);
  expect(factor("acre", "area")).toBeCloseTo(4840 * 0.9144 ** 2, 9);
});

// The table is rounded to three digits.
test.each([
  ["Clark", 14.3],
  ["gpg", 17.1],
  ["fH", 10.0],
  ["dH", 17.9],
])("Hach, Common hardness unit conversions: one %s is %d mg/L as CaCO3", (unit, mgPerL) => {
  expect(Math.abs(factor(unit, "hardness") - mgPerL)).toBeLessThan(0.06);
});

test("University of California, microirrigation maintenance: 2.5 meq/L is 50 mg/L of calcium", () => {
  const asCaCO3 = 2.5 * factor("meq/L", "hardness");
  expect((asCaCO3 * 40.078) / 100.086).toBeCloseTo(50, 0);
  expect(factor("mmol/L", "hardness")).toBe(2 * factor("meq/L", "hardness"));
  expect(factor("dKH", "hardness")).toBe(factor("dH", "hardness"));
});

test("CIAAW abridged atomic weights: one mmol/L is 100.09 mg/L as CaCO3 and 5.608 German degrees", () => {
  expect(factor("mmol/L", "hardness")).toBeCloseTo(100.09, 2);
  expect(factor("mmol/L", "hardness") / factor("dH", "hardness")).toBeCloseTo(5.608, 3);
});
