// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import type { Acid } from "../../src/garden/garden.js";
import type { BatchRecipe } from "../../src/season/stock-side.js";
import { makingSteps } from "../../src/stock/making-problem.js";
import {
  afterVisit,
  keepShellsSummary,
  seasonOfStock,
  visitJob,
  visitSummary,
} from "../../src/words/making.js";
import { plain } from "../../src/words/say.js";
import { aBatch, aRecipe, aSeasonStock } from "../support/a-stock.js";

const batch = aBatch("2027-06-12");
const { steps } = aRecipe();
const base = { batch: batch.id, vesselL: 5, steps };
const cases: readonly [Acid, BatchRecipe, string, string][] = [
  [
    "citric",
    { ...base, acidG: 58, waterMl: 1010 },
    "58 g of citric acid in 1.01 L of water",
    "58 g of citric acid, 1.01 L of water",
  ],
  ["vinegar", { ...base, vinegarMl: 1400, waterMl: 0 }, "1.4 L of vinegar", "1.4 L of vinegar"],
];

describe.each(cases)("with %s", (acid, recipe, into, start) => {
  const stock = aSeasonStock({ batches: [batch] }, { acid, recipes: [recipe] });

  test("the shell is stirred into the acid of the garden", () => {
    expect(visitJob(plain, "add-acid", batch, batch.id, stock, "metric")).toContain(
      ` into ${into}, `,
    );
    expect(visitSummary("add-acid", [{ batch, recipe }], acid, "metric")).toMatch(
      new RegExp(`of shell, ${start}$`),
    );
  });
});

test("what comes after each visit is another sentence for each", () => {
  const after = makingSteps.map((step) => afterVisit(step, batch, "metric"));
  expect(new Set(after).size).toBe(makingSteps.length);
  expect(afterVisit("strain", { ...batch, serves: [] }, "metric")).toMatch(
    /use by \d+ \w+ \d{4}\.$/,
  );
});

test("shells that are short are told with those to keep, or alone", () => {
  const from = day("2027-04-01");
  expect(keepShellsSummary(12, 0, from)).toBe(
    "Keep every eggshell from now on: 12 go into the stock",
  );
  expect(keepShellsSummary(12, 1, from)).toMatch(/; 1 eggshell short$/);
  expect(keepShellsSummary(12, 3)).toBe("3 eggshells short for the stock");
});

test("a season tells how its stock is made, or that none needs to be", () => {
  expect(seasonOfStock(aSeasonStock({ batches: [batch] }), 500, "metric")).toMatch(
    /^The season takes 500 mL of stock, poured \w+\. 1 batch to make with citric acid, kept /,
  );
  expect(seasonOfStock(aSeasonStock({ batches: [] }), 500, "metric")).toMatch(
    / No batch needs to be made\.$/,
  );
});
