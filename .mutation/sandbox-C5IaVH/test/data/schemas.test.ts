// @ts-nocheck
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { compileCheck } from "../support/compile-check.js";
import { dataFiles, readData, readSchema } from "./data-files.js";

type Node = Readonly<Record<string, unknown>>;

const files = Object.entries(dataFiles) as [keyof typeof dataFiles, string][];

function validator(schema: Node): (value: unknown) => string[] {
  const ajv = new Ajv2020({
    allErrors: true,
    strict: true,
    formats: { rate: true, days: true, concentration: true, temperature: true },
    keywords: ["errorMessage"],
  });
  const validate = ajv.compile(schema);
  return (value) =>
    validate(value)
      ? []
      : (validate.errors ?? []).map((e) => `${e.instancePath} ${e.message ?? e.keyword}`);
}

/** Every property of a schema, with the path to it. */
function* properties(node: Node, path = ""): Generator<[string, Node]> {
  for (const [key, property] of Object.entries((node["properties"] ?? {}) as Node)) {
    yield [`${path}/${key}`, property as Node];
    yield* properties(property as Node, `${path}/${key}`);
  }
  if (node["items"] !== undefined) yield* properties(node["items"] as Node, `${path}[]`);
}

describe.each(files)("%s", (file, name) => {
  const schema = readSchema(name);
  const check = validator(schema);

  test("satisfies its schema", () => {
    expect(check(readData(file))).toEqual([]);
  });

  test("is refused when a row loses its source or gains an unknown key", () => {
    const data = readData(file) as Record<string, Record<string, unknown>[]>;
    const [list] = Object.entries(data).filter(([, value]) => Array.isArray(value));
    if (list === undefined) throw new Error("no rows");
    const [key, [first]] = list;
    const { source, ...unsourced } = first ?? {};
    expect(source).toBeTruthy();
    expect(check({ ...data, [key]: [{ ...first, colour: "red" }] })).not.toEqual([]);
    if (name !== "rules") expect(check({ ...data, [key]: [unsourced] })).not.toEqual([]);
  });

  test("has a schema that explains itself: id, and title, description and examples throughout", () => {
    expect(schema["$schema"]).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(schema["$id"]).toBe(`https://feedround.invalid/schemas/${name}.schema.json`);
    for (const [path, property] of [["", schema] as [string, Node], ...properties(schema)]) {
      expect(property["title"], path).toBeTruthy();
      expect(property["description"], path).toMatch(/\.$/);
      expect(property["examples"], path).not.toHaveLength(0);
    }
  });

  test("has examples in its schema that satisfy the schema", () => {
    for (const example of schema["examples"] as unknown[]) expect(check(example)).toEqual([]);
    for (const [path, property] of properties(schema))
      for (const example of property["examples"] as unknown[])
        expect(validator(property)(example), path).toEqual([]);
  });
});

describe("a grower's own rule file", () => {
  const check = compileCheck(readSchema("rules"));
  const least = {
    id: "mine",
    crops: ["tomato"],
    stages: ["fruit-set"],
    rate: "10 mL in 4 L",
    interval: { shortest: "7 days", target: "10 days", longest: "14 days" },
  };

  test("needs no more than an id, crops, stages, a rate and an interval", () => {
    expect(check({ version: 1, rules: [least] })).toEqual([]);
  });

  test.each([
    ["a key that is misspelt", { ...least, intervall: least.interval }, /`intervall` is not known/],
    ["a rate without a unit", { ...least, rate: 2.5 }, /the number 2.5 without a unit/],
    ["a stage that does not exist", { ...least, stages: ["fruiting"] }, /cannot be fruiting/],
    ["no interval", { ...least, interval: undefined }, /`interval` is missing/],
  ])("is refused with %s", (_, rule, message) => {
    const findings = check(JSON.parse(JSON.stringify({ version: 1, rules: [rule] })));
    expect(findings.map((f) => f.message)).toEqual([expect.stringMatching(message)]);
  });
});
