/** The table of crop coefficients fits the catalogue. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { loadTables } from "../../src/tables.js";
import type { CoefficientRow } from "../../src/watering/coefficients.js";
import { cropRows } from "./data-files.js";

const { coefficients, unknown } = loadTables().cropCoefficients;
const groups = new Set(cropRows.map(({ group }) => group));
const keys = new Set(cropRows.map(({ key }) => key));

describe.each<CoefficientRow>(coefficients)("$printed_name ($crop$group)", (row) => {
  const { crop, group } = row;

  test("is of a crop or of a group that is known", () => {
    expect([crop, group].filter((name) => name !== undefined)).toHaveLength(1);
    expect(crop === undefined ? groups : keys).toContain(crop ?? group);
  });

  test("has plants that give off no more than plants and soil", () => {
    expect(row.kcb_mid).toBeLessThanOrEqual(row.kc_mid);
    expect(row.kcb_end).toBeLessThanOrEqual(row.kc_end);
  });
});

test("no crop or group stands twice", () => {
  const names = [
    ...coefficients.map(({ crop, group }) => `${crop ?? ""} ${group ?? ""}`),
    ...unknown.map(({ crop }) => `${crop} `),
  ];
  expect(new Set(names).size).toBe(names.length);
});

test("says of each crop what it gives off, or why that can't be told", () => {
  const told = cropRows.filter(
    ({ key, group }) =>
      unknown.some(({ crop }) => crop === key) ||
      coefficients.some((row) => row.crop === key || row.group === group),
  );
  const silent = cropRows.filter((row) => !told.includes(row)).map(({ key }) => key);
  // Kitchen herbs, companion flowers and okra: FAO-56 has neither rows nor a group of them.
  expect(silent).toEqual([
    "basil",
    "parsley",
    "coriander",
    "dill",
    "marigold",
    "nasturtium",
    "okra",
  ]);
});
