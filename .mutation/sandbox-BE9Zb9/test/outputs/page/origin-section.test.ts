// @ts-nocheck
import { expect, test } from "vitest";
import { originSection } from "../../../src/outputs/page/origin-section.js";
import { gardenPage } from "../../../src/outputs/page/page.js";
import { aPlan, aPlantingCalcium } from "../../support/a-plan.js";

const words = (calcium: Parameters<typeof aPlan>[0] = {}) =>
  (originSection(aPlan(calcium))?.markup ?? "").replace(/<[^>]*>/g, " ").replace(/\s+/g, " ");

test("a season's water is compared with a season's feed", () => {
  expect(words({ calcium: [aPlantingCalcium()] })).toContain(
    "your water brings 12 to 18 g of calcium to what is fed, 4 to 6 times the 3 g of the feed",
  );
});

test("where the water is not known, the keys that tell it are", () => {
  const { water, ...unknown } = aPlantingCalcium();
  expect(water).toBeDefined();
  expect(words({ calcium: [unknown] })).toContain("source_water:");
});

test("there is no section where there is nothing to say", () => {
  const { need, ...basil } = aPlantingCalcium({ verdicts: [] });
  expect(need).toBeDefined();
  expect(originSection(aPlan({ calcium: [basil] }))).toBeUndefined();
});

test("the reasons of a planting carry its verdict with the arithmetic and the sources", () => {
  const page = gardenPage(aPlan({ calcium: [aPlantingCalcium()] })).replace(/\s+/g, " ");
  const why = page.slice(page.indexOf('id="why"'));
  expect(why).toContain("500 L x 24 to 36 mg per L = 12 to 18 g");
  expect(why).toContain('<dd dir="auto">a trial of whole tomato plants</dd>');
  expect(why).toContain("Soil drench against blossom-end rot: cannot tell.");
});
