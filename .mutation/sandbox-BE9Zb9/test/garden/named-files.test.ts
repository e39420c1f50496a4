// @ts-nocheck
import { expect, test } from "vitest";
import { namedFiles } from "../../src/garden/named-files.js";

test.each([
  ["rules: my-rules.yaml", ["my-rules.yaml"]],
  ["a: b\nrules:   my rules.yaml   # mine\nbeds: []", ["my rules.yaml"]],
  ['rules: "own/a # b.yaml"', ["own/a # b.yaml"]],
  ["rules: 'x.yaml'\r\nbeds:\r\n", ["x.yaml"]],
  ["weather: { seen: seen.csv, forecast: next.csv }", ["seen.csv", "next.csv"]],
  ["rules: x.yaml\nweather:\n  # mine\n  forecast: 'a, b.csv'\n", ["x.yaml", "a, b.csv"]],
  ["weather: seen.csv", []],
  ["weather:\n  seen: [a]\n", []],
  ["beds:\n  - plantings:\n      - seen: { flowering: 2027-06-01 }\n", []],
  ["rules:\n  - id: a", []],
  ["# rules: x.yaml", []],
  ["rules: x.yaml\nbeds: [", []],
  ["", []],
])("in %j are %j", (text, files) => {
  expect(namedFiles(text)).toEqual(files);
});
