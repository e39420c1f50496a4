import fc from "fast-check";
import { expect, test } from "vitest";
import { dailyFromMonthly } from "../../src/climate/daily-means.js";
import { smoothed } from "../../src/climate/smoothed-year.js";
import { monthLengths } from "../../src/climate/year-ring.js";

const anyMeans = fc.array(fc.double({ min: -60, max: 45, noNaN: true }), {
  minLength: 12,
  maxLength: 12,
});

const sine = Array.from({ length: 12 }, (_, m) => 10 - 8 * Math.cos((m * Math.PI) / 6));

const turned = (means: readonly number[], months: number): number[] => [
  ...means.slice(months),
  ...means.slice(0, months),
];

function meansOf(days: readonly number[]): number[] {
  let first = 0;
  return monthLengths.map((length) => {
    const month = days.slice(first, first + length);
    first += length;
    return month.reduce((sum, t) => sum + t, 0) / length;
  });
}

test("all twelve means are kept", () => {
  fc.assert(
    fc.property(anyMeans, (means) => {
      meansOf(dailyFromMonthly(means)).forEach((mean, m) => {
        expect(mean).toBeCloseTo(means[m] ?? NaN, 9);
      });
    }),
    { numRuns: 50 },
  );
});

test("a place without seasons has none", () => {
  for (const t of dailyFromMonthly(Array<number>(12).fill(21.5))) expect(t).toBeCloseTo(21.5, 9);
});

test("the year closes: New Year is no greater step than any other day", () => {
  const days = dailyFromMonthly(sine);
  const steps = days.map((t, d) => Math.abs(t - (days.at(d - 1) ?? NaN)));
  expect(steps[0]).toBeLessThan(0.1);
  expect(Math.max(...steps)).toBeLessThan(0.3);
});

// Months are not of one length, so that half a year on lies a day or two beside.
test("a southern place is a northern one half a year on", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 15, noNaN: true }), (range) => {
      const north = sine.map((t) => 10 + ((t - 10) * range) / 8);
      const south = dailyFromMonthly(turned(north, 6));
      const shifted = turned(dailyFromMonthly(north), 181);
      south.forEach((t, d) => {
        expect(Math.abs(t - (shifted[d] ?? NaN))).toBeLessThan(0.05 + 0.05 * range);
      });
    }),
    { numRuns: 20 },
  );
});

test("the same means are worked once", () => {
  expect(dailyFromMonthly(sine)).toBe(dailyFromMonthly(sine));
});

test("eleven means are our own bug", () => {
  expect(() => dailyFromMonthly(sine.slice(1))).toThrow("not twelve means: 11");
});

// As worked by the method's description for the means of a published demonstration; own figures.
test("the curve is the one the method gives", () => {
  const means = [-6.77, -4.33, 1.52, 8.35, 14.74, 20.29, 23.22, 22.17, 16.94, 10.35, 3.08, 4.29];
  const days = dailyFromMonthly(means);
  expect([days[0], days[195], days[364]].map((t) => t?.toFixed(2))).toEqual([
    "-1.42",
    "23.35",
    "-0.73",
  ]);
});

test("shares of months give what smoothing their means gives", () => {
  fc.assert(
    fc.property(anyMeans, (means) => {
      const days = dailyFromMonthly(means);
      smoothed(means).forEach((t, d) => {
        expect(days[d]).toBeCloseTo(t, 9);
      });
    }),
    { numRuns: 20 },
  );
});
