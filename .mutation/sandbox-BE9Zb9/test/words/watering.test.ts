// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import type { WateringWeek } from "../../src/watering/index.js";
import {
  dryGapInShort,
  dryGapWords,
  feedIsNoWatering,
  meansByMonth,
  shortfallWords,
  usualRainTakenOff,
  waterByMonth,
  waterOfWeek,
  weekInRow,
  weeklyWater,
} from "../../src/words/index.js";

const week = (from: string, waterL: number, roundL = 0): WateringWeek => ({
  from: day(from),
  to: addDays(day(from), 6),
  waterL,
  roundL,
  leftL: Math.max(0, waterL - roundL),
});
const summer = [
  week("2027-05-24", 12),
  week("2027-05-31", 30),
  week("2027-06-07", 32),
  week("2027-07-05", 70, 18),
  week("2027-08-02", 70),
  week("2027-09-06", 0),
];
const away = { from: day("2027-07-08"), to: day("2027-07-27"), days: 20, isAway: true };

describe("water in words", () => {
  test("is told for each month of a season, months alike as one", () => {
    expect(waterByMonth(summer, "metric").replaceAll("\u00a0", " ")).toBe(
      "May 12 L, Jun 31 L, Jul and Aug 70 L, Sep none",
    );
  });

  test("is a mean for each month, one year's January apart from another's", () => {
    const winter = [week("2027-12-20", 4), week("2027-12-27", 8), week("2028-01-03", 20)];
    expect([...meansByMonth(winter)]).toEqual([
      [12 * 2027 + 12, 6],
      [12 * 2028 + 1, 20],
    ]);
  });

  test("is in the garden's own gallons", () => {
    expect(weeklyWater(3.785411784 * 2.4, "us")).toBe("2 1/2 gal");
    expect(weeklyWater(4.54609 * 30.2, "imperial")).toBe("30 gal");
    expect(weeklyWater(0.3, "metric")).toBe("none");
  });

  test("of a week names what the rounds bring of it", () => {
    const rainy = { ...week("2027-09-06", 0), rainMm: 13 };
    expect(
      [week("2027-07-05", 70, 18), week("2027-06-07", 30), week("2027-09-06", 3, 6), rainy].map(
        (one) => waterOfWeek(one, "metric"),
      ),
    ).toEqual([
      "70 L, 18 L of it in the rounds",
      "30 L",
      "3 L, and the rounds bring 6 L",
      "none: the rain is enough",
    ]);
  });

  test("in a row is that of the week of today", () => {
    expect(weekInRow(summer, day("2027-07-11"), "metric")).toBe("70 L (round 18 L)");
    expect(weekInRow(summer, day("2027-12-01"), "metric")).toBe("");
  });

  test("of a dry gap asks for someone only while the grower is away", () => {
    expect(dryGapInShort(away, "metric")).toBe("20 days, 8 Jul to 27 Jul, while you are away");
    expect(dryGapWords(away, "metric")).toContain("have someone water");
    expect(dryGapWords({ ...away, isAway: false }, "metric")).not.toContain("someone");
  });

  test("says how much of the usual rain is counted on, where any is", () => {
    const [south, glass] = [{ usualRainMm: 11.3 }, {}];
    expect(usualRainTakenOff([south], "metric")).toBe(
      "The usual rain of the place is taken off already, up to 11 mm a week (1 mm is 1 L per m2): in a week without rain pour that too.",
    );
    expect(usualRainTakenOff([south, glass], "us")).toContain(
      "already for beds outdoors with `watering: auto`, up to 0.4 inches a week: in",
    );
    expect(usualRainTakenOff([glass], "metric")).toBeUndefined();
  });

  test("of an amount that is too small names the week that asks for most", () => {
    const short = { ...week("2027-07-12", 10), asksL: 61.7 };
    expect(shortfallWords(short, "metric")).toBe(
      "10 L a week; in the week from 12 Jul the weather of a usual year asks for about 60 L",
    );
    expect(shortfallWords(short, "us")).toContain("2 1/2 gal a week; in");
  });

  test("says by the smallest round that a feed is no watering", () => {
    const bed = { bed: "a", bedName: "South wall", by: "weather" as const, unknown: [] };
    expect(feedIsNoWatering([{ ...bed, weeks: summer }], "metric")).toContain("18 L of 70 L");
    expect(feedIsNoWatering([{ ...bed, weeks: [week("2027-06-07", 5, 9)] }], "metric")).toBe(
      undefined,
    );
  });
});
