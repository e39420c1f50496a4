// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { waterTable } from "../../src/outputs/water-table.js";
import { aBedWatered, aPlan } from "../support/a-plan.js";

const words = (...watering: ReturnType<typeof aBedWatered>[]) =>
  (waterTable(aPlan({ watering }))?.markup ?? "").replace(/<[^>]*>/g, " ").replace(/\s+/g, " ");

describe("water a week by month", () => {
  test("is the mean of the month's weeks, with the longest time without", () => {
    const dryGap = { from: day("2027-07-08"), to: day("2027-07-27"), days: 20, isAway: true };
    const text = words(aBedWatered([30, 32, 34, 36, 70], { dryGap }));
    expect(text).toContain(
      "Bed Jun Jul Longest without South bed 33 L 70 L 20 days, 8 Jul to 27 Jul",
    );
  });

  test("says once of all plantings why it can't be told", () => {
    const why = "its ground is not known";
    const text = words(
      aBedWatered([30], { unknown: [{ planting: "toms", why }] }),
      aBedWatered([], { bed: "x", bedName: "Tub", unknown: [{ planting: "basil", why }] }),
    );
    expect(text).toMatch(/toms.*, .*basil.*: cannot tell, since its ground is not known/);
    expect(text).not.toContain("Tub");
  });

  test("is nothing where no bed is watered by the file", () => {
    expect(waterTable(aPlan())).toBeUndefined();
    expect(words(aBedWatered([]))).not.toContain("Longest");
  });
});
