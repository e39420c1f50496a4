// @ts-nocheck
import { expect, test } from "vitest";
import { cropWords, stageWords } from "../../src/words/plants.js";

test("stages are words, not keys", () => {
  expect(stageWords("fruit-set")).toBe("fruit set");
});

test("crops lose their second name where room is short", () => {
  expect(cropWords("courgette (zucchini)")).toBe("courgette");
});
