// @ts-nocheck
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Plan } from "../../../src/season/season-plan.js";
import { seasonSvg } from "../../../src/outputs/picture/season-svg.js";
import { plantingRows } from "../../../src/outputs/picture/season-rows.js";
import { nothingFed, oddNames, planOf, sixtyBeds, thirdRound, weirCottage } from "../gardens.js";
import { withoutStock } from "../gardens.js";

const weir = planOf(weirCottage);
const { round: third, today } = thirdRound(weir);
const count = (text: string, part: RegExp) => text.match(part)?.length ?? 0;
const heightPx = (svg: string) => Number(/viewBox="0 0 960 (\d+)"/.exec(svg)?.[1]);
const svg = seasonSvg(weir, { today });

function example(name: string, day: string): Plan {
  return planOf(
    readFileSync(new URL(`../../../examples/${name}.yaml`, import.meta.url), "utf8"),
    day,
  );
}

describe("the season as a picture", () => {
  test("shows for each fed planting its life, its weeks of feeding and its harvest", () => {
    const fed = weir.plantings.filter((planting) => planting.fed);
    // One more of each in the key; its harvest stands on a growing bar.
    expect(count(svg, /class="growing"/g)).toBe(fed.length + 2);
    expect(count(svg, /class="window"/g)).toBe(fed.length + 1);
    expect(count(svg, /class="harvest"/g)).toBe(fed.length + 1);
  });

  test("shows a mark for each feeding, its shape saying which way", () => {
    const mixes = weir.rounds.flatMap((r) => r.beds.flatMap((bed) => bed.mixes));
    const feedings = (route: string) =>
      mixes.filter((m) => m.route === route).flatMap((m) => m.feedings).length;
    expect(count(svg, /href="#fr-drop"/g)).toBe(feedings("drench") + 1);
    expect(count(svg, /href="#fr-leaf"/g)).toBe(feedings("foliar") + 1);
  });

  test("has a line for each round, and a number where there is room", () => {
    expect(count(svg, /class="round-line"/g)).toBe(weir.rounds.length);
    const numbers = count(svg, /class="strong( next)?" x="[\d.]+%"/g);
    expect(numbers).toBeGreaterThan(3);
    expect(numbers).toBeLessThanOrEqual(weir.rounds.length);
  });

  test("shows what was given, missed and seen, and names other feeds", () => {
    const plan = example("mid-season", "2027-07-05");
    const past = seasonSvg(plan, { today: plan.today });
    const marks = plantingRows(plan).flatMap((row) => row.marks);
    const days = (kind: string) => marks.filter((m) => m.kind === kind).map(({ day }) => day);
    expect(days("given")).toEqual(["2027-06-05", "2027-06-19", "2027-06-12"]);
    expect(days("missed")).toEqual(["2027-06-19"]);
    expect(days("sign")).toEqual(["2027-07-02"]);
    expect(count(past, /mark given drench/g)).toBe(3 + 1);
    expect(count(past, /mark cross/g)).toBe(1 + 1);
    expect(count(past, /mark sign/g)).toBe(1 + 1);
    expect(past).toContain("wormery");
    expect(past).toContain("Missed 19 Jun.");
    expect(count(past, /mark other given/g)).toBe(1);
  });

  test("shows stock on a scale in the garden's measures, and until when bottles keep", () => {
    expect(svg).toMatch(/text-anchor="end"[^>]*>\d+ mL</);
    expect(count(svg, /class="mark end"/g)).toBeGreaterThan(1);
    expect(seasonSvg(planOf(oddNames))).toMatch(
      /text-anchor="end"[^>]*>[\d /]+ (tbsp|cups?|qt|gal)</,
    );
    expect(seasonSvg(withoutStock(weir))).not.toContain('class="level"');
  });

  test("tells all of it in words as well", () => {
    const desc = /<desc[^>]*>([\s\S]*?)<\/desc>/.exec(svg)?.[1] ?? "";
    expect(desc).toContain("Season from 1 March 2027 to 31 October 2027. ");
    for (const { name, fed } of weir.plantings) if (fed) expect(desc).toContain(name);
    expect(desc).toMatch(/fruit set \d+ \w+ to \d+ \w+/);
    expect(desc).toMatch(/Soil drench planned \d+ \w+/);
    expect(desc).toMatch(/B1.*in hand, ready 8 May, use by 6 Aug/);
  });

  test("marks today and the next round when it is told the day, and neither when not", () => {
    expect(count(svg, /class="today"/g)).toBe(2);
    expect(svg).toMatch(
      new RegExp(`class="strong next"[^>]*>\\W?${Number(third.day.slice(8))}\\W?<`),
    );
    expect(seasonSvg(weir)).not.toMatch(/class="today"|strong next/);
  });

  test("folds what is not fed into one line", () => {
    expect(svg).toMatch(/Not fed: [^<]*basil/);
  });

  test("is whole for a garden where nothing is fed, and for one without plantings", () => {
    expect(seasonSvg(planOf(nothingFed))).toContain("No rounds in this season");
    expect(seasonSvg({ ...planOf(nothingFed), plantings: [] })).toMatch(/<\/svg>\n$/);
  });

  test("escapes names and never lets them turn their neighbours", () => {
    const odd = seasonSvg(planOf(oddNames));
    expect(odd).not.toMatch(/<script|<b>/);
    expect(odd).toContain("\u2068حديقة");
  });

  test.each([
    ["a garden", weir],
    ["sixty beds", planOf(sixtyBeds())],
    ["forty beds", example("shared-garden", "2027-06-10")],
    ["a corner of an orchard", example("orchard-corner", "2027-12-10")],
  ])("of %s is at most 22 px high for each row, and 300", (_, plan) => {
    expect(heightPx(seasonSvg(plan, { today: plan.today }))).toBeLessThanOrEqual(
      22 * plan.plantings.filter((planting) => planting.fed).length + 300,
    );
  });
});
