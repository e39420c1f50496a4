// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { brewBatch, openAir } from "../../../src/stock/chemistry/brew.js";
import {
  atStrength,
  poured,
  share,
  strained,
  whitePassed,
} from "../../../src/stock/chemistry/stock-liquid.js";
import { good } from "./chemistry-cases.js";
import { chemistry } from "./chemistry-fixture.js";

const brew = good(
  brewBatch(chemistry, {
    shellG: 15,
    shellPurity: 1,
    acid: { kind: "citric", form: "anhydrous", grams: 13 },
    waterG: 236,
    temperatureC: 25,
    gas: openAir(chemistry),
    citrateSolidMayForm: true,
  }),
);
const stock = strained(chemistry, brew);

describe("a strained stock", () => {
  test("holds all calcium but that of undissolved shell", () => {
    const calciumG = (stock.shakenGPerL * stock.shakenMl) / 1000;
    const dissolvedShellG = 15 - brew.shellLeftG;
    expect(calciumG).toBeCloseTo(
      (dissolvedShellG * chemistry.gPerMol.calcium) / chemistry.gPerMol.calciumCarbonate,
      8,
    );
  });

  test("takes up the room of its crystals", () => {
    expect(stock.shakenMl - stock.liquidMl).toBeCloseTo(brew.crystalsG / 2, 8);
  });

  test.each(["mesh", "cloth"] as const)("loses the white that a %s holds back", (strainer) => {
    const passed = whitePassed(chemistry, strainer);
    const part = strained(chemistry, brew, passed);
    expect(part.clearGPerL).toBe(stock.clearGPerL);
    const lostG = (stock.shakenGPerL * stock.shakenMl - part.shakenGPerL * part.shakenMl) / 1000;
    expect(lostG).toBeCloseTo((1 - passed) * brew.calciumInCrystalsG, 8);
    expect(poured(chemistry, part, 10, "shaken").calciumMg).toBeCloseTo(10 * part.shakenGPerL, 6);
  });

  test("keeps far more of it through a mesh than through a cloth", () => {
    const [mesh, cloth] = [whitePassed(chemistry, "mesh"), whitePassed(chemistry, "cloth")];
    expect(mesh).toBeLessThanOrEqual(1);
    expect(mesh).toBeGreaterThan(2 * cloth);
  });

  test("pours as much calcium as its strength says", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 200, noNaN: true }), (ml) => {
        expect(poured(chemistry, stock, ml, "shaken").calciumMg).toBeCloseTo(
          ml * stock.shakenGPerL,
          6,
        );
        expect(poured(chemistry, stock, ml, "clear").calciumMg).toBeCloseTo(
          ml * stock.clearGPerL,
          6,
        );
      }),
    );
  });

  test("lets no crystals form from a clear pour", () => {
    expect(poured(chemistry, stock, 10, "clear").crystalsMayForm).toBe(false);
    expect(poured(chemistry, stock, 10, "shaken").crystalsMayForm).toBe(true);
  });

  test("is used up by pouring all of it", () => {
    const whole = share(chemistry, stock, 1, "shaken");
    expect(whole.calciumMg).toBeCloseTo(
      poured(chemistry, stock, stock.shakenMl, "shaken").calciumMg,
      8,
    );
  });
});

describe("a measured strength", () => {
  test("overrides the computed one, shaken or clear in proportion", () => {
    const weaker = atStrength(stock, 5, "shaken");
    expect(weaker.shakenGPerL).toBeCloseTo(5, 12);
    expect(weaker.clearGPerL / stock.clearGPerL).toBeCloseTo(5 / stock.shakenGPerL, 12);
    expect(poured(chemistry, weaker, 10, "shaken").calciumMg).toBeCloseTo(50, 9);
    expect(weaker.shakenMl).toBe(stock.shakenMl);
  });

  test("of the clear liquid is taken as that of the clear liquid", () => {
    expect(atStrength(stock, 0.2, "clear").clearGPerL).toBeCloseTo(0.2, 12);
  });
});
