// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { calciumCards, type CardOptions } from "../../src/outputs/calcium-card.js";
import { html } from "../../src/outputs/html.js";
import { aPlantingCalcium, aVerdict } from "../support/a-plan.js";

const range = (low: number, high: number) => ({ low, high });
type Sums = Parameters<typeof calciumCards>[0];
const markup = (sums: Sums, options: Partial<CardOptions> = {}) =>
  calciumCards(sums, { amounts: "metric", ...options }).markup;
const words = (...call: Parameters<typeof markup>) =>
  markup(...call)
    .replace(/<[^>]*>/g, " ")
    .replace(/\s+/g, " ");

describe("a card", () => {
  test("tells what is taken up and what brings it, on the plant and on the ground", () => {
    const text = words([aPlantingCalcium()]);
    expect(text).toContain("Takes up 5 to 10 g a plant, 7.5 to 15 g per m2");
    expect(text).toContain("Tap water 2 to 3 g a plant, 3 to 4.5 g per m2");
    expect(text).toContain("Feed 0.5 g a plant, 0.75 g per m2 5 to 10 % of what it takes up");
    expect(text).toContain("cannot tell");
    expect(words([aPlantingCalcium()], { amounts: "us" })).toContain("0.7 to 1.4 g per ft2");
  });

  test("draws all bars on one scale: the least filled, open up to the most", () => {
    const [need = "", water = "", feed = ""] =
      markup([aPlantingCalcium()]).match(/<svg[\s\S]*?<\/svg>/g) ?? [];
    // 15 g on each m2 is the longest.
    expect(need).toMatch(/class="least"\s+x="0%"\s+width="50%"/);
    expect(need).toMatch(/class="most"\s+x="50%"\s+width="50%"/);
    expect(water).toMatch(/class="least"\s+x="0%"\s+width="20%"/);
    expect(water).toMatch(/class="most"\s+x="20%"\s+width="10%"/);
    expect(feed).toMatch(/class="least"\s+x="0%"\s+width="5%"/);
    expect(feed).not.toContain('class="most"');
    // Where what is taken up begins and ends.
    for (const bar of [water, feed]) expect(bar).toMatch(/x1="50%"[\s\S]*x1="100%"/);
  });

  test("keeps the soil off the scale", () => {
    const soil = {
      perM2G: range(204, 204),
      takenPercent: range(4, 8),
      extractName: "Mehlich-3",
      test: {
        on: day("2026-11-02"),
        extract: "mehlich-3" as const,
        calciumPpm: 850,
        ph: 6.3,
        phIn: "water" as const,
        depthCm: 20,
      },
    };
    const one = [aPlantingCalcium({ soil })];
    expect(words(one)).toContain("Soil (not on the scale): test of 2 November 2026: 850 ppm");
    expect(words(one)).toContain("204 g per m2");
    expect(words(one)).toContain("takes 4 to 8 %");
    expect(markup(one).match(/<svg/g)).toHaveLength(3);
    // What each takes of it differs.
    expect(words([...one, ...one])).not.toContain("takes 4 to 8 %");
  });

  test("says what is not known, and why there are no bars", () => {
    const { need, water, ...rest } = aPlantingCalcium();
    expect(words([rest])).toContain("Takes up no figure of it was found Tap water not known");
    const text = words([
      { ...rest, need: { ...need, sources: [] }, feed: { wholeG: range(2, 2) } },
    ]);
    expect(text).toContain("Feed 2 g in all");
    expect(text).toContain("Without bars");
    expect(water).toBeDefined();
  });

  test("names whose figures stand in, and marks where they are from", () => {
    const need = { perM2G: range(11, 12), borrowedFrom: "cantaloupe (muskmelon)", sources: ["x"] };
    const text = words([aPlantingCalcium({ need: { ...need, isWeak: true } })], {
      footnotes: ({ sources }) => html`<sup>${sources.length}</sup>`,
    });
    expect(text).toContain("11 to 12 g per m2 1 by figures of cantaloupe, from a weak source");
  });

  test("tells a verdict once, and no planting's own grams for several", () => {
    const judgement = {
      kind: "unlikely-water-covers-it" as const,
      waterG: range(40, 50),
      needG: range(20, 30),
    };
    const covered = (planting: string) =>
      aPlantingCalcium({ planting, verdicts: [aVerdict({ judgement }), aVerdict({ judgement })] });
    expect(words([covered("a")]).match(/the water covers it/g)).toHaveLength(1);
    expect(words([covered("a")])).toContain("40 to 50 g");
    expect(words([covered("a"), covered("b")])).not.toContain("40 to 50 g");
  });

  test("keeps names apart from the text around them, and markup out", () => {
    const text = markup([aPlantingCalcium({ name: "<b>שלום", bedName: "حديقة" })]);
    expect(text).toContain("<bdi>&lt;b&gt;שלום</bdi>, <bdi>حديقة</bdi>");
  });
});

test("crops of which nothing is known are named once", () => {
  const { need, ...basil } = aPlantingCalcium({ crop: "basil", cropName: "basil", verdicts: [] });
  expect(need).toBeDefined();
  expect(words([aPlantingCalcium(), basil, basil])).toContain("No figure is known of basil.");
});
