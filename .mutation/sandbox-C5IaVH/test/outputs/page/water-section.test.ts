// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../../src/dates.js";
import { gardenPage } from "../../../src/outputs/page/page.js";
import { waterSection, weekWater } from "../../../src/outputs/page/water-section.js";
import { aBedWatered, aPlan } from "../../support/a-plan.js";

const plan = aPlan({ watering: [aBedWatered([30, 40, 50])] });
const weeks = (today?: string) =>
  [
    ...(weekWater(plan, today === undefined ? undefined : day(today))?.markup ?? "").matchAll(
      /<div\s+class="week"\s+data-from="([^"]*)"[^>]*?(hidden)?\s*>([\s\S]*?)<\/div>/g,
    ),
  ].map(([, from, hidden, body = ""]) => ({
    from,
    shown: hidden === undefined,
    text: body
      .replace(/<[^>]*>/g, " ")
      .replace(/\s+/g, " ")
      .trim(),
  }));

describe("the water of a week", () => {
  test("is that of today, a line for each bed, with what the rounds bring of it", () => {
    const [now] = weeks("2027-06-08");
    expect(now).toEqual({
      from: "2027-06-07",
      shown: true,
      text: "Water from Mon 7 Jun to Sun 13 Jun South bed 40 L, 9 L of it in the rounds",
    });
  });

  test("of weeks to come is there, hidden, and that of past ones is gone", () => {
    expect(weeks("2027-06-08").map(({ from, shown }) => [from, shown])).toEqual([
      ["2027-06-07", true],
      ["2027-06-14", false],
    ]);
    expect(weeks("2027-03-01").every(({ shown }) => !shown)).toBe(true);
  });

  test("without a day is that of the first round", () => {
    expect(weeks().find(({ shown }) => shown)?.from).toBe("2027-06-07");
  });

  test("stands in the first part of the page, rounds or not", () => {
    for (const rounds of [plan.rounds, []])
      expect(gardenPage({ ...plan, rounds }, { today: day("2027-06-08") })).toMatch(
        /id="today"[\s\S]*class="week"[\s\S]*<nav/,
      );
  });
});

test("the section on water says that it comes before calcium, and is absent where nothing is told", () => {
  expect(waterSection(plan)?.markup).toContain("Water before calcium");
  expect(waterSection(plan)?.markup).toContain("9 L of 50 L");
  expect(waterSection(aPlan())).toBeUndefined();
});
