// @ts-nocheck
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  kitchenVolumeText,
  spoonsText,
  vesselText,
  weightText,
} from "../../../src/stock/making/kitchen.js";

test("weights are grams, with ounces before them in US measures", () => {
  expect(weightText(59.4, "metric")).toBe("59 g");
  expect(weightText(4.25, "imperial")).toBe("4.3 g");
  expect(weightText(56.699, "us")).toBe("2 oz (57 g)");
  expect(weightText(907.185, "us")).toBe("2 lb (907 g)");
});

test("volumes are millilitres and litres, or cups and spoons", () => {
  expect(kitchenVolumeText(990, "metric")).toBe("990 mL");
  expect(kitchenVolumeText(1500, "imperial")).toBe("1.5 L");
  expect(kitchenVolumeText(236.588, "us")).toBe("1 cup");
  expect(kitchenVolumeText(1000, "us")).toBe("4 1/4 cups");
  expect(kitchenVolumeText(5, "us")).toBe("1 tsp");
  expect(kitchenVolumeText(3785.41, "us")).toBe("1 gal");
  expect(kitchenVolumeText(8000, "us")).toBe("2 gal + 1 3/4 cups");
});

const mlOf: Record<string, number> = {
  gal: 3785.41,
  qt: 946.353,
  cup: 236.588,
  cups: 236.588,
  tbsp: 14.7868,
  tsp: 4.92892,
};

test("cups and spoons stay within 5 % of the amount", () => {
  fc.assert(
    fc.property(fc.double({ min: 15, max: 3700, noNaN: true }), (ml) => {
      const read = kitchenVolumeText(ml, "us")
        .split(" + ")
        .map((part) => {
          const [, number = "", unit = ""] = /^(.+) (\w+)$/.exec(part) ?? [];
          const value = number
            .split(" ")
            .map((n) => Number(n.split("/")[0]) / Number(n.split("/")[1] ?? 1))
            .reduce((a, b) => a + b, 0);
          return value * (mlOf[unit] ?? NaN);
        })
        .reduce((a, b) => a + b, 0);
      expect(Math.abs(read / ml - 1)).toBeLessThan(0.05);
    }),
  );
});

test("a vessel in US measures is never smaller than it must be", () => {
  expect(vesselText(5, "metric")).toBe("5 L");
  expect(vesselText(12, "us")).toBe("3 1/2 gal");
  expect(vesselText(1.5, "us")).toBe("1/2 gal");
  expect(vesselText(3.785411784, "us")).toBe("1 gal");
});

test("spoons are told to the half", () => {
  expect(spoonsText(3.6)).toBe("3.5 level tablespoons");
  expect(spoonsText(1)).toBe("1 level tablespoon");
  expect(spoonsText(0.5)).toBe("1.5 level teaspoons");
});
