// @ts-nocheck
import { describe, expect, test } from "vitest";
import { stageNames } from "../../src/crops/crop.js";
import { type Day, daysBetween, parseDay } from "../../src/dates.js";
import { plantingLife } from "../../src/stages/planting-life.js";
import { catalogue, courseRows, cropRows, lengthRows } from "./data-files.js";

const periods = ["initial", "development", "mid", "late"] as const;

describe.each(courseRows.map((course) => [course.key, course] as const))("%s", (_, course) => {
  test("goes through its stages in the growers' order, each later than the last", () => {
    const order = course.stages.map((s) => stageNames.indexOf(s.stage));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(new Set(order).size).toBe(order.length);
    const begins = course.stages.map((s) => periods.indexOf(s.period) + s.share);
    for (const [i, begin] of begins.entries())
      if (i > 0) expect(begin).toBeGreaterThan(begins[i - 1] ?? NaN);
  });

  test("begins on day 0 and ends with the harvest", () => {
    expect(course.stages[0]).toMatchObject({ period: "initial", share: 0 });
    expect(course.stages.at(-1)?.stage).toBe("harvest");
  });
});

test.each(lengthRows.map((row) => [row.crop, row.region, row] as const))(
  "%s in %s has time for every stage",
  (crop, _, row) => {
    const course = courseRows.find((c) => c.key === cropRows.find((r) => r.key === crop)?.course);
    const lengths = [row.initial_days, row.development_days, row.mid_days, row.late_days];
    const starts = course?.stages.map((s) => {
      const period = periods.indexOf(s.period);
      const before = lengths.slice(0, period).reduce((sum, days) => sum + days, 0);
      return Math.round(before + s.share * (lengths[period] ?? 0));
    });
    expect(new Set(starts).size).toBe(course?.stages.length);
  },
);

const cropOf = (key: string) => cropRows.find((crop) => crop.key === key);
const fromSowing = lengthRows.filter((row) => cropOf(row.crop)?.counted_from === "sowing");

test("there are rows whose days are counted from sowing", () => {
  expect(fromSowing.length).toBeGreaterThan(0);
});

test.each(fromSowing.map((row) => [row.crop, row.region, row] as const))(
  "%s in %s is not picked within two weeks of being planted out",
  (key, _, row) => {
    const crop = cropOf(key);
    const harvest = courseRows.find((c) => c.key === crop?.course)?.stages.at(-1);
    if (crop === undefined || harvest === undefined) throw new Error(`no harvest of ${key}`);
    const lengths = [row.initial_days, row.development_days, row.mid_days, row.late_days];
    const period = periods.indexOf(harvest.period);
    const before = lengths.slice(0, period).reduce((sum, days) => sum + days, 0);
    const pickedAfter = before + harvest.share * (lengths[period] ?? 0);
    expect(pickedAfter - crop.transplant_age_days).toBeGreaterThanOrEqual(14);
  },
);

const day = (text: string): Day => parseDay(text) as Day;

interface Dates {
  readonly sown?: Day;
  readonly transplanted?: Day;
  readonly bloom?: Day;
}

/** Days from the day given to the first day of a stage, in a northern garden. */
function daysTo(cropKey: string, stage: string, given: Dates): number {
  const crop = catalogue.crops.find((c) => c.key === cropKey);
  if (crop === undefined) throw new Error(`no crop ${cropKey}`);
  const season = { from: day("2027-01-01"), to: day("2027-12-31") };
  const planting = {
    id: "p",
    name: "p",
    bed: "b",
    crop: cropKey,
    cropWord: "word",
    waterL: 1,
    sprayL: 1,
    sprayIsUsual: true,
    level: 1,
  };
  const life = plantingLife({ ...planting, ...given, seen: [], feed: "by-rule", path: [] }, crop, {
    hemisphere: "north",
    season,
  });
  const span = life.spans.find((s) => s.stage === stage);
  const from = given.bloom ?? given.transplanted ?? given.sown;
  if (span === undefined || from === undefined) throw new Error(`no ${stage}`);
  return daysBetween(from, span.from);
}

// Spans that gardeners expect: common practice, no source. They keep a slip in the shares from passing.
test.each([
  ["tomato", "flowering", { transplanted: "2027-05-20" }, 14, 42],
  ["tomato", "harvest", { transplanted: "2027-05-20" }, 55, 90],
  ["sweet-pepper", "harvest", { transplanted: "2027-05-25" }, 50, 95],
  ["eggplant", "harvest", { transplanted: "2027-05-25" }, 50, 95],
  ["zucchini", "harvest", { sown: "2027-05-15" }, 40, 60],
  ["cucumber", "harvest", { sown: "2027-05-20" }, 45, 70],
  ["pumpkin", "harvest", { sown: "2027-05-20" }, 85, 125],
  ["sweet-melon", "harvest", { sown: "2027-05-10" }, 75, 125],
  ["lettuce", "heading", { sown: "2027-04-01" }, 35, 60],
  ["lettuce", "harvest", { transplanted: "2027-04-25" }, 25, 55],
  ["cabbage", "harvest", { transplanted: "2027-04-20" }, 55, 100],
  ["brussels-sprouts", "harvest", { transplanted: "2027-05-20" }, 100, 180],
  ["leek", "harvest", { transplanted: "2027-05-20" }, 70, 150],
  ["parsley", "harvest", { sown: "2027-04-01" }, 55, 90],
  ["celery", "harvest", { transplanted: "2027-05-10" }, 80, 130],
  ["fennel", "harvest", { sown: "2027-06-20" }, 60, 100],
  ["green-bean", "harvest", { sown: "2027-05-20" }, 45, 75],
  ["pea", "harvest", { sown: "2027-04-01" }, 50, 85],
  ["carrot", "harvest", { sown: "2027-04-01" }, 70, 135],
  ["potato", "harvest", { sown: "2027-04-10" }, 90, 150],
  ["peanut", "flowering", { sown: "2027-05-10" }, 28, 45],
  ["radish", "harvest", { sown: "2027-04-01" }, 20, 40],
  ["strawberry", "harvest", { bloom: "2027-05-10" }, 25, 42],
  ["apple", "fruit-set", { bloom: "2027-05-05" }, 5, 14],
  ["apple", "harvest", { bloom: "2027-05-05" }, 120, 165],
  ["pear", "harvest", { bloom: "2027-04-20" }, 110, 150],
] as const)("%s reaches %s in its usual time", (crop, stage, given, least, most) => {
  const days = daysTo(
    crop,
    stage,
    Object.fromEntries(Object.entries(given).map(([key, text]) => [key, day(text)])),
  );
  expect(days).toBeGreaterThanOrEqual(least);
  expect(days).toBeLessThanOrEqual(most);
});

test("a strawberry has grown leaves before the bloom that fixes its stages", () => {
  expect(daysTo("strawberry", "flowering", { bloom: day("2027-05-10") })).toBe(0);
  expect(daysTo("strawberry", "vegetative", { bloom: day("2027-05-10") })).toBe(-30);
});
