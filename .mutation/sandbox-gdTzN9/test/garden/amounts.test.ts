// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  counted,
  litersPerImperialGallon,
  stockText,
  enoughStockText,
  totalStockText,
  volumeText,
} from "../../src/garden/amounts.js";
import { decimal, mixedNumber } from "../../src/garden/numbers.js";
import { litersPerUsGallon, mlPerTeaspoon } from "../../src/garden/us-measures.js";
import type { Amounts } from "../../src/garden/garden.js";
import { parseQuantity } from "../../src/garden/quantity.js";
import { loadTables } from "../../src/tables.js";

const { units } = loadTables();

describe("water is printed in the garden's measures", () => {
  test.each<[number, Amounts, string]>([
    [9, "metric", "9 L"],
    [1.5, "metric", "1.5 L"],
    [0.6, "metric", "600 mL"],
    [0, "metric", "0 L"],
    [2 * litersPerUsGallon, "us", "2 gal"],
    [1.5 * litersPerUsGallon, "us", "1 1/2 gal"],
    [0.25 * litersPerUsGallon, "us", "1 qt"],
    [0.125 * litersPerUsGallon, "us", "1 pt"],
    [0.375 * litersPerUsGallon, "us", "1 1/2 qt"],
    [(5 / 16) * litersPerUsGallon, "us", "5 cups"],
    [(18 / 16) * litersPerUsGallon, "us", "1 gal + 2 cups"],
    [0.5, "us", "16.9 fl oz"],
    [1, "us", "33.8 fl oz"],
    [9, "us", "2.38 gal"],
    [(24 / 128) * litersPerUsGallon, "us", "3 cups"],
    [0, "us", "0 gal"],
    [2 * litersPerImperialGallon, "imperial", "2 gal"],
    [0.75 * litersPerImperialGallon, "imperial", "3/4 gal"],
    [0.568, "imperial", "568 mL"],
    [0, "imperial", "0 gal"],
  ])("%d L in %s measures: %s", (liters, amounts, text) => {
    expect(volumeText(liters, amounts)).toBe(text);
  });
});

describe("stock is printed as it is measured out", () => {
  test.each<[number, Amounts, string]>([
    [23, "metric", "23 mL"],
    [22.5, "metric", "22.5 mL"],
    [0.15, "metric", "0.15 mL"],
    [0.012, "metric", "0.012 mL"],
    [23, "imperial", "23 mL"],
    [mlPerTeaspoon / 4, "us", "1/4 tsp"],
    [mlPerTeaspoon * 0.75, "us", "3/4 tsp"],
    [mlPerTeaspoon, "us", "1 tsp"],
    [mlPerTeaspoon * 3, "us", "1 tbsp"],
    [mlPerTeaspoon * 3.75, "us", "1 tbsp + 3/4 tsp"],
    [mlPerTeaspoon * 48, "us", "1 cup"],
    [mlPerTeaspoon * 45, "us", "3/4 cup + 3 tbsp"],
    [mlPerTeaspoon * (96 + 6 + 0.5), "us", "2 cups + 2 tbsp + 1/2 tsp"],
    [0.5, "us", "0.5 mL"],
    [1.5, "us", "1.5 mL"],
    [5.5, "us", "5.5 mL"],
  ])("%d mL in %s measures: %s", (ml, amounts, text) => {
    expect(stockText(ml, amounts)).toBe(text);
  });

  test("no spoon is named that a kitchen set lacks", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 2000, noNaN: true }), (ml) => {
        expect(stockText(ml, "us")).toMatch(
          /^((\d+ )?([13]\/4|1\/2) cups?|\d+ cups?)?( \+ )?([123] tbsp)?( \+ )?((\d )?([1357]\/8|[13]\/4|1\/2) tsp|[12] tsp)?$|^[\d.]+ mL$/,
        );
      }),
    );
  });

  test("what is printed is within 5 % of what is meant", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 2000, noNaN: true }),
        fc.constantFrom<Amounts>("metric", "us", "imperial"),
        (ml, amounts) => {
          const printed = stockText(ml, amounts)
            .split(" + ")
            .map((part) => parseQuantity(part, "volume", { units, amounts: "us" }))
            .reduce((sum, part) => sum + (part.ok ? part.value * 1000 : NaN), 0);
          expect(Math.abs(printed - ml)).toBeLessThanOrEqual(0.05 * ml);
        },
      ),
    );
  });
});

describe("a season's stock", () => {
  test.each<[number, Amounts, string]>([
    [730.4, "metric", "730 mL"],
    [1250, "metric", "1.25 L"],
    [730, "imperial", "730 mL"],
    [100, "us", "1/4 cup + 2 tbsp + 2 tsp"],
    [15 * 3 * mlPerTeaspoon, "us", "3/4 cup + 3 tbsp"],
    [0, "us", "0 tsp"],
    [473.176473, "us", "2 cups"],
    [0.5, "us", "1/4 tsp"],
    [litersPerUsGallon * 500, "us", "2 qt"],
    [litersPerUsGallon * 1500, "us", "1 1/2 gal"],
  ])("%d mL in %s measures: %s", (ml, amounts, text) => {
    expect(totalStockText(ml, amounts)).toBe(text);
  });
});

test("decimals lose their zeros and their dust", () => {
  expect(decimal(2.5000000001, 2)).toBe("2.5");
  expect(decimal(3, 2)).toBe("3");
  expect(decimal(0.1 + 0.2, 6)).toBe("0.3");
});

test.each([
  [0, "0"],
  [0.5, "1/2"],
  [1.999, "2"],
  [0.999, "1"],
  [2.333, "2 1/3"],
  [1.125, "1 1/8"],
  [0.45, "0.45"],
  [3, "3"],
])("%d is read as %s", (value, text) => {
  expect(mixedNumber(value)).toBe(text);
});

test("things are counted, one alone in the singular", () => {
  expect([0, 1, 2].map((n) => counted(n, "can"))).toEqual(["0 cans", "1 can", "2 cans"]);
  expect(counted(2, "batch", "batches")).toBe("2 batches");
});

test("a total that is enough is never told as less, nor as a step too much", () => {
  expect(enoughStockText(270, "us")).toBe("1 cup + 3 tbsp");
  expect(totalStockText(270, "us")).toBe("1 cup + 2 tbsp");
  expect(enoughStockText(48 * mlPerTeaspoon, "us")).toBe("1 cup");
  expect(enoughStockText(1010, "us")).toBe("4 1/2 cups");
  expect(enoughStockText(1231, "metric")).toBe("1.24 L");
  expect(enoughStockText(250, "metric")).toBe("250 mL");
});
