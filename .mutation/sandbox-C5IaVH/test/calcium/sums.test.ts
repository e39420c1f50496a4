/** Where the calcium of a planting comes from: its parts, for a plant and a m2, and what is not known. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { bedWith, sumOf, sumsOf } from "./a-sum.js";

const test2027 = { on: "2027-02-01", extract: "mehlich-3", calcium: "1000 ppm", ph: 6.3 };

describe("ground", () => {
  test("is the planting's own, or its bed's where it is alone", () => {
    expect(sumOf(bedWith({ area: "6 m2" }))).toMatchObject({ plants: 6, areaM2: 6 });
    expect(sumOf(bedWith({ area: "9 m2" }, { area: "4 m2" }, { id: "more" })).areaM2).toBe(4);
  });

  test("else its plants' at usual spacing, and in all never more than the bed", () => {
    const usual = sumOf(bedWith({}));
    expect(usual.areaIsUsual).toBe(true);
    expect(usual.areaM2).toBeGreaterThan(1);
    const two = [{ plants: 6 }, { id: "more", plants: 3 }];
    const [six = 0, three = 0] = sumsOf(bedWith({ area: "3 m2" }, ...two)).map((s) => s.areaM2);
    expect([six / three, six + three]).toEqual([2, expect.closeTo(3, 9)]);
  });

  test("is not known without plants and area: published figures stand alone", () => {
    const sum = sumOf(bedWith({ soil: { test: test2027 } }, { plants: undefined }), { feedG: 1 });
    expect(sum).not.toHaveProperty("areaM2");
    expect(sum.need).toMatchObject({
      perPlantG: { low: 5, high: 5 },
      perM2G: { low: 9.5, high: 17 },
    });
    expect(sum.need).not.toHaveProperty("wholeG");
    expect(sum.soil).not.toHaveProperty("wholeG");
    expect(sum).not.toHaveProperty("sharePercent");
    expect(sum.feed).toEqual({ wholeG: { low: 1, high: 1 } });
  });
});

describe("need", () => {
  test("spans all figures, by plants and by area", () => {
    // 6 x 5.0 g; 6 m2 x 9.5 and x 17.0 g.
    expect(sumOf(bedWith({ area: "6 m2" })).need?.wholeG).toEqual({ low: 30, high: 102 });
  });

  test("names the crop whose figures stand in", () => {
    const courgettes = bedWith({ area: "4 m2" }, { crop: "courgette" });
    expect(sumOf(courgettes).need).toMatchObject({ borrowedFrom: "cantaloupe (muskmelon)" });
    expect(sumOf(bedWith({})).need).not.toHaveProperty("borrowedFrom");
  });

  test.each(["lettuce", "cabbage", "onion", "spinach"])("of %s is not known", (crop) => {
    const garden = bedWith({ area: "4 m2" }, { crop });
    expect(sumOf(garden)).not.toHaveProperty("need");
    expect(sumOf(garden)).not.toHaveProperty("sharePercent");
  });

  test("is marked where no source carries it", () => {
    const berries = bedWith({}, { crop: "strawberry" });
    expect(sumOf(berries).need?.isWeak).toBe(true);
    expect(sumOf(bedWith({})).need).not.toHaveProperty("isWeak");
  });
});

describe("soil", () => {
  test("is what the test found within its depth, of which the crop takes a small part", () => {
    const sum = sumOf(bedWith({ area: "6 m2", soil: { test: test2027 } }));
    expect(sum.soil?.perM2G).toEqual({ low: 240, high: 240 });
    expect(sum.soil?.wholeG).toEqual({ low: 1440, high: 1440 });
    expect(sum.soil?.takenPercent?.low).toBeCloseTo(2.08, 2);
    expect(sum.soil?.takenPercent?.high).toBeCloseTo(7.08, 2);
  });

  test("goes with density and depth, and potting mix is far lighter", () => {
    const perM2 = (soil: Readonly<Record<string, unknown>>) =>
      sumOf(bedWith({ soil })).soil?.perM2G;
    const deep = { ...test2027, depth: "30 cm", density: "1.5 kg/L" };
    expect(perM2({ test: deep })).toEqual({ low: 450, high: 450 });
    expect(perM2({ kind: "potting-mix", test: test2027 })).toEqual({ low: 40, high: 100 });
  });

  test("is no stock where the figure is of a liquid, or the test has no calcium", () => {
    const stock = (differs: Readonly<Record<string, unknown>>) =>
      sumOf(bedWith({ soil: { test: { ...test2027, ...differs } } })).soil;
    expect(stock({ extract: "saturated" })).not.toHaveProperty("perM2G");
    expect(stock({ extract: "mehlich-1" })).toHaveProperty("perM2G");
    expect(stock({ calcium: undefined, extract: undefined })).not.toHaveProperty("perM2G");
  });

  test("is old more than three years before the season", () => {
    const isOld = (on: string) =>
      sumOf(bedWith({ soil: { test: { ...test2027, on } } })).soil?.isOld;
    expect(isOld("2024-03-01")).toBeUndefined();
    expect(isOld("2024-02-28")).toBe(true);
  });
});

describe("water", () => {
  const hard = { source_water: { hardness: "90 mg/L" } };

  test("brings 60 to 90 % of its hardness as calcium", () => {
    // 90 mg/L x 0.4004 = 36.036 mg/L, were all of it calcium; 1000 L.
    const { water } = sumOf({ ...bedWith({ area: "5 m2" }), ...hard }, { waterL: 1000 });
    expect(water?.wholeG?.low).toBeCloseTo(21.62, 2);
    expect(water?.wholeG?.high).toBeCloseTo(32.43, 2);
    expect(water?.perM2G?.low).toBeCloseTo(4.32, 2);
    expect(water?.perPlantG?.low).toBeCloseTo(3.6, 2);
  });

  test("brings what the water report has of calcium", () => {
    const told = { ...bedWith({}), source_water: { hardness: "90 mg/L", calcium: "30 mg/L" } };
    expect(sumOf(told, { waterL: 1000 }).water?.wholeG).toEqual({ low: 30, high: 30 });
  });

  test("is not known without the litres, or of water that nobody knows", () => {
    expect(sumOf({ ...bedWith({}), ...hard })).not.toHaveProperty("water");
    expect(sumOf(bedWith({}), { waterL: 1000 })).not.toHaveProperty("water");
  });
});

describe("amendments", () => {
  const spread = (differs: Readonly<Record<string, unknown>>, ...plantings: object[]) =>
    sumOf(
      bedWith(
        {
          area: "6 m2",
          amendments: [{ on: "2027-03-15", what: "gypsum", amount: "500 g", ...differs }],
        },
        ...(plantings as Readonly<Record<string, unknown>>[]),
      ),
    ).amendments;

  test("gypsum acts in its first year", () => {
    const [gypsum] = spread({});
    expect(gypsum).toMatchObject({ name: "gypsum", amountG: 500 });
    expect(gypsum?.thisSeason.wholeG).toEqual({ low: 95, high: 115 });
    expect(gypsum?.nextSeason?.wholeG).toEqual({ low: 0, high: 0 });
  });

  test("lime goes by its fineness, and may be any where it is not told", () => {
    // 500 g at 332 to 400 g/kg: 166 to 200 g of calcium.
    const lime = (fineness?: string) => spread({ what: "limestone", fineness })[0];
    expect(lime("fine")?.thisSeason.wholeG?.low).toBeCloseTo(149.4, 9);
    expect(lime("fine")?.thisSeason.wholeG?.high).toBeCloseTo(200, 9);
    expect(lime("medium")?.thisSeason.wholeG?.high).toBeCloseTo(120, 9);
    expect(lime("coarse")?.thisSeason.wholeG).toEqual({ low: 0, high: 20 });
    expect(lime()?.thisSeason.wholeG).toEqual({ low: 0, high: 200 });
    expect(lime("medium")?.nextSeason?.wholeG?.high).toBeCloseTo(80, 9);
  });

  test("what was spread in autumn begins to act in the season after; a year before, in its second", () => {
    const lime = { what: "limestone", fineness: "medium" };
    expect(spread({ ...lime, on: "2026-10-01" })[0]?.thisSeason.wholeG?.high).toBeCloseTo(120, 9);
    const [second] = spread({ ...lime, on: "2026-03-15" });
    expect(second?.thisSeason.wholeG?.high).toBeCloseTo(80, 9);
    expect(second).not.toHaveProperty("nextSeason");
    expect(spread({ ...lime, on: "2025-03-15" })).toEqual([]);
  });

  test("what is spread when the planting is gone does nothing for it", () => {
    expect(spread({ on: "2027-08-02" }, { removed: "2027-08-01" })).toEqual([]);
    expect(spread({ on: "2027-07-31" }, { removed: "2027-08-01" })).toHaveLength(1);
  });

  test("lie evenly on their bed, and are no planting's where nobody knows how large it is", () => {
    const two = [{ area: "2 m2" }, { id: "more" }];
    expect(spread({}, ...two)[0]?.thisSeason.wholeG?.low).toBeCloseTo(95 / 3, 9);
    const unknown = bedWith(
      { amendments: [{ on: "2027-03-15", what: "gypsum", amount: "500 g" }] },
      {},
      { id: "more" },
    );
    expect(sumOf(unknown).amendments[0]?.thisSeason).toEqual({});
    expect(
      sumOf({ ...unknown, source_water: { hardness: "90 mg/L" } }, { waterL: 9 }),
    ).not.toHaveProperty("brought");
  });
});
