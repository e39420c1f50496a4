// @ts-nocheck
import { describe, expect, test } from "vitest";
import type { Amounts } from "../../src/garden/garden.js";
import { wishesBeyondLimits } from "../../src/rules/beyond-limits.js";
import type { FeedRule } from "../../src/rules/rule.js";
import { loadTables } from "../../src/tables.js";
import { aPlanting, type PlantingDiffers } from "../support/a-garden.js";

// 2.5 mL per L, at most 5; 10 to 18 days.
const rule = loadTables().builtInRules.find((r) => r.id === "solanaceous-drench") as FeedRule;

function refused(
  differs: PlantingDiffers,
  rules: readonly FeedRule[] = [rule],
  amounts: Amounts = "metric",
): string[] {
  return wishesBeyondLimits(aPlanting(differs), rules, amounts).map(
    ({ path, message, mend }) => `${String(path.at(-1))}: ${message}: ${mend}`,
  );
}

describe("wishes within the limits are granted", () => {
  test.each<PlantingDiffers>([
    {},
    { level: 1.5 },
    { level: 2 },
    { level: 0.1 },
    { rate: "5 mL per L" },
    { rate: "20 mL in 4 L" },
    { rate: "2 mL per L", level: 2.5 },
    { interval: "10 days" },
    { interval: "18 days" },
  ])("%j", (differs) => {
    expect(refused(differs)).toEqual([]);
  });
});

const reason =
  "Twice the usual rate is the most that growers use. Far above it calcium citrate stops dissolving, in hard water first, and leaves a white crust";

describe("a wish beyond a limit is refused with the rule's reason", () => {
  test.each<[PlantingDiffers, string]>([
    [
      { level: 2.1 },
      `level: 5.25 mL per L is above the limit of the rule solanaceous-drench, 5 mL per L (${reason}): write a level of 2 or less`,
    ],
    [
      { rate: "6 mL per L" },
      `rate: 6 mL per L is above the limit of the rule solanaceous-drench, 5 mL per L (${reason}): write 5 mL per L or less`,
    ],
    [
      { rate: "3 mL per L", level: 2 },
      `rate: 6 mL per L is above the limit of the rule solanaceous-drench, 5 mL per L (${reason}): write 5 mL per L or less`,
    ],
    [
      { interval: "9 days" },
      "interval: 9 days is outside the interval of the rule solanaceous-drench, 10 to 18 days: write 10 to 18 days, or write a rule of your own (`rules:`)",
    ],
    [
      { interval: "19 days" },
      "interval: 19 days is outside the interval of the rule solanaceous-drench, 10 to 18 days: write 10 to 18 days, or write a rule of your own (`rules:`)",
    ],
  ])("%j", (differs, expected) => {
    expect(refused(differs)).toEqual([expected]);
  });

  test("rate and interval both", () => {
    expect(refused({ rate: "6 mL per L", interval: "9 days" })).toHaveLength(2);
  });

  test("each rule that feeds the planting has its say; the same words once", () => {
    const spray = { ...rule, id: "spray", highestRateMlPerL: 4 };
    expect(refused({ rate: "6 mL per L" }, [rule, spray])).toHaveLength(2);
    expect(refused({ rate: "6 mL per L" }, [rule, rule])).toHaveLength(1);
    expect(refused({ rate: "4.5 mL per L" }, [rule, spray])).toHaveLength(1);
  });
});

test("a US grower is told in teaspoons to the gallon", () => {
  expect(refused({ rate: "6 mL per L" }, [rule], "us")).toEqual([
    expect.stringMatching(/^rate: 4\.61 tsp per gal is above .*: write 3\.84 tsp per gal or less$/),
  ]);
});
