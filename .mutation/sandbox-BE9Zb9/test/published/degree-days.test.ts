/** Degree days of single days, and sums over seasons. Sources stand in the titles. */
// @ts-nocheck

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type Thresholds, warmthOf } from "../../src/climate/index.js";
import { degreeDays } from "../../src/climate/degree-days.js";
import { addDays, day, daysBetween } from "../../src/dates.js";
import { cruPoints, placeWeather } from "../support/a-place.js";

const celsius = (f: number): number => ((f - 32) * 5) / 9;

/** Thresholds and day in degF, degree days in degF. */
function fahrenheit(
  method: Thresholds["method"],
  [baseF, upperF]: readonly [number, number?],
  [minF, maxF]: readonly [number, number],
): number {
  const upper = upperF === undefined ? {} : { upperC: celsius(upperF) };
  const thresholds = { method, baseC: celsius(baseF), ...upper };
  return (degreeDays({ minC: celsius(minF), maxC: celsius(maxF) }, thresholds) * 9) / 5;
}

describe("University of California IPM calculator, Esparto-A 2020, single sine, horizontal cut-off, 50 and 70 F", () => {
  const days = readFileSync(new URL("degree-days-esparto-2020.csv", import.meta.url), "utf8")
    .split("\n")
    .filter((line) => /^\d/.test(line))
    .map((line) => {
      const [date = "", ...numbers] = line.split(",");
      const [minF, maxF, printed] = numbers.map(Number) as [number, number, number];
      const own = fahrenheit("single-sine", [50, 70], [minF, maxF]);
      return { date, own, printed };
    });

  test("each of 366 days is within 0.005", () => {
    expect(days).toHaveLength(366);
    // Half of the last digit printed; 24 February lies on the edge, 8.71498 printed as 8.72.
    for (const { date, own, printed } of days)
      expect(Math.abs(own - printed), date).toBeLessThan(date === "2020-02-24" ? 0.00503 : 0.005);
  });

  test("the year's sum is 4011.14", () => {
    const total = (values: number[]): number => values.reduce((sum, x) => sum + x, 0);
    expect(total(days.map((d) => d.printed))).toBeCloseTo(4011.14, 2);
    // 366 roundings of at most 0.005.
    expect(Math.abs(total(days.map((d) => d.own)) - 4011.14)).toBeLessThan(0.1);
  });

  test.each([
    [38, 55, 1.19],
    [36, 67, 5.71],
    [33, 59, 2.34],
  ])("%d to %d F gives %d", (minF, maxF, printed) => {
    expect(fahrenheit("single-sine", [50, 70], [minF, maxF])).toBeCloseTo(printed, 2);
  });
});

test("Iowa State University, Agronomy 541 lesson 2b: high 70 F, low 50 F, base 50 F gives 10", () => {
  expect(fahrenheit("simple", [50], [50, 70])).toBeCloseTo(10, 9);
  expect(fahrenheit("modified", [50, 86], [50, 70])).toBeCloseTo(10, 9);
});

test.each([
  [90, 65, 25.5],
  [72, 46, 11],
  [63, 42, 6.5],
])(
  "Waushara Argus (Wisconsin), 25 April 2018, 86 and 50 F: high %d, low %d gives %d",
  (maxF, minF, printed) => {
    expect(fahrenheit("modified", [50, 86], [minF, maxF])).toBeCloseTo(printed, 9);
  },
);

// Rows of its rule that no sine is needed for; between them it is a rule of its own.
describe("Irish Met Service, degree days above a base", () => {
  const base = { method: "single-sine", baseC: 6 } as const;

  test("where the minimum is above the base, the mean less the base", () => {
    expect(degreeDays({ minC: 8, maxC: 15 }, base)).toBeCloseTo(5.5, 9);
  });
  test("where the maximum is not above the base, none", () => {
    expect(degreeDays({ minC: -1, maxC: 6 }, base)).toBe(0);
  });
  test.each([
    ["mean above the base: (Tmax - b)/2 - (b - Tmin)/4", 2, 16, 4],
    ["mean below the base: (Tmax - b)/4", 0, 10, 1],
  ])("%s, within half a degree day of the sine", (_, minC, maxC, ruled) => {
    expect(Math.abs(degreeDays({ minC, maxC }, base) - ruled)).toBeLessThan(0.5);
  });
});

test.each([
  [12, 24, 8, 8],
  [4, 20, 2, 5],
  [15, 35, 12.5, 12.5],
  [2, 9, 0, 0],
  [31, 36, 20, 20],
])(
  "FAO AquaCrop reference manual, methods 3 and 2, base 10, upper 30: %d to %d degC gives %d and %d",
  (minC, maxC, method3, method2) => {
    const thresholds = { baseC: 10, upperC: 30 };
    expect(degreeDays({ minC, maxC }, { ...thresholds, method: "simple" })).toBeCloseTo(method3, 9);
    expect(degreeDays({ minC, maxC }, { ...thresholds, method: "modified" })).toBeCloseTo(method2);
  },
);

describe("FAO AquaCrop, TomatoGDD.CRO: Cordoba, planted out on 1 May, 7 and 28 degC", () => {
  // AquaCrop reads means as they are.
  const warmth = warmthOf(placeWeather(cruPoints.cordoba, [], 0));
  const from = day("2027-05-01");
  const sumOf = (days: number, method: Thresholds["method"]): number =>
    warmth.sum({ from, to: addDays(from, days - 1) }, { method, baseC: 7, upperC: 28 });

  // The sine, which AquaCrop doesn't use, stands beside: 513, 1627, 2041 by the same means.
  test.each([
    ["flowering", 41, 525, 513],
    ["senescence", 106, 1553, 1627],
    ["maturity", 130, 1933, 2041],
  ])("%s after %d days at %d degree days; by sine %d", (_, days, printed, bySine) => {
    const own = sumOf(days, "simple");
    expect(Math.abs(own / printed - 1), `${own}`).toBeLessThan(0.035);
    expect(Math.abs(sumOf(days, "single-sine") - bySine)).toBeLessThan(0.01 * bySine);
  });
});

describe("Oregon Vegetable Digest XVIII(3), 1969: snap bean takes 444 to 644 degree days above 10 degC, 64 to 84 days", () => {
  const warmth = warmthOf(placeWeather(cruPoints.eugene, [], 0));
  const thresholds = { method: "simple", baseC: 10 } as const;
  const from = day("2027-05-15");

  // The digest prints no day of sowing: mid-May is a guess, and so is worth a few days.
  test.each([
    [444, 64],
    [644, 84],
  ])("sown on 15 May near Eugene, %d are reached after %d days, within 4", (sum, printed) => {
    const reached = warmth.reached(sum, { from, until: day("2027-12-31") }, thresholds);
    expect(reached).toBeDefined();
    expect(Math.abs(daysBetween(from, reached ?? from) + 1 - printed)).toBeLessThanOrEqual(4);
  });
});

describe("NC State University, CS 462: peanut takes 1390 to 1520 degree days above 56 F, high cut to 95 F, observed in 121 to 154 days", () => {
  const warmth = warmthOf(placeWeather(cruPoints.lewiston, [], 0));
  const thresholds = { method: "simple", baseC: celsius(56), upperC: 35 } as const;

  test.each([
    ["05-05", 1390],
    ["05-15", 1390],
    ["05-15", 1500],
    ["05-15", 1520],
    ["05-25", 1390],
  ])("emerged near Lewiston on %s, %d are reached within them", (emerged, sum) => {
    const from = day(`2027-${emerged}`);
    const reached = warmth.reached(sum, { from, until: day("2027-12-31") }, thresholds);
    const days = daysBetween(from, reached ?? from) + 1;
    expect(days).toBeGreaterThanOrEqual(121);
    expect(days).toBeLessThanOrEqual(154);
  });
});
