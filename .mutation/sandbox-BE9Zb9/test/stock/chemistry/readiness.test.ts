// @ts-nocheck
import { describe, expect, test } from "vitest";
import { brewBatch, fizzing, openAir } from "../../../src/stock/chemistry/brew.js";
import type { Jar } from "../../../src/stock/chemistry/measured-ph.js";
import { type JarSeen, readiness, shellWanted } from "../../../src/stock/chemistry/readiness.js";
import { good } from "./chemistry-cases.js";
import { chemistry } from "./chemistry-fixture.js";

const cup: Jar = {
  shellG: 15,
  shellPurity: 1,
  acid: { kind: "citric", form: "anhydrous", grams: 13 },
  waterG: 236,
  temperatureC: 20,
  citrateSolidMayForm: true,
};
const vinegar: Jar = {
  ...cup,
  acid: { kind: "vinegar", percent: 5, volumeMl: 250 },
  waterG: 0,
};
const state = (seen: JarSeen, jar = cup): string => good(readiness(chemistry, jar, seen, 2)).state;

describe("a stock is ready", () => {
  test("when its pH is that of a finished one", () => {
    for (const jar of [cup, vinegar]) {
      const { ph } = good(brewBatch(chemistry, { ...jar, gas: openAir(chemistry) }));
      expect(state({ ph }, jar)).toBe("ready");
      expect(state({ ph: ph - 0.3 }, jar)).toBe("ready");
    }
  });

  test("when nothing was measured and its time has passed", () => {
    expect(state({ daysSinceMixed: 2 })).toBe("ready");
    expect(state({})).toBe("ready");
  });
});

describe("a stock is not ready", () => {
  test("while it bubbles", () => {
    expect(state({ bubbles: true, daysSinceMixed: 3 })).toBe("still-fizzing");
  });

  test("while its pH is that of a jar under its own gas", () => {
    for (const jar of [cup, vinegar]) {
      const { ph } = good(brewBatch(chemistry, { ...jar, gas: fizzing }));
      expect(state({ ph }, jar)).toBe("still-fizzing");
    }
  });

  test("while a strip reads acid, however long it stood", () => {
    expect(state({ ph: 5, daysSinceMixed: 30 })).toBe("still-acid");
  });

  test("ever, when shell is short", () => {
    expect(state({ daysSinceMixed: 30 }, { ...cup, shellG: 4 })).toBe("still-acid");
  });

  test("before its time, when nothing was measured", () => {
    expect(state({ daysSinceMixed: 1 })).toBe("too-early");
    expect(state({ daysSinceMixed: 1, ph: 8 })).toBe("ready");
  });

  test("and the grower is told why and what to do", () => {
    const told = good(readiness(chemistry, cup, { ph: 4 }, 2));
    expect(told.ready).toBe(false);
    expect(told.message).toContain("pH 4");
    expect(told.mend).toContain("shell");
    expect(told.acidBelowPh).toBeLessThanOrEqual(5.5);
    expect(told.gasBelowPh).toBeGreaterThan(told.acidBelowPh);
  });
});

describe("the shell wanted", () => {
  test("just uses up the acid", () => {
    for (const jar of [cup, vinegar]) {
      const shellG = shellWanted(chemistry, jar);
      const at = (share: number) =>
        good(brewBatch(chemistry, { ...jar, shellG: share * shellG, gas: openAir(chemistry) }));
      expect(at(0.9).acidLeftG).toBeGreaterThan(0.3);
      expect(at(1.02).acidLeftG).toBeLessThan(0.02);
      expect(at(1.1).shellLeftG).toBeCloseTo(0.1 * shellG, 0);
    }
  });

  test("is more where the shell is less pure, and less for monohydrate", () => {
    expect(shellWanted(chemistry, { ...cup, shellPurity: 0.5 })).toBeCloseTo(
      2 * shellWanted(chemistry, cup),
      9,
    );
    expect(
      shellWanted(chemistry, { ...cup, acid: { kind: "citric", form: "monohydrate", grams: 13 } }),
    ).toBeLessThan(shellWanted(chemistry, cup));
  });
});
