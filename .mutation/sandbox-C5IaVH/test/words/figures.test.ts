// @ts-nocheck
import { expect, test } from "vitest";
import { figures, measured } from "../../src/words/figures.js";

test("figures have three figures, and whole numbers from a hundred on", () => {
  expect([0.01234, 2.5, 48.04, 432.1, 1234.5].map(figures)).toEqual([
    "0.0123",
    "2.5",
    "48",
    "432",
    "1235",
  ]);
});

test("what is measured has a tenth from ten on, and a hundredth below", () => {
  expect([0.126, 3.754, 10.04, 23].map(measured)).toEqual(["0.13", "3.75", "10", "23"]);
});
