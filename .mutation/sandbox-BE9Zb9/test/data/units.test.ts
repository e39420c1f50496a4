// @ts-nocheck
import Qty from "js-quantities";
import { describe, expect, test } from "vitest";
import { findUnit, type Unit, type UnitKind } from "../../src/garden/units.js";
import { units } from "./data-files.js";

const spelling = (name: string): string => name.toLowerCase().replaceAll(".", "");

test("a spelling means one unit of a kind, or one for each of two systems", () => {
  const seen = new Map<string, Unit>();
  for (const unit of units)
    for (const name of unit.names) {
      const key = `${unit.kind} ${spelling(name)}`;
      const other = seen.get(key);
      if (other !== undefined)
        expect([other.system, unit.system].sort(), name).toEqual(["imperial", "us"]);
      seen.set(key, unit);
    }
});

test("every unit understands itself as it is printed", () => {
  for (const unit of units) {
    const amounts = unit.system === "imperial" ? "imperial" : "us";
    const ofKind = units.filter((u) => u.kind === unit.kind);
    expect(findUnit(unit.unit, ofKind, amounts)?.factor, unit.unit).toBe(unit.factor);
  }
});

test("each kind has its base unit", () => {
  const base: Record<UnitKind, string> = {
    volume: "L",
    mass: "g",
    length: "m",
    area: "m2",
    time: "day",
    hardness: "mg/L",
    concentration: "mg/L",
    "soil-content": "ppm",
    density: "kg/L",
  };
  for (const [kind, unit] of Object.entries(base))
    expect(units.find((u) => u.kind === kind && u.unit === unit)?.factor, kind).toBe(1);
});

describe("factors agree with the library js-quantities", () => {
  const cases: [unit: string, system: Unit["system"], theirs: string, theirBase: string][] = [
    ["mL", "any", "ml", "l"],
    ["gal", "us", "gal", "l"],
    ["qt", "us", "qt", "l"],
    ["pt", "us", "pt", "l"],
    ["fl oz", "us", "floz", "l"],
    ["cup", "us", "cu", "l"],
    ["tbsp", "us", "tbs", "l"],
    ["tsp", "us", "tsp", "l"],
    ["oz", "any", "oz", "g"],
    ["lb", "any", "lb", "g"],
    ["in", "any", "in", "m"],
    ["ft", "any", "ft", "m"],
    ["yd", "any", "yd", "m"],
    ["ft2", "any", "ft2", "m2"],
    ["acre", "any", "acre", "m2"],
    ["ha", "any", "hectare", "m2"],
    ["week", "any", "week", "day"],
  ];
  test.each(cases)("%s (%s)", (name, system, theirs, theirBase) => {
    const unit = units.find((u) => u.unit === name && u.system === system);
    const expected = Qty(1, theirs).to(theirBase).scalar;
    // The library rounds its own factors to about 7 digits.
    expect(Math.abs((unit?.factor ?? NaN) / expected - 1)).toBeLessThan(2e-6);
  });
});

const factor = (name: string, kind: UnitKind, system?: Unit["system"]): number => {
  const found = units.find(
    (u) => u.unit === name && u.kind === kind && (system === undefined || u.system === system),
  );
  if (found === undefined) throw new Error(`no unit ${name}`);
  return found.factor;
};

test("the parts of a gallon make a gallon, in both systems", () => {
  for (const [system, ounces] of [
    ["us", 128],
    ["imperial", 160],
  ] as const) {
    const gallon = factor("gal", "volume", system);
    expect(4 * factor("qt", "volume", system)).toBeCloseTo(gallon, 12);
    expect(8 * factor("pt", "volume", system)).toBeCloseTo(gallon, 12);
    expect(ounces * factor("fl oz", "volume", system)).toBeCloseTo(gallon, 12);
    const prefix = system === "us" ? "US" : "imperial";
    expect(factor(`${prefix} gal`, "volume", "any")).toBe(gallon);
  }
  expect(3 * factor("tsp", "volume", "us")).toBeCloseTo(factor("tbsp", "volume", "us"), 12);
});
