// @ts-nocheck
import { describe, expect, test } from "vitest";
import {
  cropCatalogue,
  type CropRow,
  cropSuggestion,
  findCrop,
  singular,
} from "../../src/crops/catalogue.js";
import { loadTables } from "../../src/tables.js";

const { catalogue } = loadTables();

test("knows at least 30 crops, fed ones and companions that need no feed", () => {
  expect(catalogue.crops.length).toBeGreaterThanOrEqual(30);
  const companions = catalogue.crops.filter((crop) => crop.disorder === undefined);
  expect(companions.length).toBeGreaterThanOrEqual(5);
  for (const crop of companions) expect(crop.reason, crop.key).not.toBe("");
});

describe("finding a crop by a grower's word", () => {
  test.each([
    ["tomato", "tomato"],
    ["Tomatoes", "tomato"],
    ["  cherry   tomatoes ", "tomato"],
    ["zucchini", "zucchini"],
    ["courgettes", "zucchini"],
    ["aubergine", "eggplant"],
    ["eggplants", "eggplant"],
    ["bell peppers", "sweet-pepper"],
    ["capsicum", "sweet-pepper"],
    ["chillies", "chili-pepper"],
    ["chilies", "chili-pepper"],
    ["Jalapeño", "chili-pepper"],
    ["winter squash", "pumpkin"],
    ["sweet_corn", "sweetcorn"],
    ["rocket", "arugula"],
    ["swede", "rutabaga"],
    ["beets", "beetroot"],
    ["potatoes", "potato"],
    ["strawberries", "strawberry"],
    ["radishes", "radish"],
    ["leeks", "leek"],
    ["peas", "pea"],
    ["fava beans", "broad-bean"],
    ["scallions", "spring-onion"],
    ["cilantro", "coriander"],
    ["Brussels sprouts", "brussels-sprouts"],
    ["napa cabbages", "chinese-cabbage"],
    ["groundnuts", "peanut"],
    ["frisée", "chicory"],
  ])("%s is %s", (word, key) => {
    expect(findCrop(word, catalogue)?.key).toBe(key);
  });

  test.each(["quinoa", "", "tom", "tomato leaf", "constructor"])("`%s` is none", (word) => {
    expect(findCrop(word, catalogue)).toBeUndefined();
  });

  test("every crop is found by its key, its name and each of its synonyms", () => {
    for (const crop of catalogue.crops)
      for (const word of [crop.key, crop.name, ...crop.also])
        expect(findCrop(word, catalogue)?.key, word).toBe(crop.key);
  });
});

test.each([
  ["tomatoes", "tomato"],
  ["peaches", "peach"],
  ["boxes", "box"],
  ["cresses", "cress"],
  ["cress", "cress"],
  ["berries", "berry"],
  ["pies", "pie"],
  ["s", "s"],
  ["Häuser", "hauser"],
])("one of %s is a %s", (many, one) => {
  expect(singular(many)).toBe(one);
});

test.each([
  ["tomatoe", "did you mean `tomato`?"],
  ["curgette", "did you mean `courgette`?"],
  ["tomato plants", "did you mean `tomato`?"],
  ["calabrese sprouting", "did you mean `calabrese`?"],
  ["genovese", "did you mean `genovese basil`?"],
  ["quinoa", "`feedround crops` lists the crops that are known"],
])("for %s the way to mend it is: %s", (word, mend) => {
  expect(cropSuggestion(word, catalogue)).toBe(mend);
});

describe("data files that do not fit together are our own bug", () => {
  const row: CropRow = {
    key: "oca",
    name: "oca",
    botanical: "Oxalis tuberosa",
    group: "tuber",
    course: "tuber",
    perennial: false,
    tender: false,
    counted_from: "sowing",
    transplant_age_days: 0,
    water_l_per_plant: 1,
    spray_l_per_plant: 0.1,
    sensitivity: "none",
    reason: "none",
    source: "invented for this test",
    source_status: "from memory",
  };
  test("a crop without a life course or without lengths", () => {
    const data = { crops: [row], stageLengths: [], lifeCourses: [], warmth: [] };
    expect(() => cropCatalogue(data)).toThrow(
      "crops.yaml: oca lacks a life course or stage lengths",
    );
    const course = {
      key: "tuber",
      description: "",
      picked_repeatedly: false,
      source: "",
      stages: [],
    };
    expect(() => cropCatalogue({ ...data, lifeCourses: [course] })).toThrow("oca");
  });
});
