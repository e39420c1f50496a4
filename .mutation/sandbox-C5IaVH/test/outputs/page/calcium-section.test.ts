// @ts-nocheck
import { describe, expect, test } from "vitest";
import { calciumSection, canCalcium } from "../../../src/outputs/page/calcium-section.js";
import { aBedRound, aFeeding, aMix, aPlan, aRound } from "../../support/a-plan.js";

const plan = (...mixes: ReturnType<typeof aMix>[]) =>
  aPlan({ rounds: [aRound({ beds: [aBedRound({ mixes })] })] });

describe("calcium in a full can", () => {
  test("is what the mix holds in a litre, times the can", () => {
    const mix = aMix({
      rateMlPerL: 2.5,
      calciumMgPerL: 50,
      tapCalciumMgPerL: 48,
      clearCalciumMgPerL: 3,
    });
    expect(canCalcium(plan(mix))).toEqual([
      {
        crops: ["tomato"],
        route: "drench",
        vesselL: 9,
        fromStockMg: 450,
        fromTapMg: 432,
        clearMg: 27,
        stockMl: 22.5,
      },
    ]);
  });

  test("of a spray is that of a full sprayer", () => {
    const [can] = canCalcium(plan(aMix({ route: "foliar", calciumMgPerL: 90 })));
    expect(can).toMatchObject({ vesselL: 5, fromStockMg: 450 });
  });

  test("is told once for all crops with the same can", () => {
    const pepper = aMix({
      feedings: [aFeeding({ crop: "pepper", cropName: "sweet pepper (bell pepper)" })],
    });
    expect(canCalcium(plan(aMix(), pepper, aMix())).map(({ crops }) => crops)).toEqual([
      ["tomato", "sweet pepper"],
    ]);
  });

  test("is told for each strength, strongest first, drenches before sprays", () => {
    const cans = canCalcium(
      plan(aMix({ route: "foliar" }), aMix({ calciumMgPerL: 40 }), aMix({ calciumMgPerL: 60 })),
    );
    expect(cans.map(({ route, fromStockMg }) => [route, fromStockMg])).toEqual([
      ["drench", 540],
      ["drench", 360],
      ["foliar", 250],
    ]);
  });
});

describe("what is said of the tap", () => {
  const words = (mix: ReturnType<typeof aMix>) =>
    (calciumSection(plan(mix))?.markup ?? "").replace(/<[^>]*>/g, "").replace(/\s+/g, " ");

  test("is never a can's water beside a can's stock: the sum tells a season's", () => {
    expect(words(aMix({ calciumMgPerL: 40, tapCalciumMgPerL: 48 }))).not.toMatch(/already brings/);
  });

  test("is the most that it can be, where hardness alone is known", () => {
    const tap = { calciumMgPerL: 40, tapCalciumMgPerL: 48 };
    expect(words(aMix({ ...tap, tapCalciumAtMost: true }))).toContain("up to 432 mg from the tap");
    expect(words(aMix(tap))).not.toContain("up to");
  });

  test("is how to find out, when it is not known", () => {
    expect(words(aMix())).toContain("give its hardness");
    expect(words(aMix({ tapCalciumMgPerL: 48 }))).not.toContain("give its hardness");
  });

  test("is nothing where nothing is fed", () => {
    expect(calciumSection(aPlan({ rounds: [] }))).toBeUndefined();
  });
});
