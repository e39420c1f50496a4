/** Why the feeding of a planting ends where it ends, through whole plans. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import type { FeedingSpan } from "../../src/season/season-plan.js";
import { aSeason, type PlantingDiffers, planted } from "../support/a-garden.js";

function spanOf(differs: PlantingDiffers, ownRules?: string): FeedingSpan | undefined {
  return aSeason(planted(differs), ownRules).plantings[0]?.feeding;
}

const rule = (more: string): string => `version: 1
rules:
  - id: tomato-cordon-drench
    crops: [tomato]
    rate: 2 mL per L
    interval: { shortest: 10 days, target: 14 days, longest: 18 days }
${more}`;

test("a planting that is not fed has no span", () => {
  expect(spanOf({ feed: false })).toBeUndefined();
});

test("first and last are days of its rounds", () => {
  const plan = aSeason(planted({}));
  expect(plan.plantings[0]?.feeding).toMatchObject({
    first: plan.rounds[0]?.day,
    last: plan.rounds.at(-1)?.day,
  });
});

describe("the end", () => {
  test.each<[string, PlantingDiffers, string | undefined, string, string]>([
    [
      "after as many as the rule gives",
      {},
      undefined,
      "The rule gives 4 feedings.",
      "through: harvest",
    ],
    [
      "before the last pick that the grower says, short of its number",
      { picked_until: "2027-08-20" },
      undefined,
      "The last pick is on 20 Aug, and a feeding in the 28 days before it",
      "picked_until",
    ],
    [
      "with the last pick",
      { picked_until: "2027-08-20", through: "harvest" },
      undefined,
      "The last pick is on 20 Aug.",
      "picked_until",
    ],
    [
      "with its removal",
      { removed: "2027-07-05" },
      undefined,
      "It is removed on 5 Jul.",
      "removed",
    ],
    ["with the season", { through: "harvest" }, undefined, "The season ends on 31 Oct.", "season"],
    [
      "with a stage",
      {},
      rule("    stages: [flowering, fruit-set]"),
      "The rule feeds until fruit set ends, on 2 Jul, and no further feeding falls due by then.",
      "through: harvest",
    ],
    [
      "before harvest",
      {},
      rule("    stages: [fruit-growth, ripening]\n    stop_before_harvest: 3 days"),
      "Harvest begins on 1 Aug, and nothing is given in the 3 days before it.",
      "days_to_harvest",
    ],
  ])("comes %s", (_, differs, ownRules, why, key) => {
    const span = spanOf(differs, ownRules);
    expect(span?.key).toBe(key);
    expect(span?.why.startsWith(why), span?.why).toBe(true);
  });
});
