// @ts-nocheck
import { expect, test } from "vitest";
import { findUnit } from "../../src/garden/units.js";
import { loadTables } from "../../src/tables.js";

const { units } = loadTables();
const volumes = units.filter((unit) => unit.kind === "volume");

test.each(["fl oz", "fl. oz.", "FL OZ", " fl  oz ", "fluid ounces"])(
  "%s is a fluid ounce",
  (name) => {
    expect(findUnit(name, volumes, "us")?.unit).toBe("fl oz");
  },
);

test("the garden's measures choose between two of one name", () => {
  expect(findUnit("pint", volumes, "us")?.system).toBe("us");
  expect(findUnit("pint", volumes, "metric")?.system).toBe("us");
  expect(findUnit("pint", volumes, "imperial")?.system).toBe("imperial");
});

test("what is in no list is no unit", () => {
  expect(findUnit("bucket", units, "us")).toBeUndefined();
  expect(findUnit("", units, "us")).toBeUndefined();
});
