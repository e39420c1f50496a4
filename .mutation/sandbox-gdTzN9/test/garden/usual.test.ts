// @ts-nocheck
import { expect, test } from "vitest";
import { usualKeys, usualValues } from "../../src/garden/usual.js";
import { loadTables } from "../../src/tables.js";

test("every usual value is a sensible number", () => {
  for (const [key, value] of Object.entries(loadTables().usual))
    expect(value, key).toBeGreaterThan(0);
});

test("a row that is missing is our own bug", () => {
  const rows = usualKeys.slice(1).map((key) => ({ key, value: 1 }));
  expect(() => usualValues(rows)).toThrow(`usual.yaml: ${usualKeys[0]} is missing`);
});

test("rows that nobody asks for are left out", () => {
  const rows = [...usualKeys, "luck"].map((key) => ({ key, value: 1 }));
  expect(Object.keys(usualValues(rows))).toEqual([...usualKeys]);
});
