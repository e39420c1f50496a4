// @ts-nocheck
import { describe, expect, test } from "vitest";
import { compileCheck } from "./support/compile-check.js";

/** The findings about the one key `it`, whose schema is given. */
function findings(schema: object, value: unknown): string[] {
  const check = compileCheck({
    $schema: "http://json-schema.org/draft-07/schema#",
    type: "object",
    properties: { it: schema },
  });
  return check({ it: value }).map(({ code, message, mend }) => `${code}: ${message}: ${mend}`);
}

describe("a value that is not what the schema asks for", () => {
  test.each<[string, object, unknown, string]>([
    [
      "a bare number where a quantity belongs says that the unit is needed",
      { type: "string", format: "volume", examples: ["9 L"] },
      9,
      "schema-type: `it` is the number 9 without a unit: write the unit behind the number, like 9 L",
    ],
    [
      "a group where a quantity belongs",
      { type: "string", format: "volume", examples: ["9 L"] },
      { size: 9 },
      "schema-type: `it` is { size: 9 }, an amount with its unit is needed: write it like 9 L",
    ],
    [
      "a number where a date belongs",
      { type: "string", format: "day", examples: ["2027-05-20"] },
      2027,
      "schema-type: `it` is 2027, a date is needed: write it like 2027-05-20",
    ],
    [
      "a number where plain text belongs",
      { type: "string", examples: ["south"] },
      7,
      'schema-type: `it` is 7, text is needed: put it in quotes, like `it: "7"`',
    ],
    [
      "true where plain text belongs",
      { type: "string", examples: ["south"] },
      true,
      'schema-type: `it` is true, text is needed: put it in quotes, like `it: "true"`',
    ],
    [
      "no value",
      { type: "string", examples: ["south"] },
      null,
      "schema-type: `it` has no value: give it one, like south",
    ],
    [
      "text where a list belongs",
      { type: "array", examples: [["wed", "sat"]] },
      "wed",
      "schema-type: `it` is wed, a list is needed: write it like [wed, sat]",
    ],
    [
      "text where a group belongs",
      { type: "object", examples: [{ from: "a", to: "b" }] },
      "x",
      "schema-type: `it` is x, a group of keys is needed: write it like { from: a, to: b }",
    ],
    [
      "half a plant",
      { type: "integer", examples: [6] },
      1.5,
      "schema-type: `it` is 1.5, a whole number is needed: write it like 6",
    ],
    [
      "text where a number belongs",
      { type: "number", examples: [1.5] },
      "six",
      "schema-type: `it` is six, a number is needed: write it like 1.5",
    ],
    [
      "text where yes or no belongs",
      { type: "boolean", examples: [true] },
      "yes",
      "schema-type: `it` is yes, true or false is needed: write it like true",
    ],
    [
      "a word that is nearly one of the list",
      { type: "string", enum: ["round", "bed"] },
      "beds",
      "schema-enum: `it` cannot be beds: did you mean `bed`?",
    ],
    [
      "a word that is none of the list",
      { type: "string", enum: ["round", "bed"] },
      "garden",
      "schema-enum: `it` cannot be garden: it is one of round, bed",
    ],
    [
      "a number where a word of a list belongs, told once",
      { type: "string", enum: ["round", "bed"] },
      3,
      "schema-type: `it` is 3, text is needed: write it like round",
    ],
    ["another version", { const: 1 }, 2, "schema-const: `it` cannot be 2: write 1"],
    [
      "an id with blanks",
      { type: "string", pattern: "^[a-z]+$", examples: ["toms"] },
      "my toms",
      "schema-pattern: `it` cannot be my toms: use letters, digits, dots, dashes and underscores, like toms",
    ],
    [
      "an empty list",
      { type: "array", minItems: 1, examples: [["wed"]] },
      [],
      "schema-minItems: `it` is empty: give at least one, like [wed]",
    ],
    [
      "an empty text",
      { type: "string", minLength: 1, examples: ["South bed"] },
      "",
      "schema-minLength: `it` is empty: give at least one, like South bed",
    ],
    [
      "one day twice",
      { type: "array", uniqueItems: true },
      ["wed", "wed"],
      "schema-uniqueItems: `it` names the same thing twice: keep one of them",
    ],
    [
      "a number below the least",
      { type: "integer", minimum: 1, examples: [6] },
      0,
      "schema-minimum: `it` is 0, too small: it is 1 or more, like 6",
    ],
    [
      "a number that must be above nothing",
      { type: "number", exclusiveMinimum: 0, examples: [1.5] },
      0,
      "schema-exclusiveMinimum: `it` is 0, too small: it is more than 0, like 1.5",
    ],
    [
      "a number above the most",
      { type: "number", maximum: 90, examples: [53.3] },
      91,
      "schema-maximum: `it` is 91, too large: it is 90 or less, like 53.3",
    ],
    [
      "a list that is too long",
      { type: "array", maxItems: 1 },
      [1, 2],
      "schema-maxItems: `it` is too long: at most 1",
    ],
    [
      "a text that is too long",
      { type: "string", maxLength: 3 },
      "abcd",
      "schema-maxLength: `it` is too long: at most 3",
    ],
    [
      "a fault that has no words of its own",
      { type: "number", multipleOf: 2 },
      3,
      "schema-multipleOf: `it` must be multiple of 2: write it like the examples in the README",
    ],
    [
      "an endless number",
      { type: "number", examples: [1.5] },
      Infinity,
      "schema-type: `it` is .inf, a number is needed: write it like 1.5",
    ],
    [
      "no number at all",
      { type: "number", examples: [1.5] },
      NaN,
      "schema-type: `it` is .nan, a number is needed: write it like 1.5",
    ],
  ])("%s", (_, schema, value, finding) => {
    expect(findings(schema, value)).toEqual([finding]);
  });
});

const bedSchema = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  type: "array",
  items: {
    type: "object",
    additionalProperties: false,
    required: ["id", "size"],
    properties: { id: { type: "string", examples: ["south"] }, size: { type: "number" } },
  },
};

test("an unknown key is named at the key itself, with its near miss or all known keys", () => {
  const check = compileCheck(bedSchema);
  const found = check([{ id: "a", size: 1, sise: 2, zzzzzz: 3 }]);
  expect(found.map(({ path, atKey, mend }) => ({ path, atKey, mend }))).toEqual([
    { path: [0, "sise"], atKey: true, mend: "did you mean `size`?" },
    { path: [0, "zzzzzz"], atKey: true, mend: "the keys here are id, size" },
  ]);
});

test("missing keys are all told, with an example where the schema has one", () => {
  const check = compileCheck(bedSchema);
  expect(check([{}]).map(({ message, mend }) => `${message}: ${mend}`)).toEqual([
    "`id` is missing: add it, like `id: south`",
    "`size` is missing: add `size`",
  ]);
});

test("an item of a list has no name: it is called this", () => {
  const check = compileCheck(bedSchema);
  expect(check([7])[0]).toMatchObject({
    path: [0],
    message: "this is 7, a group of keys is needed",
  });
  const words = compileCheck({ type: "array", items: { type: "string", examples: ["a"] } });
  expect(words([7])[0]?.mend).toBe('put it in quotes, like `"7"`');
});

test("keys with slashes and tildes keep their path", () => {
  const check = compileCheck({ type: "object", additionalProperties: { type: "number" } });
  expect(check({ "a/b~c": "x" })[0]?.path).toEqual(["a/b~c"]);
});

test("a long or many-lined value is shown on one line, cut short", () => {
  const [finding] = findings({ type: "number", examples: [1] }, `one\ntwo ${"x".repeat(200)}`);
  expect(finding).toContain("`it` is one two xxx");
  expect(finding).toContain("xxx..., a number");
  expect(finding?.length).toBeLessThan(200);
});

test("a right value has no findings", () => {
  expect(findings({ type: "number" }, 1)).toEqual([]);
});
