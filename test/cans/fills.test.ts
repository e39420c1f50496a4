import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { canFills, roundingTolerance } from "../../src/cans/fills.js";
import { litersPerUsGallon, mlPerTeaspoon } from "../../src/garden/us-measures.js";
import type { Amounts } from "../../src/garden/garden.js";
import { parseQuantity } from "../../src/garden/quantity.js";
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
    expect(fills(10.2, 2.5, 10)).toHaveLength(2);
    expect(fills(0.04, 2.5, 10)).toEqual(["1 part: 0.1 mL in 40 mL"]);
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
      0.52,
      "us",
      ["1 part: 0.5 mL in 1/4 gal"],
    ],
    ["millilitres in imperial gardens", 9.09218, 2.5, "imperial", ["1 full: 23 mL in 2 gal"]],
  ])("%s", (_, waterL, rate, amounts, expected) => {
    const canL = amounts === "us" ? 2 * litersPerUsGallon : amounts === "imperial" ? 9.09218 : 9;
    expect(fills(waterL, rate, canL, amounts)).toEqual(expected);
  });

  test("spoons add up to what they are in millilitres", () => {
    const [fill] = canFills({
      waterL: 2 * litersPerUsGallon,
      rateMlPerL: 2.5,
      canL: 2 * litersPerUsGallon,
      amounts: "us",
    });
    expect(fill?.stockMl).toBeCloseTo(3.75 * mlPerTeaspoon, 6);
  });
});

const aRequest = fc.record({
  waterL: fc.double({ min: 0.5, max: 2000, noNaN: true }),
  rateMlPerL: fc.double({ min: 0.2, max: 100, noNaN: true }),
  canL: fc.double({ min: 0.1, max: 1000, noNaN: true }),
  amounts: fc.constantFrom<Amounts>("metric", "us", "imperial"),
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
      const printedMl = canFills(request).reduce((sum, { count, stockText }) => {
        const parts = stockText
          .split(" + ")
          .map((part) => parseQuantity(part, "volume", { units, amounts: "us" }));
        return parts.reduce((all, part) => all + (part.ok ? count * part.value * 1000 : NaN), sum);
      }, 0);
      const exactMl = request.rateMlPerL * request.waterL;
      // Printing rounds once more, by half of the last digit shown.
      expect(Math.abs(printedMl - exactMl)).toBeLessThanOrEqual(0.08 * exactMl);
    }),
    { numRuns: 2000 },
  );
});

test("the water of all fills is the water of the feeding, but for a drop", () => {
  fc.assert(
    fc.property(aRequest, (request) => {
      const cans = canFills(request);
      const waterL = cans.reduce((sum, f) => sum + f.count * f.waterL, 0);
      expect(Math.abs(waterL - request.waterL)).toBeLessThanOrEqual(0.05 + 1e-6);
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
