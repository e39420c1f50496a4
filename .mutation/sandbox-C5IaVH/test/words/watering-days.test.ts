// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { litersPerUsGallon, volumeText } from "../../src/garden/index.js";
import { letters } from "../../src/words/names.js";
import {
  bedWaterInFull,
  isLeftToPour,
  pouredL,
  roundOfWeek,
} from "../../src/words/watering-days.js";
import { wateringTitle } from "../../src/words/titles.js";
import { aBedRound, aMix } from "../support/a-plan.js";

const week = (waterL: number, roundL = 0, usualL = waterL) => ({
  from: day("2027-06-07"),
  to: day("2027-06-13"),
  waterL,
  roundL,
  leftL: Math.max(0, waterL - roundL),
  usualL,
});

test("water is poured by the whole litre or the half gallon, never nothing, and much of it rougher", () => {
  const liters = [0.2, 1.4, 19.4, 20, 41.6, 42.6];
  expect(liters.map((one) => pouredL(one, "metric"))).toEqual([1, 1, 19, 20, 40, 45]);
  const gallons = [0.1, 1.3, 4.6, 5.4, 22.4].map((gal) => pouredL(gal * litersPerUsGallon, "us"));
  expect(gallons.map((one) => volumeText(one, "us"))).toEqual([
    "1/2 gal",
    "1 1/2 gal",
    "4 1/2 gal",
    "5 gal",
    "22 gal",
  ]);
  expect(isLeftToPour(week(0.4), "metric")).toBe(false);
  expect(isLeftToPour(week(0.6), "metric")).toBe(true);
  expect(isLeftToPour(week(0.6), "us")).toBe(false);
});

test("a bed is told its part of the week, and what the rounds bring of it", () => {
  const bed = { bedName: "South wall", waterL: 40 };
  // A litre or two more or less of weather change no word.
  for (const waterL of [95, 96, 97, 99])
    expect(bedWaterInFull({ ...bed, week: week(waterL, 12) }, "metric")).toBe(
      "South wall: 40 L of this week's 97 L, 12 L of it in the rounds",
    );
  expect(bedWaterInFull({ ...bed, week: week(42) }, "metric")).toBe(
    "South wall: 40 L, all of this week's",
  );
});

test("a title is within 40 letters, for any names, amounts and measures", () => {
  const bed = fc.record({
    bedName: fc.oneof(
      fc.string({ unit: "grapheme", maxLength: 80 }),
      fc.string({ unit: fc.constantFrom("א", "ب", "👩‍🌾", "é", " "), maxLength: 80 }),
    ),
    waterL: fc.integer({ min: 1, max: 100_000 }),
  });
  fc.assert(
    fc.property(
      fc.array(bed, { minLength: 1, maxLength: 9 }),
      fc.constantFrom("metric" as const, "us" as const, "imperial" as const),
      (beds, amounts) => {
        const those = beds.map(({ bedName, waterL }) => {
          const pour = pouredL(waterL, amounts);
          return { bedName, waterL: pour, week: week(pour) };
        });
        const title = wateringTitle(those, amounts);
        expect(letters(title).length).toBeLessThanOrEqual(40);
        expect(title).toMatch(/^Water \d+(?: 1\/2| \d\/\d|\.\d+)? (?:L|gal): /);
      },
    ),
    { numRuns: 50 },
  );
});

describe("what a round is of its week", () => {
  const bed = aBedRound();

  test("is told of a usual year, in round figures", () => {
    for (const usualL of [83, 85, 87])
      expect(roundOfWeek(bed, "weather", week(64, 22, usualL), "metric")).toBe(
        "water: in a usual year the bed wants about 85 L this week, 22 L of it in these cans",
      );
  });

  test("is told of the amount that the grower gave", () => {
    expect(roundOfWeek(bed, "amount", week(62, 22), "metric")).toBe(
      "water: the bed wants 62 L this week, 22 L of it in these cans",
    );
  });

  test("says so where the cans bring all of it, or a spray none", () => {
    expect(roundOfWeek(bed, "weather", week(18), "metric")).toBe(
      "water: in a usual year the bed wants about 20 L this week; these cans bring 22 L",
    );
    expect(roundOfWeek(bed, "weather", week(0), "metric")).toBe(
      "water: in a usual year the bed wants none beside the rain this week; these cans bring 22 L",
    );
    const sprayed = aBedRound({ mixes: [aMix({ route: "foliar" })] });
    expect(roundOfWeek(sprayed, "weather", week(85), "metric")).toBe(
      "water: in a usual year the bed wants about 85 L this week, none of it in a spray",
    );
  });

  test("is in whole gallons for a US grower", () => {
    const us = week(22.3 * litersPerUsGallon, 0);
    const line = roundOfWeek(bed, "weather", us, "us");
    expect(line).toContain("about 22 gal this week");
    expect(line).not.toMatch(/\d L\b/);
  });
});
