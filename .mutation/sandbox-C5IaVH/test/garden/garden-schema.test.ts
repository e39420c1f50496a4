// @ts-nocheck
import { readFileSync } from "node:fs";
import type { JSONSchema } from "json-schema-to-typescript";
import { expect, test } from "vitest";
import { weekdays } from "../../src/dates.js";
import { signRows } from "../data/data-files.js";
import { compileCheck } from "../support/compile-check.js";

const schemaUrl = new URL("../../schemas/garden.schema.json", import.meta.url);
const schema = JSON.parse(readFileSync(schemaUrl, "utf8")) as JSONSchema;

function* properties(node: JSONSchema, path = ""): Generator<[string, JSONSchema]> {
  for (const [key, property] of Object.entries(node.properties ?? {})) {
    yield [`${path}/${key}`, property];
    yield* properties(property, `${path}/${key}`);
    if (typeof property.items === "object") yield* properties(property.items, `${path}/${key}`);
  }
}

test.each([...properties(schema)])("an editor can explain and complete %s", (_, property) => {
  expect(property.title).toBeTruthy();
  expect(property.description).toMatch(/\.$/);
  expect(property.examples).not.toHaveLength(0);
});

const signs = signRows.map((sign) => sign.key);

test.each<[key: string, plain: readonly string[], forgiven: string[], refused: string[]]>([
  [
    "/feeding/days",
    weekdays,
    ["Mon", "Thursday", "tues", "WEDNESDAY", "saturday"],
    ["funday", "wensday", "mo", "m", "monthly"],
  ],
  [
    "/signs/sign",
    signs,
    ["blossom end rot", "Blossom-End Rot", "White crust", "wilting_at_noon"],
    ["rot", "blossom", "blossomendrot"],
  ],
])(
  "an editor offers the plain words of %s and takes the others",
  (at, plain, forgiven, refused) => {
    const [, property] = [...properties(schema)].find(([path]) => path === at) ?? [];
    const word = (property?.items ?? property) as JSONSchema;
    expect(word.anyOf?.[0]?.enum).toEqual(plain);
    const check = compileCheck(word);
    for (const text of [...plain, ...forgiven]) expect([text, check(text)]).toEqual([text, []]);
    // One slip, one finding, which tells the plain words.
    for (const text of refused)
      expect(check(text).map(({ code }) => [text, code])).toEqual([[text, "schema-enum"]]);
    expect(check(7).map(({ code }) => code)).toEqual(["schema-type"]);
  },
);
