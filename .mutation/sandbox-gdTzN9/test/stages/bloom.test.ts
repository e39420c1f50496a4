/** Full bloom where none is given: by warmth where there is a winter, else when usual. */
// @ts-nocheck

import { expect, test } from "vitest";
import { type Bloom, bloomOfYear } from "../../src/stages/bloom.js";
import { day } from "../../src/dates.js";
import { aPlant, aWarmPlace, climateForTests, cropWith } from "./a-warm-place.js";

/** Usual on 5 May; here after 1,000 degree days above 5 degC. */
const apple = cropWith("apple", {
  baseC: 5,
  sums: [
    {
      stage: "flowering",
      from: "new-year",
      degreeDays: 1000,
      least: 900,
      most: 1100,
      source: "a newsletter",
    },
  ],
});

/** Every month but the first as warm as the days that are counted. */
function bloomAt(temperatureC: number, januaryC = 0, wish: "auto" | "off" = "auto"): Bloom {
  const means = [januaryC, ...Array<number>(11).fill(temperatureC)];
  const climate = { ...climateForTests, means: { maxC: means, minC: means } };
  return bloomOfYear(aPlant(apple), apple, aWarmPlace({ climate, wish }, temperatureC));
}

test("is reached by the warmth since New Year, which it says with its source and the usual day", () => {
  expect(bloomAt(13)).toEqual({
    day: "2027-05-05",
    isByWarmth: true,
    how: "full bloom about 5 May by the warmth since 1 Jan (a newsletter); 5 May is usual for apple in temperate gardens",
  });
  expect(bloomAt(15).day).toBe("2027-04-10");
});

test("is moved by 28 days at most, either way, and says so", () => {
  expect(bloomAt(20)).toMatchObject({ day: "2027-04-07", isByWarmth: true });
  expect(bloomAt(20).how).toBe(
    "full bloom about 7 Apr: the warmth since 1 Jan (a newsletter) has it earlier, but moves a day by 28 days at most, and 5 May is usual for apple in temperate gardens",
  );
  expect(bloomAt(10)).toMatchObject({
    day: "2027-06-02",
    how: expect.stringContaining("has it later, but moves a day by 28 days at most") as string,
  });
});

test("is on the usual day where the coldest month is as warm as the base of the sum", () => {
  const usual = "full bloom on 5 May, usual for apple in temperate gardens";
  expect(bloomAt(20, 5)).toEqual({
    day: day("2027-05-05"),
    isByWarmth: false,
    how: `${usual} (winters here are too mild for the published sum)`,
  });
  expect(bloomAt(20, 4.9).isByWarmth).toBe(true);
  expect(bloomAt(20, 0, "off").how).toBe(usual);
});
