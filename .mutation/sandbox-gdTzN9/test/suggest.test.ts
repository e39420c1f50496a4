// @ts-nocheck
import { distance } from "fastest-levenshtein";
import { expect, test, vi } from "vitest";
import { didYouMean, nearest } from "../src/suggest.js";

vi.mock("fastest-levenshtein", { spy: true });

const crops = ["tomato", "potato", "Brussels sprout", "pea", "pear"];

test.each([
  ["a letter too many", "tomatoe", "tomato"],
  ["a letter too few", "tomto", "tomato"],
  ["two letters swapped", "potaot", "potato"],
  ["another case", "TOMATO", "tomato"],
  ["a capital among the known words", "brusels sprout", "Brussels sprout"],
  ["the nearer of two", "peaa", "pea"],
  ["a word with more behind it", "tomato plants from seed", "tomato"],
  ["the longer of two beginnings", "pears and other fruit", "pear"],
])("finds the word meant behind %s", (_, word, meant) => {
  expect(nearest(word, crops)).toBe(meant);
});

test.each(["quinoa", "x", "", "a word quite unlike any crop in the whole list of crops"])(
  "suggests nothing for `%s`",
  (word) => {
    expect(nearest(word, crops)).toBeUndefined();
  },
);

test("a short word is no misspelling of everything as short", () => {
  expect(nearest("zz", ["id", "to", "on"])).toBeUndefined();
});

test("for a word of a million letters no edits are counted, which would take long", () => {
  const counted = vi.mocked(distance);
  counted.mockClear();
  expect(nearest("xyz".repeat(200_000), crops)).toBeUndefined();
  expect(counted).not.toHaveBeenCalled();
  nearest("tomatoe", crops);
  expect(counted).toHaveBeenCalled();
});

test("didYouMean falls back on what else can be said", () => {
  expect(didYouMean("tomatoe", crops, "see the list")).toBe("did you mean `tomato`?");
  expect(didYouMean("quinoa", crops, "see the list")).toBe("see the list");
  expect(didYouMean("quinoa", [], "there are none")).toBe("there are none");
});
