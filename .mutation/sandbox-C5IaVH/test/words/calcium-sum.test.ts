// @ts-nocheck
import { describe, expect, test } from "vitest";
import type { PlantingCalcium } from "../../src/calcium/index.js";
import { day } from "../../src/dates.js";
import {
  broughtByAmendment,
  broughtByFeed,
  broughtByWater,
  heldBySoil,
  takenUp,
  waterAgainstFeed,
} from "../../src/words/index.js";

const range = (low: number, high = low): { low: number; high: number } => ({ low, high });
const need = { wholeG: range(30, 64), perPlantG: range(5, 10.7), perM2G: range(8, 17) };
const water = { waterL: 599, calciumMgPerL: range(21.6, 32.4), wholeG: range(13, 19.4) };
const sum: PlantingCalcium = {
  planting: "toms",
  name: "toms",
  bed: "south",
  bedName: "South wall",
  crop: "tomato",
  cropName: "tomato",
  need: { ...need, sources: [] },
  water,
  amendments: [],
  feed: { wholeG: range(2.13) },
  sharePercent: range(3.33, 7.1),
  verdicts: [],
};

describe("the sum of calcium in words", () => {
  test("tells what is taken up, by whose figures, and how weak they are", () => {
    expect(takenUp({ ...need, sources: [] }, "metric")).toBe(
      "30 to 64 g in all, 5 to 11 g a plant, 8 to 17 g per m2",
    );
    expect(takenUp({ ...need, borrowedFrom: "cantaloupe", isWeak: true, sources: [] }, "us")).toBe(
      "30 to 64 g in all, 5 to 11 g a plant, 0.74 to 1.6 g per ft2; by figures of cantaloupe; from a weak source",
    );
    expect(takenUp(undefined, "metric")).toContain("unknown");
  });

  test("multiplies litres by milligrams, or gallons by theirs", () => {
    expect(broughtByWater(water, "metric")).toBe("599 L x 22 to 32 mg per L = 13 to 19 g");
    expect(broughtByWater(water, "us")).toBe("158 gal x 82 to 123 mg per gal = 13 to 19 g");
  });

  test("calls the soil a stock, of which the crop takes a small part", () => {
    const test = {
      on: day("2023-10-20"),
      extract: "mehlich-3" as const,
      calciumPpm: 1450,
      ph: 6.6,
      phIn: "water" as const,
    };
    const soil = { test, extractName: "Mehlich-3", perM2G: range(348), isOld: true as const };
    expect(heldBySoil({ ...soil, takenPercent: range(2.3, 4.9) }, "metric")).toBe(
      "test of 20 October 2023: 1450 ppm of calcium by Mehlich-3, pH 6.6 in water; that is 1450 mg in a kg x 240 kg of soil = 348 g per m2, as deep as the sample; of which the crop takes 2.3 to 4.9 %; an old test: worth repeating",
    );
  });

  test("tells what was dug in for this season and the next", () => {
    const lime = { on: day("2026-11-15"), what: "limestone", name: "ground limestone" } as const;
    expect(
      broughtByAmendment(
        {
          ...lime,
          amountG: 600,
          thisSeason: { wholeG: range(0, 226) },
          nextSeason: { wholeG: range(0, 90) },
        },
        "metric",
      ),
    ).toBe(
      "600 g of ground limestone on 15 November 2026: 0 to 226 g this season, 0 to 90 g in the next",
    );
    expect(broughtByAmendment({ ...lime, amountG: 600, thisSeason: {} }, "metric")).toContain(
      "nobody knows",
    );
  });

  test("sets a season's water against a season's feed", () => {
    expect(broughtByFeed(sum)).toBe("2.1 g, 3.3 to 7.1 % of what it takes up");
    expect(waterAgainstFeed([sum])).toBe(
      "In the season your water brings 13 to 19 g of calcium to what is fed, 6.1 to 9.1 times the 2.1 g of the feed",
    );
    expect(waterAgainstFeed([{ ...sum, feed: { wholeG: range(0) } }])).toBeUndefined();
  });
});
