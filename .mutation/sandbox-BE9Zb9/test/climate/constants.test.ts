// @ts-nocheck
import { expect, test } from "vitest";
import { climateConstants, climateKeys } from "../../src/climate/constants.js";
import { loadTables } from "../../src/tables.js";

test("every constant is a sensible number", () => {
  for (const [key, value] of Object.entries(loadTables().climate))
    expect(value, key).toBeGreaterThan(0);
});

test("a row that is missing is our own bug", () => {
  const rows = climateKeys.slice(1).map((key) => ({ key, value: 1 }));
  expect(() => climateConstants(rows)).toThrow(`climate-constants.yaml: ${climateKeys[0]} is`);
});
