/** What is poured from which bottle, through the plan of a garden. */
// @ts-nocheck

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { ledgerMl } from "../../src/stock/ledger/ledger.js";
import type { CanMix, Plan } from "../../src/season/season-plan.js";
import { gardenText, planFile, planted } from "../support/a-garden.js";

const today = day("2027-06-01");

function mixesOf(batches: readonly object[], stock: object = {}): CanMix[] {
  return planOf(batches, stock).rounds.flatMap(({ beds }) => beds.flatMap(({ mixes }) => mixes));
}

function planOf(
  batches: readonly object[],
  stock: object,
  water = "27 L",
  amounts = "metric",
): Plan {
  const plan = planFile(
    gardenText({
      ...planted({ water }),
      can: "9 L",
      amounts,
      source_water: { hardness: "120 mg/L" },
      stock: { ...stock, batches },
    }),
    undefined,
    today,
  );
  if (!plan.ok) throw new Error(plan.problems.map(({ message }) => message).join("\n"));
  return plan.value;
}

const vinegar = { id: "v", acid: "vinegar", volume: "500 mL", made: "2027-05-20", keep: "fridge" };
const citric = { id: "c", acid: "citric", volume: "500 mL", made: "2027-05-21", keep: "fridge" };
const total = (amounts: readonly number[]): number => amounts.reduce((sum, n) => sum + n, 0);
const canMl = (mix: CanMix): number =>
  total(mix.fills.map(({ count, stockMl }) => count * stockMl));

describe("a bottle", () => {
  test("is known by its batch: another of equal strength changes nothing of its can", () => {
    const strong = { ...vinegar, strength: "12 g/L" };
    const [alone] = mixesOf([strong], { pour: "shaken" });
    const [beside] = mixesOf([strong, { ...citric, strength: "12 g/L" }], { pour: "shaken" });
    expect(beside?.pours).toMatchObject([{ batch: "v" }]);
    expect(beside?.clearCalciumMgPerL).toBe(alone?.clearCalciumMgPerL);
    expect(beside?.can).toEqual(alone?.can);
    // A vinegar stock holds its calcium dissolved.
    expect(alone?.clearCalciumMgPerL).toBeGreaterThan(40);
  });
});

describe("a can poured from two bottles", () => {
  const weak = { ...citric, id: "weak", strength: "2 g/L", volume: "75 mL" };
  const strong = { ...vinegar, id: "strong", strength: "12 g/L", made: "2027-05-25" };
  const mix = mixesOf([weak, strong], { pour: "shaken" }).find(({ pours }) => pours?.length === 2);

  test("takes what the bottles give, though the weak one is held to the highest rate", () => {
    expect(mix?.pours?.map(({ batch }) => batch)).toEqual(["weak", "strong"]);
    expect(mix && canMl(mix)).toBe(total(mix?.pours?.map(({ ml }) => ml) ?? []));
  });

  test("reaches its target where the highest rate lets it, by more from the strong one", () => {
    const little = { ...weak, volume: "20 mL" };
    const both = mixesOf([little, strong], { pour: "shaken" }).find(
      ({ pours }) => pours?.length === 2,
    );
    const targetMgPerL = both?.feedings[0]?.targetMgPerL ?? 0;
    expect(targetMgPerL).toBeGreaterThan(0);
    expect(both?.calciumMgPerL).toBeCloseTo(targetMgPerL, 6);
  });

  test("says how much of it is from which", () => {
    const each = mix?.fills[0]?.pours ?? [];
    expect(each.map(({ batch }) => batch)).toEqual(["weak", "strong"]);
    expect(total(each.map(({ ml }) => ml))).toBeCloseTo(mix?.fills[0]?.stockMl ?? 0, 9);
    for (const { batch, ml } of mix?.pours ?? [])
      expect(
        total(
          (mix?.fills ?? []).map(
            (fill) => fill.count * (fill.pours?.find((p) => p.batch === batch)?.ml ?? 0),
          ),
        ),
      ).toBeCloseTo(ml, 9);
  });

  test("carries the calcium of both, dissolved as their mixture is", () => {
    const brought = total((mix?.pours ?? []).map((pour) => pour.ml * pour.strengthGPerL));
    expect(mix?.calciumMgPerL).toBeCloseTo(brought / 27, 0);
    // All of it dissolves in so much water, beside what the tap brings.
    const dissolvedMgPerL = mix?.can?.dissolvedCalciumMgPerL ?? 0;
    const tapMgPerL = mix?.tapCalciumMgPerL ?? 0;
    expect(mix?.can?.settlesMgPerL).toBe(0);
    expect(dissolvedMgPerL - tapMgPerL).toBeCloseTo(mix?.calciumMgPerL ?? 0, 0);
  });
});

test("cans, bottles and shortages agree to the hundredth of a mL, in any measures", () => {
  const bottle = fc.record({
    acid: fc.constantFrom("citric", "vinegar"),
    strength: fc.constantFrom("0.8 g/L", "2 g/L", "9 g/L", "12 g/L", "19 g/L"),
    volume: fc.integer({ min: 20, max: 160 }).map((ml) => `${ml} mL`),
  });
  fc.assert(
    fc.property(
      fc.array(bottle, { minLength: 1, maxLength: 4 }),
      fc.constantFrom("5 L", "11 L", "27 L", "40 L"),
      fc.constantFrom("metric", "us", "imperial"),
      (bottles, water, amounts) => {
        const batches = bottles.map((b, i) => {
          return { ...b, id: `b${i}`, made: "2027-05-20", keep: "fridge" };
        });
        const plan = planOf(batches, {}, water, amounts);
        const short = plan.stock?.making.shortages ?? [];
        for (const { day: on, beds } of plan.rounds)
          for (const mix of beds.flatMap(({ mixes }) => mixes)) {
            const given = total((mix.pours ?? []).map(({ ml }) => ml));
            const lost = total(short.filter((s) => s.day === on).map(({ ml }) => ml));
            expect(given + lost).toBeCloseTo(canMl(mix), 9);
            expect(mix.stockMl).toBe(ledgerMl(canMl(mix)));
          }
      },
    ),
    { numRuns: 60 },
  );
});
