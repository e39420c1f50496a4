// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import type { Amounts } from "../../src/garden/index.js";
import { wasteAdvice } from "../../src/notes/waste-advice.js";
import type { Plan } from "../../src/season/season-plan.js";
import { loadTables } from "../../src/tables.js";
import { planFile, gardenText } from "../support/a-garden.js";
import { aBatch, aSeasonStock } from "../support/a-stock.js";

/** Batches of that volume, out of each of which so much is fed. */
function adviceOf(
  volumeMl: number,
  fedMl: readonly number[],
  amounts: Amounts = "metric",
  from = "2027-07-20",
): string {
  const plan = planFile(gardenText());
  if (!plan.ok) throw new Error("the garden has problems");
  const batches = fedMl.map((_, i) => aBatch(addDays(day(from), i), { volumeMl }));
  const account = batches.map(({ id }, i) => {
    const givenMl = fedMl[i] ?? 0;
    const line = { batch: id, planned: true, openingMl: 0, madeMl: volumeMl, closingMl: 0 };
    return { ...line, givenMl, thrownAwayMl: volumeMl - givenMl };
  });
  const garden: Plan["garden"] = { ...plan.value.garden, amounts };
  const stock = aSeasonStock({ batches, account });
  return wasteAdvice({ ...plan.value, garden, stock }, loadTables()) ?? "";
}

describe("a smaller vessel", () => {
  test("is one for the largest batch, not for all of them", () => {
    const advice = adviceOf(1000, [302, 399]);
    expect(advice).toContain("of 2 L made as 2 batches");
    expect(advice).toContain("a smaller vessel that makes 400 mL a batch is enough");
  });

  test("makes no less than can be made, and is so much smaller that it is worth it", () => {
    expect(adviceOf(400, [85, 116])).toContain("a smaller vessel that makes 250 mL a batch");
    for (const volumeMl of [250, 260]) {
      expect(adviceOf(volumeMl, [85, 116])).not.toContain("vessel");
      expect(adviceOf(volumeMl, [85, 116])).toContain("is thrown away");
    }
  });

  test("makes what is needed in US measures too", () => {
    // 270 mL: 3 tbsp over a cup are 281 mL, 2 are 266.
    expect(adviceOf(1000, [266.5], "us")).toContain("that makes 1 cup + 3 tbsp a batch");
  });
});

describe("an earlier end", () => {
  test("is advised where something is fed before it", () => {
    expect(adviceOf(1000, [302, 399])).toMatch(/an end before 21 Jul, spares batch 21 Jul/);
  });

  test("is not where the feeding has not begun before it", () => {
    expect(adviceOf(1000, [302], "metric", "2027-04-01")).not.toContain("an end before");
    expect(adviceOf(250, [85], "metric", "2027-04-01")).toBe("");
  });
});
