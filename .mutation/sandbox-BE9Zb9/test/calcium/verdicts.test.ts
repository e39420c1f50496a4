/** What can be expected of a feed, in the order in which it is judged. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { bedWith, sumOf, verdictOf } from "./a-sum.js";

const enough = { on: "2027-02-01", extract: "mehlich-3", calcium: "850 ppm", ph: 6.3 };
const tested = (differs: Readonly<Record<string, unknown>>, kind?: string) =>
  bedWith({ soil: { ...(kind === undefined ? {} : { kind }), test: { ...enough, ...differs } } });
const soft = { source_water: { hardness: "30 mg/L" } };
const hard = { source_water: { hardness: "300 mg/L" } };
const kindOf = (...args: Parameters<typeof verdictOf>) => verdictOf(...args).kind;

describe("unlikely, whatever the soil", () => {
  test.each(["lettuce", "chicory", "peanut"])("a drench on %s", (crop) => {
    const grown = crop === "peanut" ? { sown: "2027-05-20" } : { transplanted: "2027-05-20" };
    const garden = bedWith({}, { crop, transplanted: undefined, ...grown });
    expect(verdictOf(garden)).toEqual({
      kind: "unlikely-whatever-the-soil",
      reason: expect.stringMatching(/.{20}/) as string,
    });
  });

  test("a drench on apple, whereas of a spray it cannot be told: it goes past the soil", () => {
    const apple = bedWith(
      { soil: { test: enough } },
      { crop: "apple", transplanted: undefined, established: true },
    );
    expect(kindOf(apple)).toBe("unlikely-whatever-the-soil");
    expect(verdictOf(apple, {}, "foliar")).toEqual({
      kind: "cannot-tell",
      why: "spray-goes-past-the-soil",
    });
  });

  test("a peanut is told of gypsum instead", () => {
    const garden = bedWith({}, { crop: "peanut", transplanted: undefined, sown: "2027-05-20" });
    expect(verdictOf(garden)).toMatchObject({
      reason: expect.stringContaining("gypsum") as string,
    });
  });

  test("comes before a sour soil", () => {
    const garden = bedWith({ soil: { test: { ...enough, ph: 5 } } }, { crop: "lettuce" });
    expect(kindOf(garden)).toBe("unlikely-whatever-the-soil");
  });
});

describe("lime first", () => {
  test.each([5.5, 4.8])("at pH %f in water", (ph) => {
    expect(verdictOf(tested({ ph }))).toEqual({ kind: "lime-first", ph });
  });

  test("comes before a soil with much calcium, and before hard water", () => {
    expect(kindOf({ ...tested({ ph: 5.5, calcium: "3000 ppm" }), ...hard }, { waterL: 9999 })).toBe(
      "lime-first",
    );
  });

  test("not above it, nor by a pH in calcium chloride", () => {
    expect(kindOf(tested({ ph: 5.6 }))).not.toBe("lime-first");
    expect(kindOf(tested({ ph: 5, ph_in: "cacl2" }))).toBe("cannot-tell");
  });

  test("never for a crop that grows in sour soil", () => {
    const potato = { crop: "potato", transplanted: undefined, sown: "2027-04-01" };
    const sour = bedWith({ soil: { test: { ...enough, ph: 5 } } }, potato);
    expect(verdictOf(sour)).toMatchObject({ kind: "cannot-tell", why: "much-calcium-but-sour" });
  });
});

describe("unlikely: the soil has enough", () => {
  test.each([
    ["mehlich-3", "700 ppm", 700],
    ["modified-morgan", "1000 ppm", 1000],
    ["ammonium-acetate", "1000 ppm", 1000],
  ])("by %s from %s on, at pH 6", (extract, calcium, enoughPpm) => {
    expect(verdictOf(tested({ extract, calcium, ph: 6 }))).toMatchObject({
      kind: "unlikely-soil-has-enough",
      enoughPpm,
    });
    const [ppm = ""] = calcium.split(" ");
    const less = { extract, calcium: `${Number(ppm) - 1} ppm`, ph: 6 };
    expect(kindOf(tested(less))).toBe("cannot-tell");
  });

  test("tells that the limit of ammonium acetate is from memory, and of no other", () => {
    const of = (extract: string) => verdictOf(tested({ extract, calcium: "2000 ppm" }));
    expect(of("ammonium-acetate")).toHaveProperty("enoughIsFromMemory", true);
    expect(of("mehlich-3")).not.toHaveProperty("enoughIsFromMemory");
    expect(of("modified-morgan")).not.toHaveProperty("enoughIsFromMemory");
  });

  test("never by an extract without an accepted class, however much it finds", () => {
    for (const extract of ["mehlich-1", "saturated", "other"])
      expect(verdictOf(tested({ extract, calcium: "50000 ppm" }))).toMatchObject({
        kind: "cannot-tell",
        why: "no-class-of-extract",
        decidedBy: "soil-test",
      });
  });

  test("a limit of one extract is not that of another", () => {
    expect(kindOf(tested({ extract: "mehlich-3", calcium: "800 ppm" }))).toBe(
      "unlikely-soil-has-enough",
    );
    expect(kindOf(tested({ extract: "modified-morgan", calcium: "800 ppm" }))).toBe("cannot-tell");
  });

  test.each([
    [{ ph: 5.8 }, "much-calcium-but-sour", undefined],
    [{ ph: undefined }, "ph-not-known", "ph-in-water"],
    [{ ph: 6.3, ph_in: "cacl2" }, "ph-in-cacl2", "ph-in-water"],
  ])("not with %j", (differs, why, decidedBy) => {
    const found = verdictOf(tested(differs));
    expect(found).toEqual({
      kind: "cannot-tell",
      why,
      ...(decidedBy === undefined ? {} : { decidedBy }),
    });
  });

  test("also for a spray against what the soil decides", () => {
    expect(kindOf(tested({}), {}, "foliar")).toBe("unlikely-soil-has-enough");
  });
});

describe("unlikely: the water covers it", () => {
  // Six tomatoes take up 30 g a planting at the least; on 6 m2 17 g/m2 at the most: 102 g.
  const garden = { ...bedWith({ area: "6 m2" }), ...hard };
  // 300 mg/L x 0.4004 x 0.6 = 72.07 mg/L at the least: 102 g in 1415.2 L.
  test("from where its low end reaches the high end of the need", () => {
    expect(verdictOf(garden, { waterL: 1416 })).toMatchObject({
      kind: "unlikely-water-covers-it",
      needG: { low: 30, high: 102 },
    });
    expect(kindOf(garden, { waterL: 1415 })).toBe("cannot-tell");
  });

  test("where nobody knows how much is poured, that would decide it, if the water could", () => {
    expect(verdictOf(garden)).toMatchObject({ decidedBy: "watering" });
    const soil = { source_water: { hardness: "90 mg/L" } };
    expect(verdictOf({ ...garden, ...soil })).toMatchObject({ decidedBy: "soil-test" });
  });

  test("calcium itself goes before hardness", () => {
    const told = { ...garden, source_water: { hardness: "300 mg/L", calcium: "100 mg/L" } };
    expect(kindOf(told, { waterL: 1020 })).toBe("unlikely-water-covers-it");
    expect(kindOf(told, { waterL: 1019 })).toBe("cannot-tell");
  });
});

describe("might help", () => {
  const poor = { ...bedWith({ soil: { kind: "potting-mix" } }), ...soft };

  test.each(["potting-mix", "sand"])("in %s with soft water, against blossom-end rot", (kind) => {
    expect(verdictOf({ ...bedWith({ soil: { kind } }), ...soft })).toMatchObject({
      kind: "might-help",
      soil: kind,
      stages: ["flowering", "fruit-set", "fruit-growth"],
    });
  });

  test.each(["courgette", "cucumber"])("not of %s, whose rot may be mould", (crop) => {
    expect(verdictOf({ ...bedWith({ soil: { kind: "sand" } }, { crop }), ...soft })).toMatchObject({
      kind: "cannot-tell",
      why: "cause-unclear",
    });
  });

  test("with a soil test below the limit, whatever its pH above 5.5", () => {
    for (const ph of [5.6, 6.5, undefined]) {
      const low = { soil: { kind: "sand", test: { ...enough, calcium: "699 ppm", ph } } };
      expect(kindOf({ ...bedWith(low), ...soft })).toBe("might-help");
    }
  });

  test.each([
    ["loam", { ...bedWith({ soil: { kind: "loam" } }), ...soft }, "soil-not-poor", "soil-test"],
    ["soil of no told kind", { ...bedWith({}), ...soft }, "soil-not-known", "soil-kind"],
    [
      "water that nobody knows",
      { ...poor, source_water: undefined },
      "water-not-known",
      "water-hardness",
    ],
    [
      "hardness of 50 mg/L",
      { ...poor, source_water: { hardness: "50 mg/L" } },
      "water-not-soft",
      "soil-test",
    ],
    [
      "20 mg/L of calcium",
      { ...poor, source_water: { calcium: "20 mg/L" } },
      "water-not-soft",
      "soil-test",
    ],
    [
      "another disorder",
      { ...bedWith({ soil: { kind: "sand" } }, { crop: "celery" }), ...soft },
      "no-trial",
      "soil-test",
    ],
    [
      "a pH in calcium chloride",
      {
        ...bedWith({ soil: { kind: "sand", test: { on: "2027-02-01", ph: 6, ph_in: "cacl2" } } }),
        ...soft,
      },
      "ph-in-cacl2",
      "ph-in-water",
    ],
    [
      "another extract",
      {
        ...bedWith({
          soil: {
            kind: "sand",
            test: { on: "2027-02-01", extract: "mehlich-1", calcium: "50 ppm" },
          },
        }),
        ...soft,
      },
      "no-class-of-extract",
      "soil-test",
    ],
  ])("not with %s", (_, garden, why, decidedBy) => {
    expect(verdictOf(garden)).toEqual({ kind: "cannot-tell", why, decidedBy });
  });

  test("of a spray on which trials disagree it cannot be told", () => {
    expect(verdictOf(poor, {}, "foliar")).toMatchObject({ why: "trials-disagree" });
  });
});

test("the feed's share of the need is told, and is no condition", () => {
  const garden = bedWith({ area: "6 m2" });
  const [none, some] = [0, 3].map((feedG) => sumOf(garden, { feedG }));
  expect(some?.sharePercent?.low).toBeCloseTo(2.94, 2);
  expect(some?.sharePercent?.high).toBeCloseTo(10, 9);
  expect(some?.verdicts).toEqual(none?.verdicts);
});

test("rules that feed come first, and a planting that is not fed has those that would feed it", () => {
  const told = sumOf(bedWith({}, { feed: false })).verdicts;
  expect(told.map(({ feeds }) => feeds)).toEqual([false, false]);
  const fed = sumOf(bedWith({})).verdicts;
  expect(fed.map(({ rule, feeds }) => [rule, feeds])).toEqual([
    ["tomato-cordon-drench", true],
    ["solanaceous-foliar", false],
  ]);
});

test("a crop that needs no feed, and a word that is no crop, have no verdict", () => {
  expect(
    sumOf(bedWith({}, { crop: "carrot", transplanted: undefined, sown: "2027-05-01" })).verdicts,
  ).toEqual([]);
});

describe("lime", () => {
  const sour = { test: { on: "2026-10-01", ph: 5.2 } };
  const lime = { on: "2027-02-20", what: "limestone", amount: "2 kg", fineness: "fine" };

  test("given since the test asks for another test", () => {
    const limed = verdictOf(bedWith({ soil: sour, amendments: [lime] }));
    expect(limed).toEqual({ kind: "lime-first", ph: 5.2, limedOn: "2027-02-20" });
    const before = { ...lime, on: "2026-09-20" };
    const gypsum = { ...lime, what: "gypsum" };
    for (const amendments of [[before], [gypsum]])
      expect(verdictOf(bedWith({ soil: sour, amendments }))).not.toHaveProperty("limedOn");
  });

  test("is not for a bed that blueberries share", () => {
    const berries = { id: "blue", crop: "blueberry", transplanted: undefined, established: true };
    const shared = bedWith({ soil: sour }, {}, berries);
    expect(verdictOf(shared)).toMatchObject({ kind: "lime-first", besideSour: ["blueberry"] });
    expect(verdictOf(bedWith({ soil: sour }))).not.toHaveProperty("besideSour");
  });
});

test("what was dug in and covers the need leaves no hope of a feed", () => {
  const poor = { area: "4 m2", soil: { kind: "sand" } };
  const gypsum = (amount: string) => [{ on: "2027-04-01", what: "gypsum", amount }];
  const with_ = (amount: string) => ({
    ...bedWith({ ...poor, amendments: gypsum(amount) }),
    ...soft,
  });
  // 6 plants on 4 m2 take up 17 x 4 = 68 g at the most; gypsum holds 190 g in a kg at the least.
  expect(verdictOf(with_("359 g"))).toMatchObject({ kind: "cannot-tell", why: "dug-in-covers-it" });
  expect(kindOf(with_("357 g"))).toBe("might-help");
});

test("a pH in calcium chloride may be decided by one in water, also where it is low", () => {
  const soil = { kind: "loam", test: { ...enough, calcium: "300 ppm", ph: 4.2, ph_in: "cacl2" } };
  expect(verdictOf(bedWith({ soil }))).toMatchObject({
    why: "ph-in-cacl2",
    decidedBy: "ph-in-water",
  });
});
