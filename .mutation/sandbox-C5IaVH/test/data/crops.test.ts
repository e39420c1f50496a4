// @ts-nocheck
import { describe, expect, test } from "vitest";
import { findCrop, singular } from "../../src/crops/catalogue.js";
import { catalogue, courseRows, cropRows, cropsOf, lengthRows, ruleRows } from "./data-files.js";

/** Every word that stands for a crop, singular, the name in brackets and the one before it too. */
function words(crop: (typeof cropRows)[number]): Set<string> {
  const inBrackets = /^(.*?)\s*\((.*)\)$/.exec(crop.name)?.slice(1) ?? [];
  return new Set([crop.key, crop.name, ...inBrackets, ...(crop.also ?? [])].map(singular));
}

test("the catalogue holds at least 35 crops, with and without a need for calcium", () => {
  expect(cropRows.length).toBeGreaterThanOrEqual(35);
  expect(cropRows.filter((crop) => crop.disorder === undefined).length).toBeGreaterThanOrEqual(15);
});

test("every name and synonym stands for one crop only", () => {
  const owners = new Map<string, string>();
  for (const crop of cropRows)
    for (const word of words(crop)) {
      expect(owners.get(word) ?? crop.key, word).toBe(crop.key);
      owners.set(word, crop.key);
    }
});

test.each([
  ["courgettes", "zucchini"],
  ["zucchinis", "zucchini"],
  ["aubergine", "eggplant"],
  ["cilantro", "coriander"],
  ["swedes", "rutabaga"],
  ["rocket", "arugula"],
  ["Bell Peppers", "sweet-pepper"],
  ["chillies", "chili-pepper"],
  ["butternut squash", "pumpkin"],
  ["scallions", "spring-onion"],
  ["fava beans", "broad-bean"],
  ["beets", "beetroot"],
  ["silverbeet", "chard"],
  ["groundnuts", "peanut"],
  ["potatoes", "potato"],
  ["tomatoes", "tomato"],
  ["sweet corn", "sweetcorn"],
  ["radishes", "radish"],
  ["strawberries", "strawberry"],
  ["Brussels sprouts", "brussels-sprouts"],
  ["Napa cabbage", "chinese-cabbage"],
  ["globe artichokes", "artichoke"],
  ["tomatillos", "tomatillo"],
  ["cherries", "sweet-cherry"],
  ["cherry tomatoes", "tomato"],
  ["kohlrabi", "kohlrabi"],
  ["bok choy", "pak-choi"],
  ["lady's fingers", "okra"],
  ["leaf lettuce", "leaf-lettuce"],
  ["romaine", "lettuce"],
  ["grapes", "grape"],
  ["collards", "collard"],
  ["collard greens", "collard"],
])("a grower's `%s` is the crop %s", (word, key) => {
  expect(findCrop(word, catalogue)?.key).toBe(key);
});

test("every crop has a life course, at least one row of lengths, and no row is left over", () => {
  const courses = new Set(courseRows.map((course) => course.key));
  const keys = new Set(cropRows.map((crop) => crop.key));
  expect(new Set(cropRows.map((crop) => crop.course))).toEqual(courses);
  expect(new Set(lengthRows.map((row) => row.crop))).toEqual(keys);
});

describe.each(cropRows.map((crop) => [crop.key, crop] as const))("%s", (_, crop) => {
  const rules = ruleRows.filter((rule) => cropsOf(rule).includes(crop));

  test("is fed by a rule for its disorder, or says why it is not", () => {
    if (crop.disorder === undefined) {
      expect(rules).toEqual([]);
      expect(crop.sensitivity).toBe("none");
      expect(crop.reason).toMatch(/^Needs no calcium feed[:,] .{20}/);
    } else {
      expect(crop.sensitivity).not.toBe("none");
      if (rules.length === 0) expect(crop.reason).toMatch(/^Not fed: .{20}/);
      else expect(rules.some((rule) => rule.disorder.includes(crop.disorder ?? "?"))).toBe(true);
    }
  });

  test("counts its life from something it has", () => {
    const course = courseRows.find((row) => row.key === crop.course);
    const first = course?.stages[0]?.stage;
    expect(crop.perennial).toBe(crop.counted_from === "bloom");
    expect(crop.usual_bloom_north !== undefined).toBe(crop.perennial);
    if (crop.counted_from === "bloom")
      expect(course?.stages.map((s) => s.stage)).toContain("flowering");
    if (crop.counted_from === "sowing") expect(first).toBe("seedling");
    if (crop.counted_from === "transplanting") {
      expect(first).toBe("establishment");
      expect(crop.transplant_age_days).toBeGreaterThan(0);
    }
  });

  test("gets a plausible can of water and less spray than water", () => {
    expect(crop.spray_l_per_plant).toBeLessThan(crop.water_l_per_plant);
    expect(crop.water_l_per_plant).toBeLessThanOrEqual(crop.perennial ? 20 : 4);
  });

  test("tells how much ground a plant has where a rule feeds it", () => {
    if (rules.length > 0) expect(crop.spacing).toBeDefined();
    const [plant, row] = [crop.spacing?.plant_cm ?? [1, 1], crop.spacing?.row_cm ?? [1, 1]];
    expect(plant[0]).toBeLessThanOrEqual(plant[1]);
    expect(row[0]).toBeLessThanOrEqual(row[1]);
    expect(plant[0]).toBeLessThanOrEqual(row[1]);
  });

  test("claims no source it does not name", () => {
    expect(crop.source === "common practice, no source").toBe(crop.source_status === "from memory");
  });
});
