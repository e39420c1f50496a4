// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { canFills, fillsMl } from "../../src/cans/fills.js";
import { roundingTolerance } from "../../src/cans/measuring.js";
import { litersPerUsGallon, mlPerTeaspoon } from "../../src/garden/us-measures.js";
import type { Amounts } from "../../src/garden/garden.js";
import { parseQuantity } from "../../src/garden/quantity.js";
import { ledgerMl } from "../../src/stock/index.js";
import { loadTables } from "../../src/tables.js";

const fills = (
  waterL: number,
  rateMlPerL: number,
  canL: number,
  amounts: Amounts = "metric",
): string[] =>
  canFills({ waterL, rateMlPerL, canL, amounts }).map(
    ({ count, full, waterText, stockText }) =>
      `${count} ${full ? "full" : "part"}: ${stockText} in ${waterText}`,
  );

describe("cans are filled full, then at most one in part", () => {
  test.each<[number, number, number, string[]]>([
    [22, 2.5, 9, ["2 full: 23 mL in 9 L", "1 part: 10 mL in 4 L"]],
    [20, 2.5, 10, ["2 full: 25 mL in 10 L"]],
    [6, 2.5, 10, ["1 part: 15 mL in 6 L"]],
    [10, 2.5, 10, ["1 full: 25 mL in 10 L"]],
    [0.5, 2.5, 10, ["1 part: 1.3 mL in 500 mL"]],
  ])("%d L at %d mL per L from cans of %d L", (waterL, rate, canL, expected) => {
    expect(fills(waterL, rate, canL)).toEqual(expected);
  });

  test("nearly a full can is a full can, in spite of binary fractions", () => {
    expect(fills(0.1 * 3, 10, 0.1)).toEqual(["3 full: 1 mL in 100 mL"]);
    expect(fills(3 * litersPerUsGallon, 5, litersPerUsGallon, "us")).toHaveLength(1);
  });

  test("a drop too little to carry is left out", () => {
    expect(fills(10.04, 2.5, 10)).toEqual(["1 full: 25 mL in 10 L"]);
    expect(fills(10.5, 2.5, 10)).toHaveLength(2);
  });
});

describe("stock is rounded to what a person can measure", () => {
  test.each<[string, number, number, Amounts, string[]]>([
    ["whole millilitres", 9, 2.5, "metric", ["1 full: 23 mL in 9 L"]],
    [
      "half millilitres where whole ones miss by over 5 %",
      1,
      2.5,
      "metric",
      ["1 part: 2.5 mL in 1 L"],
    ],
    ["tenths of a millilitre where halves miss", 0.5, 2.6, "metric", ["1 part: 1.3 mL in 500 mL"]],
    ["quarter teaspoons", 2 * litersPerUsGallon, 2.5, "us", ["1 full: 1 tbsp + 3/4 tsp in 2 gal"]],
    ["eighths where quarters miss", litersPerUsGallon, 0.5, "us", ["1 part: 3/8 tsp in 1 gal"]],
    [
      "a syringe where spoons miss",
      0.25 * litersPerUsGallon,
      1.62,
      "us",
      ["1 part: 1.5 mL in 1 qt"],
    ],
    ["millilitres in imperial gardens", 9.09218, 2.5, "imperial", ["1 full: 23 mL in 2 gal"]],
  ])("%s", (_, waterL, rate, amounts, expected) => {
    const canL = amounts === "us" ? 2 * litersPerUsGallon : amounts === "imperial" ? 9.09218 : 9;
    expect(fills(waterL, rate, canL, amounts)).toEqual(expected);
  });

  test("spoons are what they hold in millilitres, to the hundredth that the ledger counts", () => {
    const [fill] = canFills({
      waterL: 2 * litersPerUsGallon,
      rateMlPerL: 2.5,
      canL: 2 * litersPerUsGallon,
      amounts: "us",
    });
    expect(fill?.stockMl).toBe(18.48);
    expect(3.75 * mlPerTeaspoon).toBeCloseTo(18.4835, 4);
  });
});

const aRequest = fc.record({
  waterL: fc.double({ min: 0.5, max: 2000, noNaN: true }),
  rateMlPerL: fc.double({ min: 0.2, max: 100, noNaN: true }),
  canL: fc.double({ min: 1, max: 1000, noNaN: true }),
  amounts: fc.constantFrom<Amounts>("metric", "us", "imperial"),
});

describe("a US can is filled to the quarter of a gallon", () => {
  const gallons = (water: number, rateMlPerL = 2.5): string[] =>
    fills(water * litersPerUsGallon, rateMlPerL, 2 * litersPerUsGallon, "us");

  test.each<[string, number, string[]]>([
    ["0.4", 2.4, ["1 full: 1 tbsp + 3/4 tsp in 2 gal", "1 part: 1 tsp in 1/2 gal"]],
    ["1.8", 1.8, ["1 part: 1 tbsp + 1/2 tsp in 1 3/4 gal"]],
    ["a little more than a can, folded into it", 2.1, ["1 full: 1 tbsp + 1 tsp in 2 gal"]],
    ["nearly a can, which is a full one", 1.9, ["1 full: 1 tbsp + 3/4 tsp in 2 gal"]],
    ["a pot, by the cup", 5 / 16, ["1 part: 5/8 tsp in 5 cups"]],
  ])("%s", (_, water, expected) => {
    expect(gallons(water)).toEqual(expected);
  });

  test("so is every one that is large enough for it", () => {
    fc.assert(
      fc.property(fc.double({ min: 1.25, max: 100, noNaN: true }), (water) => {
        for (const text of gallons(water))
          expect(text).toMatch(/ in (\d+( [13]\/[24])? gal|1 qt|[13]\/[24] gal)$/);
      }),
    );
  });
});

describe("less than can be measured is asked into no can", () => {
  const fromJug = (waterL: number, rateMlPerL: number, canL: number, amounts: Amounts): string[] =>
    canFills({ waterL, rateMlPerL, canL, amounts }).map(
      ({ count, jug }) => `${count} × ${jug?.takeText} of ${jug?.stockText} in ${jug?.waterText}`,
    );
  const pintL = litersPerUsGallon / 8;

  test("the stock of all is stirred in a jug, and shared out", () => {
    expect(fromJug(8, 1, 0.5, "metric")).toEqual(["16 × 100 mL of 8 mL in 1.6 L"]);
    expect(fromJug(8.25, 1, 0.5, "imperial")).toEqual([
      "16 × 100 mL of 8 mL in 1.65 L",
      "1 × 50 mL of 8 mL in 1.65 L",
    ]);
    expect(fromJug(16 * pintL, 1, pintL, "us")).toEqual(["16 × 1/2 cup of 1 1/2 tsp in 2 qt"]);
  });

  test("where that is too little as well, more is mixed than is needed", () => {
    expect(fromJug(0.2, 2.5, 9, "metric")).toEqual(["1 × 200 mL of 1 mL in 400 mL"]);
    expect(fromJug(pintL / 2, 2.5, 2, "us")).toEqual(["1 × 1 cup of 1/4 tsp in 2 cups"]);
  });

  test("what goes into the jug is poured, though its cans take less of it", () => {
    const request = { waterL: 0.2, rateMlPerL: 2.5, canL: 9, amounts: "metric" } as const;
    const cans = canFills(request);
    expect(cans.map(({ stockMl }) => stockMl)).toEqual([0.5]);
    expect(fillsMl(cans)).toBe(1);
  });

  test("a part can too thin is left to the full ones", () => {
    expect(fills(18.3, 2.5, 9)).toEqual(["2 full: 23 mL in 9 L"]);
  });

  test("whatever is fed", () => {
    fc.assert(
      fc.property(aRequest, (request) => {
        const leastMl = request.amounts === "us" ? ledgerMl(mlPerTeaspoon / 4) : 1;
        for (const { stockMl, jug } of canFills(request))
          expect(jug?.stockMl ?? stockMl).toBeGreaterThanOrEqual(leastMl);
      }),
      { numRuns: 2000 },
    );
  });
});

test("the stock of all fills is within 5 % of rate times water", () => {
  fc.assert(
    fc.property(aRequest, (request) => {
      const stockMl = canFills(request).reduce((sum, f) => sum + f.count * f.stockMl, 0);
      const exactMl = request.rateMlPerL * request.waterL;
      expect(Math.abs(stockMl - exactMl)).toBeLessThanOrEqual(roundingTolerance * exactMl + 1e-6);
    }),
    { numRuns: 2000 },
  );
});

test("so it is when a person measures what is printed", () => {
  const { units } = loadTables();
  fc.assert(
    fc.property(aRequest, (request) => {
      const printedMl = canFills(request).reduce((sum, { count, stockText, jug }) => {
        const share = jug === undefined ? count : (count * jug.takeL) / jug.waterL;
        const parts = (jug?.stockText ?? stockText)
          .split(" + ")
          .map((part) => parseQuantity(part, "volume", { units, amounts: "us" }));
        return parts.reduce((all, part) => all + (part.ok ? share * part.value * 1000 : NaN), sum);
      }, 0);
      const exactMl = request.rateMlPerL * request.waterL;
      // Printing rounds once more, by half of the last digit shown.
      expect(Math.abs(printedMl - exactMl)).toBeLessThanOrEqual(0.08 * exactMl + 1e-9);
    }),
    { numRuns: 2000 },
  );
});

test("the water of all fills is that of the feeding, as near as a can is filled by eye", () => {
  fc.assert(
    fc.property(aRequest, (request) => {
      const cans = canFills(request);
      const waterL = cans.reduce((sum, f) => sum + f.count * f.waterL, 0);
      expect(Math.abs(waterL - request.waterL)).toBeLessThanOrEqual(0.1 * request.waterL + 1e-6);
      expect(cans.filter((f) => !f.full).length).toBeLessThanOrEqual(1);
      for (const f of cans) {
        expect(f.waterL).toBeLessThanOrEqual(request.canL + 1e-9);
        expect(f.waterL).toBeGreaterThan(0);
        expect(f.stockMl).toBeGreaterThan(0);
      }
    }),
    { numRuns: 2000 },
  );
});
