import { readFileSync } from "node:fs";
import type { JSONSchema } from "json-schema-to-typescript";
import { expect, test } from "vitest";

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
