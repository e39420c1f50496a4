/** The trade's rule of thumb through the whole program; each title names its source. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { litersPerUsGallon } from "../../src/garden/us-measures.js";
import type { CanFill } from "../../src/season/season-plan.js";
import { aSeason, type GardenDiffers, planted, referenceBottle } from "../support/a-garden.js";

/** Cans of the first round of six tomatoes that get `water` in all. */
function firstCans(water: string, differs: GardenDiffers = {}, rate?: string): readonly CanFill[] {
  const plan = aSeason({
    ...planted({ water, ...(rate === undefined ? {} : { rate }) }),
    ...referenceBottle,
    ...differs,
  });
  return plan.rounds[0]?.beds[0]?.mixes[0]?.fills ?? [];
}

describe("Common practice, no source: 10 mL of stock in 4 L of water", () => {
  test("is 25 mL in a can of 10 L", () => {
    expect(firstCans("10 L")).toMatchObject([
      { count: 1, full: true, waterL: 10, stockMl: 25, stockText: "25 mL", waterText: "10 L" },
    ]);
    expect(firstCans("10 L", {}, "10 mL in 4 L")).toEqual(firstCans("10 L"));
  });

  test("is 10 mL in a can of 4 L, and 5 mL in half of it", () => {
    expect(firstCans("6 L", { can: "4 L" })).toMatchObject([
      { count: 1, full: true, stockMl: 10 },
      { count: 1, full: false, waterL: 2, stockMl: 5 },
    ]);
  });

  test("is 22.5 mL in a can of 9 L: 23 mL for a person to measure", () => {
    expect(firstCans("18 L", { can: "9 L" })).toMatchObject([{ count: 2, stockMl: 23 }]);
  });

  // 2.5 mL/L x 3.785 L/gal / 4.929 mL/tsp = 1.92 tsp per gallon.
  test("is 3 3/4 teaspoons in a can of 2 US gallons", () => {
    const [fill] = firstCans("2 gal", { can: "2 gal", amounts: "us" });
    expect(fill).toMatchObject({ stockText: "1 tbsp + 3/4 tsp", waterText: "2 gal" });
    expect(Math.abs((fill?.stockMl ?? 0) / (2.5 * 2 * litersPerUsGallon) - 1)).toBeLessThan(0.05);
  });

  // 2.5 mL/L x 4.546 L/gal = 11.4 mL per gallon.
  test("is 23 mL in a can of 2 imperial gallons", () => {
    expect(firstCans("2 gal", { can: "2 gal", amounts: "imperial" })).toMatchObject([
      { stockText: "23 mL", waterText: "2 gal" },
    ]);
  });

  test("is 2 teaspoons to the US gallon within 5 %", () => {
    const byVolume = firstCans("10 L", {}, "2 tsp per gal");
    expect(Math.abs((byVolume[0]?.stockMl ?? 0) / 25 - 1)).toBeLessThanOrEqual(0.05);
  });
});

test("Common practice, no source: about every 14 days", () => {
  const plan = aSeason();
  expect(plan.rules[0]?.interval.targetDays).toBe(14);
});
