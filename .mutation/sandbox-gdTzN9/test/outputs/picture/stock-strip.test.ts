// @ts-nocheck
import { expect, test } from "vitest";
import { pouredText } from "../../../src/garden/amounts.js";
import { halfOfScale } from "../../../src/outputs/picture/stock-strip.js";

test.each([
  [1, "metric", "1 mL"],
  [305, "metric", "200 mL"],
  [740, "metric", "400 mL"],
  [3080, "metric", "2000 mL"],
  [3080, "us", "2 qt"],
  [59, "us", "2 tbsp"],
] as const)("a scale for %s mL in %s measures has %s in its middle", (ml, amounts, half) => {
  expect(pouredText(halfOfScale(ml, amounts), amounts)).toBe(half);
  expect(2 * halfOfScale(ml, amounts)).toBeGreaterThanOrEqual(ml);
});
