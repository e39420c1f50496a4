// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { bottleLives, stockSteps } from "../../src/outputs/bottle-lives.js";
import type { Plan } from "../../src/season/season-plan.js";
import type { SeasonStock } from "../../src/season/stock-side.js";
import { oddNames, planOf, sixtyBeds, weirCottage } from "./gardens.js";

function stockOf({ stock }: Plan): SeasonStock {
  if (stock === undefined) throw new Error("no stock");
  return stock;
}

describe("bottles of the season", () => {
  const stock = stockOf(planOf(weirCottage));

  test("are those in hand, then those to make, with their days", () => {
    const [first, second, ...more] = bottleLives(stock);
    expect(first).toMatchObject({ id: "B1", planned: false, volumeMl: 300 });
    const [batch] = stock.making.batches;
    expect(second).toMatchObject({
      id: batch?.id,
      planned: true,
      readyOn: batch?.readyOn,
      useBy: batch?.useBy,
    });
    expect(more).toHaveLength(stock.making.batches.length - 1);
  });

  test("in hand have the days and strength that the garden file gives them", () => {
    expect(bottleLives(stock)[0]).toMatchObject({ readyOn: "2027-05-08", useBy: "2027-08-06" });
    const { inHand, ...unknown } = stock;
    expect(bottleLives(stock)[0]?.strengthGPerL).toBe(inHand?.[0]?.strengthGPerL);
    expect(bottleLives(unknown)[0]).toEqual({ id: "B1", planned: false, volumeMl: 300 });
  });
});

describe.each([
  ["one garden", planOf(weirCottage)],
  ["US measures", planOf(oddNames)],
  ["sixty beds", planOf(sixtyBeds())],
])("stock on hand in %s", (_, plan) => {
  const stock = stockOf(plan);
  const { account, draws } = stock.making;
  const steps = stockSteps(plan, day("2027-05-15"));

  test("begins with what is in the bottles and ends with what the ledger says is left", () => {
    const first = draws.filter((d) => d.day === "2027-05-15").reduce((sum, d) => sum + d.ml, 0);
    const made = stock.making.batches
      .filter((b) => b.readyOn === "2027-05-15")
      .reduce((sum, b) => sum + b.volumeMl, 0);
    const opening = account.reduce((sum, line) => sum + line.openingMl, 0);
    expect(steps[0]).toEqual({ from: "2027-05-15", ml: opening + made - first });
    const closing = account.reduce((sum, line) => sum + line.closingMl, 0);
    expect(steps.at(-1)?.ml).toBeCloseTo(closing, 6);
  });

  test("changes on the days of the ledger, in order, and is never less than nothing", () => {
    const days = steps.map(({ from }) => from);
    expect(days).toEqual([...days].sort());
    expect(Math.min(...steps.map(({ ml }) => ml))).toBeGreaterThanOrEqual(0);
    for (const draw of draws) expect(days).toContain(draw.day);
  });
});

test("stock of the past is what left the bottles by a round, from the day they were made on", () => {
  const log = `
log:
  - { on: 2027-06-05, planting: toms, stock: 40 mL, batch: B1 }
`;
  const plan = planOf(weirCottage + log, "2027-06-09");
  const left = stockOf(plan).making.account.find(({ batch }) => batch === "B1")?.openingMl ?? 0;
  const steps = stockSteps(plan, day("2027-03-01")).filter(({ from }) => from < plan.today);
  expect(steps).toEqual([
    { from: "2027-03-01", ml: 0 },
    { from: "2027-05-08", ml: left + 40 },
    { from: "2027-06-05", ml: left },
  ]);
});
