// @ts-nocheck
import { describe, expect, test } from "vitest";
import type { Garden } from "../../src/garden/garden.js";
import { aGarden, gardenText, planted, readGarden } from "../support/a-garden.js";

const toms = planted({}).beds as [{ id: string; plantings: unknown[] }];
const bedWith = (keys: object) => ({ beds: [{ ...toms[0], ...keys }] });
const theBed = (garden: Garden) => garden.beds[0];
const slips = (differs: object): [code: string, message: string][] => {
  const read = readGarden(gardenText(differs));
  return read.ok ? [] : read.problems.map(({ code, message }) => [code, message]);
};

describe("soil", () => {
  test("of a bed goes before the garden's, key by key", () => {
    const garden = aGarden({
      soil: { kind: "sand", mulch: "straw" },
      ...bedWith({ soil: { kind: "loam" } }),
    });
    expect(theBed(garden)?.soil).toEqual({ kind: "loam", mulch: "straw" });
    expect(theBed(aGarden())).not.toHaveProperty("soil");
  });

  test("a test of the garden's soil is not of a bed of another kind", () => {
    const test = { on: "2027-02-10", ph: 6 };
    const soils = (gardens: object, beds: object) =>
      theBed(aGarden({ soil: { ...gardens, test }, ...bedWith({ soil: beds }) }))?.soil?.test?.ph;
    expect(soils({ kind: "loam" }, { mulch: "straw" })).toBe(6);
    expect(soils({ kind: "loam" }, { kind: "loam" })).toBe(6);
    expect(soils({}, { kind: "sand" })).toBe(6);
    expect(soils({ kind: "loam" }, { kind: "sand" })).toBeUndefined();
    expect(soils({}, { kind: "potting-mix" })).toBeUndefined();
    expect(soils({ kind: "loam" }, { kind: "sand", test: { ...test, ph: 5 } })).toBe(5);
  });

  test.each([
    ["850 ppm", 850],
    ["850 mg/kg", 850],
    ["1700 lb/acre", 850],
    ["1,700 lb/acre", undefined],
    ["5 meq/100 g", 1001.95],
    ["5 cmol/kg", 1001.95],
  ])("a test's calcium of %s is %s ppm", (calcium, ppm) => {
    const test = { on: "2027-02-10", extract: "mehlich-3", calcium, ph: 6.3 };
    const read = readGarden(gardenText({ soil: { test } }));
    const found = read.ok ? read.value.beds[0]?.soil?.test?.calciumPpm : undefined;
    expect(found?.toFixed(2)).toBe(ppm?.toFixed(2));
  });

  test("a test keeps depth and density in their units, and pH in water unless told", () => {
    const test = { on: "2025-02-10", ph: 5.9, depth: "6 in", density: "75 lb/ft3" };
    const soil = theBed(aGarden({ soil: { test } }))?.soil?.test;
    expect(soil).toMatchObject({ on: "2025-02-10", ph: 5.9, phIn: "water" });
    expect(soil?.depthCm).toBeCloseTo(15.24, 6);
    expect(soil?.densityKgPerL).toBeCloseTo(1.2014, 4);
  });

  test.each<[object, string]>([
    [{ on: "2027-02-10", calcium: "850 ppm" }, "the calcium of a soil test means nothing without"],
    [{ on: "2027-02-10", extract: "mehlich-3" }, "the soil test has neither calcium nor pH"],
    [{ on: "2028-02-10", ph: 6 }, "a soil test on 2028-02-10 lies after the season"],
    [{ on: "2027-02-30", ph: 6 }, "`2027-02-30` is no date"],
    [{ on: "2027-02-10", ph: 63 }, "`ph`"],
    [{ on: "2027-02-10", extract: "mehlich-3", calcium: 850 }, "is the number 850 without a unit"],
    [{ on: "2027-02-10", extract: "mehlich-3", calcium: "850 mL" }, "calcium in soil is needed"],
    [{ on: "2027-02-10", extract: "mehlich", calcium: "850 ppm" }, "extract"],
  ])("%j is told", (test, words) => {
    const told = slips({ soil: { test } });
    expect(told).toHaveLength(1);
    expect(told[0]?.[1]).toContain(words);
  });
});

describe("amendments", () => {
  const gypsum = { on: "2027-03-10", what: "gypsum", amount: "500 g" };

  test("are told for the bed or for its area", () => {
    const garden = aGarden(
      bedWith({
        area: "4 m2",
        amendments: [
          gypsum,
          { ...gypsum, amount: "50 g per m2" },
          { ...gypsum, amount: "1 lb per 100 ft2", fineness: "fine" },
        ],
      }),
    );
    const given = theBed(garden)?.amendments ?? [];
    expect(given.map(({ amountG }) => Math.round(amountG))).toEqual([500, 200, 195]);
    expect(given[2]?.fineness).toBe("fine");
    expect(theBed(aGarden())?.amendments).toEqual([]);
  });

  test.each<[object, string]>([
    [{ amount: "50 g per m2" }, "the area of the bed is not given"],
    [{ amount: "500 mL" }, "a weight is needed"],
    [{ amount: "5 g per plant" }, "`per plant` is no area"],
    [{ on: "2028-03-10" }, "lies after the season"],
    [{ what: "magic" }, "magic"],
  ])("%j is told", (differs, words) => {
    const told = slips(bedWith({ amendments: [{ ...gypsum, ...differs }] }));
    expect(told).toHaveLength(1);
    expect(told[0]?.[1]).toContain(words);
  });
});
