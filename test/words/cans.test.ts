import { expect, test } from "vitest";
import { figures, fillWords } from "../../src/words/cans.js";
import { aFill } from "../support/a-plan.js";

test("figures have three figures, and whole numbers from a hundred on", () => {
  expect([0.01234, 2.5, 48.04, 432.1, 1234.5].map(figures)).toEqual([
    "0.0123",
    "2.5",
    "48",
    "432",
    "1235",
  ]);
});

test("of a filling say what is filled, and how far", () => {
  expect(fillWords(aFill({ count: 2 }), "drench")).toBe("2 full cans");
  expect(fillWords(aFill({ full: false }), "foliar")).toBe("1 part sprayer");
});
