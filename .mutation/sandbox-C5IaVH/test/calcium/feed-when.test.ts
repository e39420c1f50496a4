/** `feed_when: might-help`: which feedings a verdict leaves, and what is told of it. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { feedWhen, feedingVerdicts } from "../../src/calcium/index.js";
import type { RuleMatch } from "../../src/rules/match.js";
import { verdictWords } from "../../src/words/index.js";
import { aGarden, type GardenDiffers } from "../support/a-garden.js";
import { bedWith, needsOf, tables } from "./a-sum.js";

function matchOf(differs: GardenDiffers): {
  before: RuleMatch | undefined;
  after: RuleMatch | undefined;
} {
  const garden = aGarden(differs);
  const needs = needsOf(differs);
  const verdicts = feedingVerdicts(garden, needs, new Map(), tables);
  const words = (verdict: Parameters<typeof verdictWords>[0]) => verdictWords(verdict, "metric");
  const [need] = needs;
  return { before: need?.match, after: need && feedWhen(garden, need, verdicts, words) };
}

const mightHelp = { feed_when: "might-help" };
const poor = { ...bedWith({ soil: { kind: "sand" } }), source_water: { hardness: "30 mg/L" } };

test("always, which is the default, changes nothing", () => {
  for (const wish of [{}, { feed_when: "always" }]) {
    const { before, after } = matchOf({ ...bedWith({}), ...wish });
    expect(after).toBe(before);
  }
});

test("a planting that the feed might help is fed, from its first flower to the growth of its fruit", () => {
  const { before, after } = matchOf({ ...poor, ...mightHelp });
  expect(before?.spans).toHaveLength(1);
  const [span, ...others] = after?.spans ?? [];
  expect(others).toEqual([]);
  expect(span?.from).toBe(before?.spans[0]?.from);
  const life = needsOf(poor)[0]?.life.spans;
  expect(span?.to).toBe(life?.find(({ stage }) => stage === "fruit-growth")?.to);
  expect((span?.to ?? "") < (before?.spans[0]?.to ?? "")).toBe(true);
  expect(after?.reason).toContain("might help. Sand holds little calcium");
});

test("any other is not, and is told why", () => {
  const { after } = matchOf({ ...bedWith({}), ...mightHelp });
  expect(after?.spans).toEqual([]);
  expect(after?.reason).toMatch(
    /^not fed, as `feed_when: might-help` asks: Soil drench against blossom-end rot: cannot tell\. .*a soil test may decide it/,
  );
});

describe("a grower's own word stands, and is told", () => {
  test.each([true, "drench", "both"])("feed: %s", (feed) => {
    const { before, after } = matchOf({ ...bedWith({}, { feed }), ...mightHelp });
    expect(before?.spans.length).toBeGreaterThan(0);
    expect(after?.spans).toEqual(before?.spans);
    expect(after?.reason).toContain("Fed because its `feed:` asks for it:");
  });
});

test("adds no feeding: what is not fed is told as before", () => {
  const { before, after } = matchOf({ ...bedWith({}, { crop: "lettuce" }), ...mightHelp });
  expect(after).toBe(before);
});
