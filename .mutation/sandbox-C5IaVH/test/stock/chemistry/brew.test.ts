// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { acidMeasures } from "../../../src/stock/chemistry/acid.js";
import { brewBatch, type BrewInput, fizzing, openAir } from "../../../src/stock/chemistry/brew.js";
import { good } from "./chemistry-cases.js";
import { chemistry } from "./chemistry-fixture.js";

const cup: BrewInput = {
  shellG: 15,
  shellPurity: 1,
  acid: { kind: "citric", form: "anhydrous", grams: 13 },
  waterG: 236,
  temperatureC: 25,
  gas: openAir(chemistry),
  citrateSolidMayForm: true,
};
const vinegar: BrewInput = {
  ...cup,
  shellG: 20,
  acid: { kind: "vinegar", percent: 5, volumeMl: 250 },
  waterG: 0,
};
const brew = (input: BrewInput) => good(brewBatch(chemistry, input));

describe("a jar of shell and acid", () => {
  test("of citric acid is done with most calcium in crystals", () => {
    const done = brew(cup);
    const dissolvedG = (done.calciumDissolvedGPerL * done.liquidMl) / 1000;
    expect(done.calciumInCrystalsG).toBeGreaterThan(50 * dissolvedG);
    expect(done.acidLeftG).toBeLessThan(0.01);
    expect(done.ph).toBeGreaterThan(7);
  });

  test("of vinegar holds all its calcium dissolved", () => {
    const done = brew(vinegar);
    expect(done.crystalsG).toBe(0);
    expect(done.calciumDissolvedGPerL).toBeGreaterThan(15);
  });

  test("of vinegar beyond a kitchen's settles calcium acetate, and no acid or calcium is lost", () => {
    const done = brew({
      ...vinegar,
      shellG: 80,
      acid: { kind: "vinegar", percent: 25, volumeMl: 250 },
    });
    expect(done.equilibrium.saturation.calciumAcetate).toBeCloseTo(0, 9);
    expect(done.crystalsG).toBeGreaterThan(5);
    const { gPerMol } = chemistry;
    const calciumG = (done.calciumDissolvedGPerL * done.liquidMl) / 1000 + done.calciumInCrystalsG;
    const shellG = 80 - done.shellLeftG;
    expect(calciumG / gPerMol.calcium).toBeCloseTo(shellG / gPerMol.calciumCarbonate, 6);
    const { dissolved, solidMol } = done.equilibrium;
    expect(dissolved.mol.Ac + 2 * solidMol.calciumAcetate).toBeCloseTo(
      62.5 / gPerMol.aceticAcid,
      8,
    );
  });

  test("is slightly sour while it fizzes and slightly limy when the gas has left", () => {
    expect(brew({ ...cup, gas: fizzing }).ph).toBeLessThan(6.1);
    expect(brew(cup).ph).toBeGreaterThan(7.9);
  });

  test("short of shell stays acid, with the acid left told", () => {
    const short = brew({ ...cup, shellG: 4 });
    expect(short.ph).toBeLessThan(3.5);
    expect(short.shellLeftG).toBe(0);
    // A gram of carbonate uses up 384.246 / 300.258 g of acid.
    expect(short.acidLeftG).toBeCloseTo(13 - (4 * 384.246) / 300.258, 2);
  });

  test("of monohydrate is the same jar with the crystal's water in it", () => {
    const { citricAnhydrous, citricMonohydrate } = chemistry.gPerMol;
    const grams = (13 * citricMonohydrate) / citricAnhydrous;
    const same = brew({
      ...cup,
      acid: { kind: "citric", form: "monohydrate", grams },
      waterG: 236 - (grams - 13),
    });
    expect(same.ph).toBeCloseTo(brew(cup).ph, 9);
    expect(same.crystalsG).toBeCloseTo(brew(cup).crystalsG, 8);
  });

  test("tells undissolved shell with what is no carbonate in it", () => {
    const done = brew({ ...cup, shellG: 16, shellPurity: 15 / 16 });
    expect(done.shellLeftG).toBeCloseTo((brew(cup).shellLeftG * 16) / 15, 8);
  });

  test("gives off the carbon of the shell that dissolved, less what stays in the liquid", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (shellG, grams) => {
          const done = brew({ ...cup, shellG, acid: { kind: "citric", form: "anhydrous", grams } });
          const carbonMol =
            (shellG - done.shellLeftG) / chemistry.gPerMol.calciumCarbonate -
            done.equilibrium.dissolved.mol.CO3;
          expect(done.carbonDioxideG).toBeCloseTo(carbonMol * chemistry.gPerMol.carbonDioxide, 9);
        },
      ),
    );
  });

  test("with no acid and no shell is water", () => {
    const water = brew({ ...cup, shellG: 0, acid: { ...vinegar.acid, volumeMl: 0 } as never });
    expect(water.calciumDissolvedGPerL).toBe(0);
    expect(water.liquidMl).toBeCloseTo(236 / 0.99705, 1);
  });
});

describe("vinegar", () => {
  test("weighs what the constants file says at 5 %, and as water at 0 %", () => {
    const gPerMl = (percent: number): number =>
      acidMeasures(chemistry, { kind: "vinegar", percent, volumeMl: 1 }).weighedG;
    expect(gPerMl(5)).toBeCloseTo(1.005, 12);
    expect(gPerMl(0)).toBeCloseTo(0.9982, 4);
  });
});

describe("what is no jar", () => {
  const codes = (input: Partial<BrewInput>): string[] => {
    const result = brewBatch(chemistry, { ...cup, ...input });
    return result.ok ? [] : result.problems.map((p) => p.code);
  };

  test("has negative shell, acid or water", () => {
    expect(codes({ shellG: -1 })).toEqual(["not-a-quantity"]);
    expect(codes({ waterG: NaN })).toEqual(["not-a-quantity"]);
    expect(codes({ acid: { kind: "citric", form: "anhydrous", grams: -2 } })).toEqual([
      "not-a-quantity",
    ]);
  });

  test("has no water at all", () => {
    expect(codes({ waterG: 0 })).toEqual(["no-water"]);
  });

  test("has vinegar of 120 %, or glacial acetic acid", () => {
    expect(codes({ acid: { kind: "vinegar", percent: 120, volumeMl: 250 } })).toEqual([
      "not-kitchen-vinegar",
    ]);
    expect(codes({ acid: { kind: "vinegar", percent: 99, volumeMl: 250 } })).toEqual([
      "not-kitchen-vinegar",
    ]);
  });

  test("has shell of more than all carbonate", () => {
    expect(codes({ shellPurity: 1.1 })).toEqual(["not-a-share"]);
  });

  test("is told of all at once", () => {
    expect(codes({ shellG: -1, shellPurity: 2 })).toEqual(["not-a-quantity", "not-a-share"]);
  });
});
