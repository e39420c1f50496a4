// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { degreeDayMethods, type Thresholds } from "../../src/climate/index.js";
import { degreeDays } from "../../src/climate/degree-days.js";

const anyDay = fc
  .tuple(fc.double({ min: -40, max: 45, noNaN: true }), fc.double({ min: 0, max: 25, noNaN: true }))
  .map(([minC, range]) => ({ minC, maxC: minC + range }));

const anyThresholds: fc.Arbitrary<Thresholds> = fc.record(
  {
    method: fc.constantFrom(...degreeDayMethods),
    baseC: fc.double({ min: 0, max: 15, noNaN: true }),
    upperC: fc.double({ min: 20, max: 40, noNaN: true }),
  },
  { requiredKeys: ["method", "baseC"] },
);

// Own figures, worked by hand and by the sine's integral: base 10, upper 30.
test.each([
  [8, 22, 5, 6, 5.33],
  [5, 30, 7.5, 10, 8.47],
  [12, 24, 8, 8, 8],
  [4, 20, 2, 5, 3.626],
  [15, 35, 12.5, 12.5, 13.91],
  [2, 9, 0, 0, 0],
  [31, 36, 20, 20, 20],
])("%d to %d degC: simple %d, modified %d, sine %d", (minC, maxC, simple, modified, sine) => {
  const limits = { baseC: 10, upperC: 30 };
  expect(degreeDays({ minC, maxC }, { ...limits, method: "simple" })).toBeCloseTo(simple, 9);
  expect(degreeDays({ minC, maxC }, { ...limits, method: "modified" })).toBeCloseTo(modified, 9);
  expect(degreeDays({ minC, maxC }, { ...limits, method: "single-sine" })).toBeCloseTo(sine, 2);
});

test("without an upper limit, heat counts in full", () => {
  for (const method of degreeDayMethods)
    expect(degreeDays({ minC: 31, maxC: 36 }, { method, baseC: 10 })).toBeCloseTo(23.5, 9);
});

describe("by any method", () => {
  test("a day counts from nothing to the whole of the thresholds", () => {
    fc.assert(
      fc.property(anyDay, anyThresholds, (day, thresholds) => {
        const sum = degreeDays(day, thresholds);
        expect(sum).toBeGreaterThanOrEqual(0);
        expect(sum).toBeLessThanOrEqual((thresholds.upperC ?? Infinity) - thresholds.baseC + 1e-9);
      }),
    );
  });

  test("a warmer day never counts less", () => {
    const anyRise = fc.double({ min: 0, max: 10, noNaN: true });
    fc.assert(
      fc.property(anyDay, anyRise, anyRise, anyThresholds, (day, low, high, thresholds) => {
        const warmer = { minC: day.minC + Math.min(low, high), maxC: day.maxC + high };
        expect(degreeDays(warmer, thresholds)).toBeGreaterThanOrEqual(
          degreeDays(day, thresholds) - 1e-9,
        );
      }),
    );
  });

  test("Fahrenheit says the same", () => {
    const toF = (c: number): number => (c * 9) / 5 + 32;
    fc.assert(
      fc.property(anyDay, anyThresholds, ({ minC, maxC }, { upperC, ...thresholds }) => {
        const inC = degreeDays(
          { minC, maxC },
          { ...thresholds, ...(upperC === undefined ? {} : { upperC }) },
        );
        const inF = degreeDays(
          { minC: toF(minC), maxC: toF(maxC) },
          {
            ...thresholds,
            baseC: toF(thresholds.baseC),
            ...(upperC === undefined ? {} : { upperC: toF(upperC) }),
          },
        );
        expect((inF * 5) / 9).toBeCloseTo(inC, 6);
      }),
    );
  });

  test("a day of one temperature counts what lies between the thresholds", () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 45, noNaN: true }), anyThresholds, (t, thresholds) => {
        const { baseC, upperC = Infinity } = thresholds;
        const expected = Math.max(0, Math.min(t, upperC) - baseC);
        expect(degreeDays({ minC: t, maxC: t }, thresholds)).toBeCloseTo(expected, 9);
      }),
    );
  });
});
