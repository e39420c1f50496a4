// @ts-nocheck
import { expect, test } from "vitest";
import { eggSize } from "../../src/garden/egg-sizes.js";
import { eggSizes } from "../../src/garden/garden.js";
import { loadTables } from "../../src/tables.js";

const { eggSizes: rows } = loadTables();

test("the table has each size that a garden file may name, in its order", () => {
  expect(rows.map(({ key }) => key)).toEqual(eggSizes);
});

test("the usual egg is the shop's: US large, elsewhere EU M, both with 5.5 g of dry shell", () => {
  expect(eggSize(rows, "us")).toEqual({ name: "US large", dryShellG: 5.5 });
  expect(eggSize(rows, "metric")).toEqual({ name: "EU M", dryShellG: 5.5 });
  expect(eggSize(rows, "imperial")).toEqual(eggSize(rows, "metric"));
});

test("a size that is told goes before the usual one, in any measures", () => {
  expect(eggSize(rows, "us", "eu-s")).toEqual({ name: "EU S", dryShellG: 4.7 });
});

test("a table that lacks a size is our own bug", () => {
  expect(() => eggSize([], "metric")).toThrow("egg-sizes.yaml lacks eu-m");
});
