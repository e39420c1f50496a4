/** What a JSON Schema finds wrong, told to growers, not to programmers. */
import { quoted } from "./legible.js";
import { measuresOf, type Measures, onlyUnit, quantityFormats } from "./missing-unit.js";
import type { FilePath, Finding } from "./problem.js";
import {
  commaMend,
  idLike,
  meant,
  type Mending,
  nearest,
  withoutComma,
  yamlWord,
} from "./suggest.js";

/** What is wrong with a value, every finding of it. */
export type SchemaCheck = (value: unknown) => Finding[];

/** A check as ajv compiles it, with all errors and all that they hold. */
export interface CompiledCheck {
  (value: unknown): boolean;
  errors?: readonly SchemaError[] | null;
}

interface SchemaError {
  readonly keyword: string;
  /** JSON pointer. */
  readonly instancePath: string;
  readonly params: unknown;
  readonly message?: string;
  readonly parentSchema?: unknown;
  readonly data?: unknown;
}

interface Schema {
  readonly title?: string;
  /** A list that may be left empty may also be null. */
  readonly type?: string | readonly string[];
  readonly format?: string;
  readonly examples?: readonly unknown[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly enum?: readonly unknown[];
}

export function schemaCheck(check: CompiledCheck): SchemaCheck {
  return (value) => {
    if (check(value)) return [];
    const errors = check.errors ?? [];
    const where = (keyword: string, among = errors): ReadonlySet<string> =>
      new Set(among.filter((e) => e.keyword === keyword).map((e) => e.instancePath));
    const noForm = where("anyOf");
    // Of several forms that a value may have, a word is held against the list of the plain ones, and
    // a group of keys against the group. What is of the wrong type is no value of a list either: one
    // slip, one finding.
    const ofItsForm = errors.filter(
      (e) =>
        !noForm.has(e.instancePath) ||
        (isGroup(e.data) ? !formKeywords.has(e.keyword) : isWordList(e)),
    );
    const wrongType = where("type", ofItsForm);
    const told = ofItsForm.filter((e) => e.keyword === "type" || !wrongType.has(e.instancePath));
    return (told.length > 0 ? told : errors).map((error) => findingOf(error, measuresOf(value)));
  };
}

const formKeywords: ReadonlySet<string> = new Set(["anyOf", "enum", "const"]);

const mapKeywords: ReadonlySet<string> = new Set(["additionalProperties", "required"]);

function isWordList({ keyword }: SchemaError): boolean {
  return keyword === "enum" || keyword === "const";
}

function isGroup(value: unknown): boolean {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function findingOf(error: SchemaError, measures: Measures): Finding {
  const path = pathOf(error.instancePath);
  const schema = (error.parentSchema ?? {}) as Schema;
  // A map is told by its keys: to show the whole of it for each wrong one would take long.
  const found = mapKeywords.has(error.keyword) ? "" : show(error.data);
  const name = typeof path.at(-1) === "string" ? `\`${path.at(-1) as string}\`` : "this";
  const example = exampleOf(schema);
  const params = error.params as Record<string, unknown>;
  const finding = (
    message: string,
    mending: string | Mending,
    more: Partial<Finding> = {},
  ): Finding => ({
    code: `schema-${error.keyword}`,
    path,
    message,
    ...(typeof mending === "string" ? { mend: mending } : mending),
    ...more,
  });
  const limit = String(params["limit"]);
  const beyond = (size: string, bound: string): Finding =>
    finding(`${name} is ${found}, too ${size}`, `it is ${bound}, like ${example}`);
  switch (error.keyword) {
    case "additionalProperties": {
      const key = String(params["additionalProperty"]);
      const known = Object.keys(schema.properties ?? {});
      return finding(
        `the key \`${key}\` is not known here`,
        // Between braces a comma ends the value: `{ water: 1,5 L }` is water of 1 and a key `5 L`.
        /^\d/.test(key)
          ? { mend: `write numbers with a point, like 1.${key}` }
          : keyMend(key, known, error.data),
        { path: [...path, key], atKey: true },
      );
    }
    case "required": {
      const key = String(params["missingProperty"]);
      const sample = schema.properties?.[key]?.examples?.[0];
      return finding(
        `\`${key}\` is missing`,
        sample === undefined ? `add \`${key}\`` : `add it, like \`${key}: ${show(sample)}\``,
      );
    }
    case "type":
      return finding(...typeTrouble(error, schema, name, measures));
    case "enum": {
      const known = schema.enum ?? [];
      const words = known.map(String);
      const near = nearest(String(error.data), words);
      const { mend, fix } = meant(near, `it is one of ${words.join(", ")}`);
      const isWord = typeof known[words.indexOf(near ?? "")] === "string";
      return finding(`${name} cannot be ${found}`, {
        mend,
        ...(near !== undefined && fix !== undefined && { fix: isWord ? fix : near }),
      });
    }
    case "const":
      return finding(`${name} cannot be ${found}`, `write ${show(params["allowedValue"])}`);
    case "pattern": {
      const offered = idLike(String(error.data));
      const characters = "letters, digits, dots, dashes and underscores";
      return finding(
        `${name} cannot be ${found}`,
        new RegExp(String(params["pattern"])).test(offered)
          ? { mend: `write \`${offered}\`: ${characters}`, fix: yamlWord(offered) }
          : `use ${characters}, like ${example}`,
      );
    }
    case "minItems":
      if (Number(limit) > 1) return finding(`${name} is too short`, `it has ${limit} of them`);
      return finding(`${name} is empty`, `give at least one, like ${example}`);
    case "minProperties":
    case "minLength":
      return finding(`${name} is empty`, `give at least one, like ${example}`);
    case "uniqueItems":
      return finding(`${name} names the same thing twice`, "keep one of them");
    case "minimum":
      return beyond("small", `${limit} or more`);
    case "exclusiveMinimum":
      return beyond("small", `more than ${limit}`);
    case "maximum":
      return beyond("large", `${limit} or less`);
    case "maxLength":
    case "maxItems":
      return finding(`${name} is too long`, `at most ${limit}`);
    default:
      return finding(`${name} ${error.message ?? "is wrong"}`, `write it like ${example}`);
  }
}

function typeTrouble(
  { data }: SchemaError,
  schema: Schema,
  name: string,
  measures: Measures,
): [message: string, mending: string | Mending] {
  const [found, example] = [show(data), exampleOf(schema)];
  if (typeof data === "number" && quantityFormats.has(schema.format ?? "")) {
    const amount = schema.examples?.find((one) => typeof one === "string" && /^\d/.test(one));
    const unit = onlyUnit(schema, measures);
    return [
      `${name} is the number ${data} without a unit`,
      {
        mend: `write the unit behind the number, like ${amount === undefined ? example : show(amount)}`,
        ...(unit !== undefined && data >= 0 && { fix: `${data} ${unit}` }),
      },
    ];
  }
  if (isPlainText(schema) && ["number", "boolean"].includes(typeof data))
    return [
      `${name} is ${found}, text is needed`,
      `put it in quotes, like \`${name === "this" ? "" : `${name.slice(1, -1)}: `}"${found}"\``,
    ];
  if (typeof data === "string" && ["number", "integer"].includes(String(schema.type))) {
    const comma = commaMend(data);
    if (comma !== undefined)
      return [
        `${name} has a comma in the number ${found}`,
        { mend: comma, ...(/^[\d,-]+$/.test(data) && { fix: withoutComma(data) }) },
      ];
  }
  if (data === null) return [`${name} has no value`, `give it one, like ${example}`];
  return [`${name} is ${found}, ${typeInWords(schema)} is needed`, `write it like ${example}`];
}

/** A key that stands there already is not the one to write. */
function keyMend(key: string, known: readonly string[], group: unknown): Mending {
  const near = nearest(key, known);
  const { mend, fix } = meant(near, `the keys here are ${known.join(", ")}`);
  const isTaken = near !== undefined && isGroup(group) && Object.hasOwn(group as object, near);
  return { mend, ...(fix !== undefined && !isTaken && { fix }) };
}

/** Any text will do: no kind of text that our own code reads, no list of words. */
function isPlainText(schema: Schema): boolean {
  return schema.type === "string" && schema.format === undefined && schema.enum === undefined;
}

/** A JSON pointer -> keys and indexes. */
function pathOf(pointer: string): FilePath {
  return pointer
    .split("/")
    .slice(1)
    .map((step) => step.replaceAll("~1", "/").replaceAll("~0", "~"))
    .map((step) => (/^\d+$/.test(step) ? Number(step) : step));
}

const typesInWords: Readonly<Record<string, string>> = {
  object: "a group of keys",
  array: "a list",
  integer: "a whole number",
  number: "a number",
  boolean: "true or false",
};

function typeInWords({ type = "", format = "" }: Schema): string {
  const words = typesInWords[[type].flat()[0] ?? ""];
  if (words !== undefined) return words;
  if (format === "day") return "a date";
  if (format === "clock") return "a time of day";
  return quantityFormats.has(format) ? "an amount with its unit" : "text";
}

function exampleOf(schema: Schema): string {
  const sample = schema.examples?.[0] ?? schema.enum?.[0];
  return sample === undefined ? "the examples in the README" : show(sample);
}

/** A value as it would stand in the file, short enough for one line. */
function show(value: unknown): string {
  if (value === null) return "nothing";
  return quoted(flow(value, roomOfShown));
}

/** More than is shown of any value. */
const roomOfShown = 200;

/** @param room letters wanted: what comes after them is left out, as a whole file may be the value */
function flow(value: unknown, room: number): string {
  if (typeof value === "object" && value !== null) {
    const isList = Array.isArray(value);
    const parts: string[] = [];
    let left = room;
    for (const key in value) {
      const item = flow((value as Readonly<Record<string, unknown>>)[key], left);
      const part = isList ? item : `${key}: ${item}`;
      parts.push(part);
      left -= part.length;
      if (left < 0) break;
    }
    return isList ? `[${parts.join(", ")}]` : `{ ${parts.join(", ")} }`;
  }
  if (typeof value === "number" && !Number.isFinite(value))
    return Number.isNaN(value) ? ".nan" : value > 0 ? ".inf" : "-.inf";
  return typeof value === "string" ? value : JSON.stringify(value);
}
