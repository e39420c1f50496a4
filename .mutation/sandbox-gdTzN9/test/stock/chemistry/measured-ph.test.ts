// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { brewBatch, fizzing, openAir } from "../../../src/stock/chemistry/brew.js";
import { brewAtPh, type Jar } from "../../../src/stock/chemistry/measured-ph.js";
import { good } from "./chemistry-cases.js";
import { chemistry } from "./chemistry-fixture.js";

const jar: Jar = {
  shellG: 15,
  shellPurity: 0.94,
  acid: { kind: "citric", form: "anhydrous", grams: 13 },
  waterG: 236,
  temperatureC: 20,
  citrateSolidMayForm: true,
};
const finishedPh = good(brewBatch(chemistry, { ...jar, gas: openAir(chemistry) })).ph;
const fizzingPh = good(brewBatch(chemistry, { ...jar, gas: fizzing })).ph;

describe("a jar at a measured pH", () => {
  test("has that pH", () => {
    fc.assert(
      fc.property(fc.double({ min: 2.5, max: finishedPh - 0.01, noNaN: true }), (ph) => {
        expect(good(brewAtPh(chemistry, jar, ph)).brew.ph).toBeCloseTo(ph, 6);
      }),
      { numRuns: 25 },
    );
  });

  test("far below its fizzing pH has acid left and less calcium", () => {
    const found = good(brewAtPh(chemistry, jar, 3.5));
    expect(found.because).toBe("acid-left");
    expect(found.brew.acidLeftG).toBeGreaterThan(0.5);
  });

  test("between fizzing and finished holds gas, its acid spent", () => {
    const found = good(brewAtPh(chemistry, jar, (fizzingPh + finishedPh) / 2));
    expect(found.because).toBe("holds-gas");
    expect(found.brew.acidLeftG).toBeLessThan(0.01);
  });

  test("at or above its finished pH is finished", () => {
    expect(good(brewAtPh(chemistry, jar, finishedPh + 0.5)).because).toBe("in-air");
    expect(good(brewAtPh(chemistry, jar, finishedPh)).brew.ph).toBeCloseTo(finishedPh, 9);
  });

  test("sourer than its acid alone is the acid alone", () => {
    const sour = good(brewAtPh(chemistry, jar, 0.5));
    expect(sour.brew.input.shellG).toBeLessThan(1e-9);
  });

  test("of 15 is none", () => {
    expect(brewAtPh(chemistry, jar, 15).ok).toBe(false);
    expect(brewAtPh(chemistry, jar, NaN).ok).toBe(false);
  });
});
