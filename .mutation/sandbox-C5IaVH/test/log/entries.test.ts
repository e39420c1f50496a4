// @ts-nocheck
import { expect, test } from "vitest";
import { entriesOfDay } from "../../src/log/entries.js";
import { aBedRound, aFeeding, aFill, aMix, aPlan, aRound } from "../support/a-plan.js";

/** Amounts written for plantings that share a can of so much stock, by the water each gets. */
function written(stockMl: number, watersL: readonly number[]): (string | undefined)[] {
  const feedings = watersL.map((waterL, i) => aFeeding({ planting: `p${i}`, waterL }));
  const mix = aMix({ feedings, fills: [aFill({ stockMl })] });
  const plan = aPlan({ rounds: [aRound({ beds: [aBedRound({ mixes: [mix] })] })] });
  return entriesOfDay(plan, aRound().day).map(({ stock }) => stock);
}

test("shares that do not come out even go up where most of a step is left over", () => {
  // 2.7, 3.4 and 3.9 steps of 0.1 mL.
  expect(written(1, [2.7, 3.4, 3.9])).toEqual(["0.3 mL", "0.3 mL", "0.4 mL"]);
});

test("shares of spoons are written in hundredths, so that they add up to what the cans pour", () => {
  expect(written(1.23, [1, 1])).toEqual(["0.62 mL", "0.61 mL"]);
  expect(written(18.48, [1])).toEqual(["18.48 mL"]);
});

test("where as much is left over of each, the first go up", () => {
  expect(written(1, [1, 1, 1])).toEqual(["0.4 mL", "0.3 mL", "0.3 mL"]);
});
