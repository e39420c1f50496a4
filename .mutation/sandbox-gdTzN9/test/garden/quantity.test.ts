// @ts-nocheck
import { describe, expect, test } from "vitest";
import type { Amounts } from "../../src/garden/garden.js";
import {
  type Parsed,
  parsePercent,
  parseQuantity,
  parseRate,
  parseWater,
} from "../../src/garden/quantity.js";
import type { UnitKind } from "../../src/garden/units.js";
import { loadTables } from "../../src/tables.js";

const { units } = loadTables();
const context = (amounts: Amounts = "metric"): Parameters<typeof parseRate>[1] => ({
  units,
  amounts,
});

function amount(text: string, kind: UnitKind, amounts?: Amounts): number {
  return value(parseQuantity(text, kind, context(amounts)));
}

function value<T>(parsed: Parsed<T>): T {
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
}

function refusal(parsed: Parsed<unknown>): string {
  if (parsed.ok) throw new Error("it was understood");
  return `${parsed.message}: ${parsed.mend}`;
}

describe("a quantity", () => {
  test.each<[string, UnitKind, number]>([
    ["9 L", "volume", 9],
    ["9L", "volume", 9],
    ["9 l", "volume", 9],
    ["  9   litres ", "volume", 9],
    ["1.5 L", "volume", 1.5],
    [".5 L", "volume", 0.5],
    ["9. L", "volume", 9],
    ["600 mL", "volume", 0.6],
    ["1 1/2 L", "volume", 1.5],
    ["3/4 L", "volume", 0.75],
    ["½ L", "volume", 0.5],
    ["1½ L", "volume", 1.5],
    ["2 ¼ L", "volume", 2.25],
    ["⅔ L", "volume", 2 / 3],
    ["1⁄2 L", "volume", 0.5],
    ["１０ L", "volume", 10],
    ["1.5 kg", "mass", 1500],
    ["20 m", "length", 20],
    ["60 ft", "length", 18.288],
    ["4 m²", "area", 4],
    ["4 sq m", "area", 4],
    ["40 ft²", "area", 3.7161216],
    ["2 weeks", "time", 14],
    ["36 hours", "time", 1.5],
    ["10 fl. oz.", "volume", 0.295735295625],
    ["5 g/L", "concentration", 5000],
    ["40 mg per L", "concentration", 40],
    ["7 °dH", "hardness", 124.93571339408313],
  ])("%s", (text, kind, base) => {
    expect(amount(text, kind)).toBeCloseTo(base, 9);
  });

  test("a unit that two systems share is the garden's own; US where the garden is metric", () => {
    expect(amount("1 gal", "volume", "us")).toBe(3.785411784);
    expect(amount("1 gal", "volume", "metric")).toBe(3.785411784);
    expect(amount("1 gal", "volume", "imperial")).toBe(4.54609);
    expect(amount("1 US gal", "volume", "imperial")).toBe(3.785411784);
    expect(amount("1 imperial gal", "volume", "us")).toBe(4.54609);
  });

  test.each<[string, string, UnitKind, string]>([
    [
      "without a unit",
      "9",
      "volume",
      "`9` has no unit: write the unit behind the number, like 9 L or 2 gal",
    ],
    ["below zero", "-9 L", "volume", "`-9 L` is negative: write it like 9 L or 2 gal"],
    [
      "below zero with a typeset minus",
      "−9 L",
      "volume",
      "`−9 L` is negative: write it like 9 L or 2 gal",
    ],
    ["with a decimal comma", "1,5 L", "volume", "`1,5 L` has a comma in the number: write 1.5 L"],
    [
      "with a comma between thousands",
      "1,500 mL",
      "volume",
      "`1,500 mL` has a comma in the number: write thousands without a comma, like 1500 mL",
    ],
    [
      "of another kind",
      "9 kg",
      "volume",
      "`9 kg` is a weight, a volume is needed: write a volume like 9 L or 2 gal",
    ],
    [
      "of an unknown unit",
      "9 buckets",
      "volume",
      "the unit `buckets` is not known: write a volume like 9 L or 2 gal",
    ],
    [
      "in words",
      "nine litres",
      "volume",
      "`nine litres` is not a number with a unit: write it like 9 L or 2 gal",
    ],
    ["that is empty", "", "volume", "`` is not a number with a unit: write it like 9 L or 2 gal"],
    [
      "with a number behind it",
      "9 L 3",
      "volume",
      "the unit `L 3` is not known: write a volume like 9 L or 2 gal",
    ],
    [
      "in powers of ten",
      "1e3 L",
      "volume",
      "the unit `e3 L` is not known: write a volume like 9 L or 2 gal",
    ],
    ["over zero", "1/0 L", "volume", "`1/0 L` divides by zero: write it like 9 L or 2 gal"],
    [
      "that is zero over zero",
      "1 0/0 L",
      "volume",
      "`1 0/0 L` divides by zero: write it like 9 L or 2 gal",
    ],
    [
      "of days that is a length",
      "3 m",
      "time",
      "`3 m` is a length, a number of days is needed: write a number of days like 14 days or 2 weeks",
    ],
    [
      "of days that is an area",
      "3 m2",
      "time",
      "`3 m2` is an area, a number of days is needed: write a number of days like 14 days or 2 weeks",
    ],
    [
      "of mass that is a volume",
      "3 L",
      "mass",
      "`3 L` is a volume, a weight is needed: write a weight like 50 g or 2 oz",
    ],
    [
      "of area that is a length",
      "3 ft",
      "area",
      "`3 ft` is a length, an area is needed: write an area like 4 m2 or 40 ft2",
    ],
    [
      "of hardness that is a time",
      "3 days",
      "hardness",
      "`3 days` is a number of days, a hardness is needed: write a hardness like 120 mg/L, 7 dH or 12 gpg",
    ],
    [
      "of concentration that is a hardness",
      "3 gpg",
      "concentration",
      "`3 gpg` is a hardness, a concentration is needed: write a concentration like 5 g/L or 40 mg/L",
    ],
    [
      "of length that is a concentration",
      "3 g/L",
      "length",
      "`3 g/L` is a concentration, a length is needed: write a length like 20 m or 60 ft",
    ],
  ])("%s is refused with the way to mend it", (_, text, kind, words) => {
    expect(refusal(parseQuantity(text, kind, context()))).toBe(words);
  });
});

describe("a rate", () => {
  test.each([
    ["10 mL in 4 L", 2.5],
    ["2.5 mL per L", 2.5],
    ["2.5 mL/L", 2.5],
    ["10 mL / 4 L", 2.5],
    ["10mL/4L", 2.5],
    ["10 ML PER 4 L", 2.5],
    ["½ cL per 2 L", 2.5],
    ["2 tsp per gal", 2.604166666666667],
    ["2 tsp/gal", 2.604166666666667],
    ["1/2 fl oz per gal", 3.90625],
    ["1 L in 100 L", 10],
  ])("%s", (text, mlPerL) => {
    expect(value(parseRate(text, context()))).toBeCloseTo(mlPerL, 9);
  });

  test("takes its spoons and gallons from the garden's measures", () => {
    expect(value(parseRate("1 tsp per gal", context("imperial")))).toBeCloseTo(5 / 4.54609, 9);
  });

  const mend = "write it like 2.5 mL per L, 10 mL in 4 L or 2 tsp per gal";
  test.each([
    ["2.5 mL", "`2.5 mL` is not a rate"],
    ["2.5", "`2.5` is not a rate"],
    ["2.5 g per L", "`2.5 g` is a weight, a volume is needed"],
    ["2.5 mL per plant", "the unit `plant` is not known"],
    ["10 mL in 0 L", "`10 mL in 0 L` is in no water"],
    ["10 mL in 1/0 L", "`1/0 L` divides by zero"],
    ["", "`` is not a rate"],
  ])("`%s` is refused", (text, message) => {
    expect(refusal(parseRate(text, context()))).toBe(`${message}: ${mend}`);
  });
});

describe("water", () => {
  test.each([
    ["6 L", 6, "whole"],
    ["6 L per bed", 6, "whole"],
    ["6 L per planting", 6, "whole"],
    ["2 L per plant", 2, "plant"],
    ["2 L/plant", 2, "plant"],
    ["½ gal per plant", 1.892705892, "plant"],
    ["4 L per m2", 4, "m2"],
    ["4 L per m²", 4, "m2"],
    ["4 L/m2", 4, "m2"],
    ["8 L per 2 m2", 4, "m2"],
    ["1 gal per 10 ft2", 3.785411784 / 0.9290304, "m2"],
    ["25 mm", 25, "depth"],
    ["1 inch", 25.4, "depth"],
    ["half an inch", 12.7, "depth"],
  ])("%s", (text, liters, per) => {
    const water = value(parseWater(text, context()));
    expect(water.per).toBe(per);
    expect(water.liters).toBeCloseTo(liters, 9);
  });

  const mend = "write it like 6 L, 2 L per plant or 4 L per m2";
  test.each([
    ["6", "`6` has no unit"],
    ["6 kg", "`6 kg` is a weight, a volume is needed"],
    ["2 L per tree", "`per tree` is neither plants nor an area"],
    ["2 L per week", "`per week` is neither plants nor an area"],
    ["2 L per 0 m2", "`per 0 m2` is neither plants nor an area"],
    ["per plant", "`per plant` is not a number with a unit"],
  ])("`%s` is refused", (text, message) => {
    expect(refusal(parseWater(text, context()))).toBe(`${message}: ${mend}`);
  });
});

describe("a share", () => {
  test.each([
    ["94 %", 0.94],
    ["94%", 0.94],
    ["5.5 percent", 0.055],
    ["９４％", 0.94],
  ])("%s", (text, share) => {
    expect(value(parsePercent(text))).toBeCloseTo(share, 12);
  });

  test.each(["94", "0.94", "-5 %", "% 5", ""])("`%s` is refused", (text) => {
    expect(refusal(parsePercent(text))).toBe(`\`${text}\` is not a percentage: write it like 5 %`);
  });
});
