// @ts-nocheck
import { describe, expect, test } from "vitest";
import type { Parsed } from "../../src/garden/quantity.js";
import { parseTemperature, parseTemperatureDifference } from "../../src/garden/temperature.js";

const value = (parsed: Parsed<number>): number => {
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
};

test.each([
  ["20 C", 20],
  ["20C", 20],
  ["68 F", 20],
  ["68°F", 20],
  ["32 degrees Fahrenheit", 0],
  ["-40 F", -40],
  ["−2.5 ℃", -2.5],
  ["18.5 deg c", 18.5],
  ["21 Celsius", 21],
])("the temperature %s is %d degC", (text, degC) => {
  expect(value(parseTemperature(text))).toBeCloseTo(degC, 9);
});

test.each([
  ["2 C", 2],
  ["9 F", 5],
  ["3.6 °F", 2],
  ["1.5 degrees C", 1.5],
])("warmer by %s is warmer by %d degC", (text, degC) => {
  expect(value(parseTemperatureDifference(text))).toBeCloseTo(degC, 9);
});

describe("is refused with a mend", () => {
  test.each([
    ["20", "`20` is not said to be C or F", "write it like 20 C or 68 F"],
    ["20 degrees", "`20 degrees` is not said to be C or F", "write it like 20 C or 68 F"],
    ["20 L", "the unit `L` is none of temperature", "write it like 20 C or 68 F"],
    ["warm", "`warm` is no temperature with a unit", "write it like 20 C or 68 F"],
    ["", "`` is no temperature with a unit", "write it like 20 C or 68 F"],
    ["20,5 C", "`20,5 C` has a comma in the number", "write 20.5 C"],
  ])("`%s`", (text, message, mend) => {
    expect(parseTemperature(text)).toEqual({ ok: false, message, mend });
  });
});
