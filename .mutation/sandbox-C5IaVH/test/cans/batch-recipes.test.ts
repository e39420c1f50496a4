// @ts-nocheck
import { describe, expect, it } from "vitest";
import { batchRecipes } from "../../src/cans/batch-recipes.js";
import { loadTables } from "../../src/tables.js";
import { aGarden, aSeason } from "../support/a-garden.js";
import { aBatch } from "../support/a-stock.js";

const { stock: settings } = aGarden();
const batches = [
  aBatch("2027-06-12"),
  aBatch("2027-07-12", { volumeMl: 500 }),
  aBatch("2027-08-12"),
];

describe("recipes of the batches of a making plan", () => {
  const [first, half, last] = batchRecipes(
    batches,
    { stock: settings, amounts: "metric" },
    loadTables(),
  );

  it("come in the order of the batches and name them", () => {
    expect([first, half, last].map((recipe) => recipe?.batch)).toEqual(batches.map(({ id }) => id));
  });

  it("are in proportion to their volume", () => {
    expect(half?.acidG).toBeCloseTo((first?.acidG ?? 0) / 2, 6);
    expect(half?.waterMl).toBeCloseTo((first?.waterMl ?? 0) / 2, 6);
    expect({ ...last, batch: "" }).toEqual({ ...first, batch: "" });
  });

  it("tell every step of making", () => {
    expect(first?.steps.map(({ key }) => key)).toEqual([
      "dry-shells",
      "grind",
      "mix",
      "wait",
      "check",
      "strain",
      "store",
      "use",
    ]);
  });

  it("name vinegar and no water where vinegar is the acid", () => {
    const [recipe] = batchRecipes(
      batches,
      { stock: { ...settings, acid: "vinegar" }, amounts: "metric" },
      loadTables(),
    );
    expect(recipe).not.toHaveProperty("acidG");
    expect(recipe?.vinegarMl).toBeGreaterThan(1000);
    expect(recipe?.waterMl).toBe(0);
  });
});

describe("a plan's batches and their recipes", () => {
  const { stock } = aSeason();

  it("agree on shells and bottles", () => {
    expect(stock?.making.batches.length).toBeGreaterThan(0);
    stock?.making.batches.forEach((batch, i) => {
      const recipe = stock.recipes[i];
      const text = recipe?.steps.map((step) => step.text).join("\n");
      expect(recipe?.batch).toBe(batch.id);
      expect(text).toContain(`Rinse ${batch.eggs} eggshells`);
      expect(text).toMatch(batch.bottles === 1 ? /into a bottle of/ : / bottles of/);
    });
  });
});
