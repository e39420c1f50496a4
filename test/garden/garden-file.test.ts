import { readFileSync } from "node:fs";
import { compile, type JSONSchema } from "json-schema-to-typescript";
import { format } from "prettier";
import { expect, test } from "vitest";

const schemaUrl = new URL("../../schemas/garden.schema.json", import.meta.url);
const schema = JSON.parse(readFileSync(schemaUrl, "utf8")) as JSONSchema;

/** Titles name the interfaces; a title on a plain text would make a type alias of it. */
function objectTitlesOnly(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(objectTitlesOnly);
  if (typeof node !== "object" || node === null) return node;
  const isPlain = "title" in node && "type" in node && node.type !== "object";
  return Object.fromEntries(
    Object.entries(node)
      .filter(([key]) => key !== "examples" && !(isPlain && key === "title"))
      .map(([key, value]) => [key, objectTitlesOnly(value)]),
  );
}

/** After a change of the schema: `npm run unit -- garden-file -u`. */
test("the TypeScript types of the garden file are those that its schema gives", async () => {
  const types = await compile(
    { ...(objectTitlesOnly(schema) as JSONSchema), title: "GardenFile" },
    "GardenFile",
    {
      bannerComment:
        "/** Made from schemas/garden.schema.json; test/garden/garden-file.test.ts says how. Do not edit. */",
      format: false,
      ignoreMinAndMaxItems: true,
    },
  );
  await expect(await format(types, { parser: "typescript", printWidth: 100 })).toMatchFileSnapshot(
    "../../src/garden/garden-file.ts",
  );
});

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
