/** Laws of the sum of calcium and of its verdicts, over many gardens; the seed is fixed. */
// @ts-nocheck

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Judgement, PlantingCalcium } from "../../src/calcium/index.js";
import { bedWith, sumOf } from "./a-sum.js";

const runs = { seed: 1127, numRuns: 100 };

/** A garden with one planting, as numbers; each may be unknown. */
interface Case {
  readonly crop: string;
  readonly plants: number | undefined;
  readonly areaM2: number | undefined;
  readonly kind: string | undefined;
  readonly extract: string;
  readonly calciumPpm: number | undefined;
  readonly ph: number | undefined;
  readonly phIn: string;
  readonly hardnessMgPerL: number | undefined;
  readonly waterL: number | undefined;
  readonly gypsumG: number | undefined;
  readonly feedG: number;
}

const perhaps = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: undefined });
const aCase: fc.Arbitrary<Case> = fc.record({
  crop: fc.constantFrom(
    "tomato",
    "sweet pepper",
    "courgette",
    "celery",
    "lettuce",
    "strawberry",
    "potato",
  ),
  plants: perhaps(fc.integer({ min: 1, max: 40 })),
  areaM2: perhaps(fc.integer({ min: 1, max: 30 })),
  kind: perhaps(fc.constantFrom("loam", "sand", "potting-mix")),
  extract: fc.constantFrom(
    "mehlich-3",
    "modified-morgan",
    "ammonium-acetate",
    "mehlich-1",
    "other",
  ),
  calciumPpm: perhaps(fc.oneof(fc.integer({ min: 100, max: 2000 }), fc.constantFrom(700, 1000))),
  ph: perhaps(fc.integer({ min: 45, max: 75 }).map((tenths) => tenths / 10)),
  phIn: fc.constantFrom("water", "water", "cacl2"),
  hardnessMgPerL: perhaps(fc.oneof(fc.integer({ min: 1, max: 400 }), fc.constant(50))),
  waterL: perhaps(fc.integer({ min: 0, max: 9000 })),
  gypsumG: perhaps(fc.integer({ min: 1, max: 3000 })),
  feedG: fc.integer({ min: 0, max: 20 }),
});

/** The same amounts in the units of the grower's choice. */
interface Written {
  readonly calcium: (ppm: number) => string;
  readonly hardness: (mgPerL: number) => string;
  readonly mass: (g: number) => string;
  readonly area: (m2: number) => string;
}

const metric: Written = {
  calcium: (ppm) => `${ppm} ppm`,
  hardness: (mgPerL) => `${mgPerL} mg/L`,
  mass: (g) => `${g} g`,
  area: (m2) => `${m2} m2`,
};

function garden(one: Case, written = metric) {
  const { calciumPpm, ph, gypsumG, areaM2, hardnessMgPerL } = one;
  const isTested = calciumPpm !== undefined || ph !== undefined;
  const calcium =
    calciumPpm === undefined ? {} : { calcium: written.calcium(calciumPpm), extract: one.extract };
  const soil = {
    ...(one.kind === undefined ? {} : { kind: one.kind }),
    ...(isTested ? { test: { on: "2027-02-01", ...calcium, ph, ph_in: one.phIn } } : {}),
  };
  const bed = {
    area: areaM2 === undefined ? undefined : written.area(areaM2),
    soil: Object.keys(soil).length === 0 ? undefined : soil,
    amendments:
      gypsumG === undefined
        ? undefined
        : [{ on: "2027-03-15", what: "gypsum", amount: written.mass(gypsumG) }],
  };
  const planting =
    one.crop === "potato"
      ? { crop: one.crop, plants: one.plants, transplanted: undefined, sown: "2027-04-15" }
      : { crop: one.crop, plants: one.plants };
  return {
    ...bedWith(bed, planting),
    source_water:
      hardnessMgPerL === undefined ? undefined : { hardness: written.hardness(hardnessMgPerL) },
  };
}

function sum(one: Case, written?: Written): PlantingCalcium {
  const { waterL, feedG } = one;
  return sumOf(garden(one, written), { feedG, ...(waterL === undefined ? {} : { waterL }) });
}

/** From what speaks most against feeding to what speaks for it. */
const likelihood: readonly Judgement["kind"][] = [
  "unlikely-whatever-the-soil",
  "lime-first",
  "unlikely-soil-has-enough",
  "unlikely-water-covers-it",
  "cannot-tell",
  "might-help",
];
// Both say that it is unlikely: neither is likelier than the other.
const rank = (kind: Judgement["kind"]): number =>
  Math.min(likelihood.indexOf(kind), likelihood.indexOf(kind) === 3 ? 2 : Infinity);

describe("the sum adds up", () => {
  test("what is brought is water, amendments and feed, and nothing else", () => {
    fc.assert(
      fc.property(aCase, (one) => {
        const { water, amendments, feed, brought } = sum(one);
        const parts = [water, feed, ...amendments.map(({ thisSeason }) => thisSeason)];
        if (brought === undefined) {
          expect(parts.some((part) => part?.wholeG === undefined)).toBe(true);
          return;
        }
        for (const end of ["low", "high"] as const) {
          const all = parts.reduce((total, part) => total + (part?.wholeG?.[end] ?? NaN), 0);
          expect(brought.wholeG?.[end]).toBeCloseTo(all, 9);
        }
      }),
      runs,
    );
  });

  test("a plant's part times plants, and a m2's times the area, is the whole", () => {
    fc.assert(
      fc.property(aCase, (one) => {
        const { need, soil, water, amendments, feed, plants, areaM2 } = sum(one);
        const amounts = [
          need,
          soil,
          water,
          feed,
          ...amendments.map(({ nextSeason }) => nextSeason),
        ];
        for (const { wholeG, perPlantG, perM2G } of amounts.flatMap((amount) => amount ?? [])) {
          if (wholeG === undefined) continue;
          for (const end of ["low", "high"] as const) {
            if (perPlantG) expect(perPlantG[end] * (plants ?? NaN)).toBeCloseTo(wholeG[end], 6);
            if (perM2G) expect(perM2G[end] * (areaM2 ?? NaN)).toBeCloseTo(wholeG[end], 6);
          }
          expect(wholeG.low).toBeLessThanOrEqual(wholeG.high);
        }
      }),
      runs,
    );
  });
});

describe("no verdict changes when a unit does", () => {
  const others: [string, Written][] = [
    [
      "lb/acre, French degrees, kg, hectares",
      {
        calcium: (ppm) => `${2 * ppm} lb/acre`,
        hardness: (mgPerL) => `${mgPerL / 10} fH`,
        mass: (g) => `${g / 1000} kg`,
        area: (m2) => `${m2 / 10_000} ha`,
      },
    ],
    [
      "meq/100 g, grains, ounces, square feet",
      {
        calcium: (ppm) => `${ppm / 200.39} meq/100 g`,
        hardness: (mgPerL) => `${mgPerL / 17.118061045270945} gpg`,
        mass: (g) => `${g / 28.349523125} oz`,
        area: (m2) => `${m2 / 0.09290304} ft2`,
      },
    ],
  ];
  test.each(others)("%s", (_, written) => {
    fc.assert(
      fc.property(aCase, (one) => {
        const [before, after] = [sum(one), sum(one, written)];
        const told = ({ verdicts }: PlantingCalcium) =>
          verdicts.map(({ judgement }) => ({
            kind: judgement.kind,
            ...(judgement.kind === "cannot-tell" ? judgement : {}),
          }));
        expect(told(after)).toEqual(told(before));
        expect(after.brought?.wholeG?.high ?? 0).toBeCloseTo(before.brought?.wholeG?.high ?? 0, 6);
        expect(after.soil?.perM2G?.high ?? 0).toBeCloseTo(before.soil?.perM2G?.high ?? 0, 6);
      }),
      runs,
    );
  });
});

describe("more calcium never makes feeding likelier", () => {
  const more: [string, (one: Case, by: number) => Case][] = [
    ["in the soil", (one, by) => ({ ...one, calciumPpm: one.calciumPpm && one.calciumPpm * by })],
    [
      "in the water",
      (one, by) => ({ ...one, hardnessMgPerL: one.hardnessMgPerL && one.hardnessMgPerL * by }),
    ],
    ["by more water", (one, by) => ({ ...one, waterL: one.waterL && one.waterL * by })],
    ["by amendments", (one, by) => ({ ...one, gypsumG: Math.round((one.gypsumG ?? 10) * by) })],
  ];
  test.each(more)("%s", (_, richer) => {
    fc.assert(
      fc.property(aCase, fc.integer({ min: 1, max: 9 }), (one, by) => {
        const [before, after] = [sum(one).verdicts, sum(richer(one, by)).verdicts];
        expect(after.length).toBe(before.length);
        after.forEach(({ judgement }, i) => {
          expect(rank(judgement.kind)).toBeLessThanOrEqual(
            rank(before[i]?.judgement.kind ?? "might-help"),
          );
        });
      }),
      runs,
    );
  });
});

test("no verdict depends on the feed", () => {
  fc.assert(
    fc.property(aCase, (one) => {
      expect(sum({ ...one, feedG: one.feedG + 5 }).verdicts).toEqual(sum(one).verdicts);
    }),
    runs,
  );
});

describe("where it cannot be told", () => {
  /** What a grower might find out, as extreme as it comes. */
  const found: Record<string, (one: Case) => Case[]> = {
    "water-hardness": (one) => [1, 300].map((hardnessMgPerL) => ({ ...one, hardnessMgPerL })),
    "ph-in-water": (one) => [6.5, 5.5].map((ph) => ({ ...one, ph, phIn: "water" })),
    watering: (one) => [{ ...one, waterL: 1e5 }],
    "soil-kind": (one) => ["sand", "loam"].map((kind) => ({ ...one, kind })),
    "soil-test": (one) =>
      [1, 9000].map((calciumPpm) => ({
        ...one,
        calciumPpm,
        extract: "mehlich-3",
        ph: one.phIn === "water" ? (one.ph ?? 6.5) : 6.5,
        phIn: "water",
      })),
  };

  test("the fact that is to decide it does", () => {
    fc.assert(
      fc.property(aCase, (one) => {
        sum(one).verdicts.forEach(({ judgement }, i) => {
          if (judgement.kind !== "cannot-tell" || judgement.decidedBy === undefined) return;
          const kinds = found[judgement.decidedBy]?.(one).map((other) => sum(other).verdicts[i]);
          expect(kinds?.some((other) => other?.judgement.kind !== "cannot-tell")).toBe(true);
        });
      }),
      runs,
    );
  });
});
