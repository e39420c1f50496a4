// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  daviesTerm,
  debyeHuckelA,
  waterActivity,
  waterDensityKgPerL,
  waterPermittivity,
} from "../../../src/stock/chemistry/activity.js";
import { chemistry } from "./chemistry-fixture.js";

const liquid = fc.double({ min: 0, max: 99, noNaN: true });

describe("water", () => {
  test("is densest near 4 degC", () => {
    const temperatures = Array.from({ length: 101 }, (_, t) => t);
    const densest = temperatures.reduce((best, t) =>
      waterDensityKgPerL(t) > waterDensityKgPerL(best) ? t : best,
    );
    expect(densest).toBe(4);
  });

  test("screens charges less as it warms", () => {
    fc.assert(
      fc.property(liquid, (t) => {
        expect(waterPermittivity(t + 1)).toBeLessThan(waterPermittivity(t));
        expect(debyeHuckelA(chemistry, t + 1)).toBeGreaterThan(debyeHuckelA(chemistry, t));
      }),
    );
  });
});

describe("activities", () => {
  test("are ideal in pure water", () => {
    expect(daviesTerm(0.51, 0, 0.3)).toBe(0);
    expect(waterActivity(0, 0.017)).toBe(1);
  });

  test("fall below ideal for ions in dilute solution and turn back in strong ones", () => {
    const a = debyeHuckelA(chemistry, 25);
    expect(daviesTerm(a, 0.1, 0.3)).toBeGreaterThan(daviesTerm(a, 0.01, 0.3));
    expect(daviesTerm(a, 5, 0.3)).toBeLessThan(0);
  });

  test("of water go down the line that the constants file gives, then level off above nought", () => {
    expect(waterActivity(1, 0.017)).toBeCloseTo(0.983, 12);
    const joined = 1e-6;
    expect(waterActivity(20 + joined, 0.017)).toBeCloseTo(waterActivity(20 - joined, 0.017), 6);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e4, noNaN: true }), (m) => {
        expect(waterActivity(m, 0.017)).toBeGreaterThan(0);
        expect(waterActivity(m + 0.1, 0.017)).toBeLessThan(waterActivity(m, 0.017));
      }),
    );
  });
});
