// @ts-nocheck
import { expect, test } from "vitest";
import {
  fillInFull,
  fillInShort,
  fillOfWater,
  fillWithStock,
  fillWords,
  fromEach,
} from "../../src/words/cans.js";
import { plain } from "../../src/words/say.js";
import { aFill } from "../support/a-plan.js";

test("a filling says what is filled, and how far", () => {
  expect(fillWords(aFill({ count: 2 }), "can")).toBe("2 full cans");
  expect(fillWords(aFill({ full: false }), "sprayer")).toBe("1 part sprayer");
});

const two = aFill({ count: 2 });
const part = aFill({ full: false, waterText: "2 gal", stockText: "3 3/4 tsp", stockMl: 18.48 });

test.each([
  ["in short", fillInShort(two, "can"), "2 cans × 23 mL"],
  ["in short, when part full", fillInShort(part, "sprayer"), "1 part sprayer × 3 3/4 tsp (2 gal)"],
  ["with its water", fillOfWater(two, "can"), "2 cans of 9 L"],
  ["with its water, when part full", fillOfWater(part, "sprayer"), "1 part sprayer of 2 gal"],
  ["in full", fillInFull(two, "can"), "2 full cans: 23 mL of stock in 9 L of water each"],
  [
    "in full, another feed",
    fillInFull(part, "can", "seaweed"),
    "1 part can: 3 3/4 tsp of seaweed in 2 gal of water",
  ],
  [
    "with its stock",
    fillWithStock(plain, two, "can", (stock) => stock),
    "2 full cans: 23 mL in 9 L each",
  ],
])("a filling is told %s", (_, told, words) => {
  expect(told).toBe(words);
});

test("a can poured from several bottles says how much is from which", () => {
  const pours = [
    { batch: "B1", ml: 15.04, stockText: "15 mL" },
    { batch: "B2", ml: 7.96, stockText: "8 mL" },
  ];
  expect(fromEach(aFill({ pours }))).toBe("15 mL from batch B1, 8 mL from batch B2");
  expect(fillInFull(aFill({ count: 2, pours }), "can")).toMatch(
    /of water each: 15 mL from batch B1, 8 mL from batch B2$/,
  );
  expect(fillInFull(aFill({ count: 2 }), "can")).toMatch(/of water each$/);
});
