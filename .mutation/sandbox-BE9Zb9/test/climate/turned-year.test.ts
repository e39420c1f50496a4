// @ts-nocheck
import { describe, expect, test } from "vitest";
import { type MonthlyMeans, turnedYear } from "../../src/climate/index.js";
import { cruPoints, halfAYearOn } from "../support/a-place.js";

function isWarned(means: MonthlyMeans, latitudeDeg: number): boolean {
  return turnedYear({ means, latitudeDeg, origin: "a test", errorC: 0 }).length > 0;
}

describe("means are warned of where their warmest month lies in the winter", () => {
  const { cordoba, lewiston } = cruPoints;

  test.each([
    ["of the north", halfAYearOn(cordoba), 37.8, true],
    ["of the south", lewiston, -36.3, true],
    ["and not in the summer of the north", cordoba, 37.8, false],
    ["nor in that of the south", halfAYearOn(lewiston), -36.3, false],
    ["nor between the tropics, where any month may be", cordoba, -23.4, false],
    ["nor in a year without a warmest month", flat(15), 53.3, false],
  ])("%s", (_, means, latitudeDeg, isTurned) => {
    expect(isWarned(means, latitudeDeg)).toBe(isTurned);
  });

  test("in words of that half", () => {
    const climate = { means: lewiston, latitudeDeg: -36.3, origin: "a test", errorC: 0 };
    expect(turnedYear(climate)[0]?.message).toContain("the winter of the southern half");
  });
});

function flat(meanC: number): MonthlyMeans {
  return { maxC: Array<number>(12).fill(meanC + 5), minC: Array<number>(12).fill(meanC - 5) };
}
