// @ts-nocheck
import { expect, test } from "vitest";
import { isLong, mixingSummary } from "../../src/words/mixing.js";
import { aFill, aMix } from "../support/a-plan.js";

const part = { full: false, waterL: 3.8, stockMl: 9.9, waterText: "1 gal", stockText: "2 tsp" };
const mixes = [
  aMix({ fills: [aFill({ count: 6, stockText: "1 tbsp + 1 tsp" }), aFill(part)] }),
  aMix({ fills: [aFill({ count: 7, stockText: "1 tbsp + 1 tsp" }), aFill(part)] }),
];

test("cans alike are mixed together, full ones first", () => {
  expect(mixingSummary(mixes)).toEqual(["13 full cans: 1 tbsp + 1 tsp", "2 × 1 gal: 2 tsp"]);
});

test("sprayers stay apart from cans, and what is of a jug is told by its bed", () => {
  const jug = {
    stockMl: 8,
    waterL: 1.6,
    takeL: 0.1,
    stockText: "8 mL",
    waterText: "1.6 L",
    takeText: "100 mL",
  };
  const others = [
    aMix({ route: "foliar", fills: [aFill({ count: 2 }), aFill(part)] }),
    aMix({ fills: [aFill({ count: 3, jug })] }),
  ];
  expect(mixingSummary([...mixes, ...others])).toEqual([
    "13 full cans: 1 tbsp + 1 tsp",
    "2 full sprayers: 23 mL",
    "2 × 1 gal: 2 tsp",
    "1 × 1 gal in the sprayer: 2 tsp",
    "3 cans: from a jug",
  ]);
});

test("a round is long above eight cans", () => {
  expect(isLong([aMix({ fills: [aFill({ count: 8 })] })])).toBe(false);
  expect(isLong(mixes.slice(1).concat(mixes.slice(0, 1)))).toBe(true);
});
