/** Tree fruit counted from full bloom; each title names its source. */
// @ts-nocheck

import { expect, test } from "vitest";
import { type Day, daysBetween, parseDay } from "../../src/dates.js";
import { plantingLife } from "../../src/stages/planting-life.js";
import { catalogue } from "../data/data-files.js";

const day = (text: string): Day => parseDay(text) as Day;

function daysToFirstPick(cropKey: string, bloom: Day): number {
  const crop = catalogue.crops.find((c) => c.key === cropKey);
  if (crop === undefined) throw new Error(`no crop ${cropKey}`);
  const life = plantingLife(
    {
      id: "p",
      name: "p",
      bed: "b",
      crop: cropKey,
      cropWord: "word",
      bloom,
      waterL: 1,
      sprayL: 1,
      sprayIsUsual: true,
      level: 1,
      seen: [],
      feed: "by-rule",
      path: [],
    },
    crop,
    { hemisphere: "north", season: { from: day("2013-03-01"), to: day("2013-11-30") } },
  );
  return daysBetween(bloom, life.harvestFrom);
}

test("Virginia Cooperative Extension 2013: 143 days from full bloom to the first pick of Red Delicious", () => {
  expect(daysToFirstPick("apple", day("2013-04-23"))).toBe(143);
});

test("Ask Extension 470496, 2018: Anjou pears are picked 145 to 150 days after full bloom", () => {
  const days = daysToFirstPick("pear", day("2013-04-20"));
  expect(days).toBeGreaterThanOrEqual(145);
  expect(days).toBeLessThanOrEqual(150);
});
