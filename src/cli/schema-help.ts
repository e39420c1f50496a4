/** The manual of a file format, made from its schema, so that it cannot go stale. */
import { readFileSync } from "node:fs";
import { type TextStyle, wrap } from "./terminal-text.js";

export interface HelpSchema {
  readonly title?: string;
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly default?: unknown;
  readonly examples?: readonly unknown[];
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, HelpSchema>>;
  readonly items?: HelpSchema;
  readonly anyOf?: readonly HelpSchema[];
}

/** `schemas/<name>.schema.json`, which comes with the program for editors too. */
export function readSchema(name: string): HelpSchema {
  const file = new URL(`../../schemas/${name}.schema.json`, import.meta.url);
  return JSON.parse(readFileSync(file, "utf8")) as HelpSchema;
}

export function schemaHelp(schema: HelpSchema, style: TextStyle): string {
  return [
    style.heading(schema.title ?? ""),
    ...wrap(schema.description ?? "", style.width),
    "",
    ...keysHelp(schema, 0, style),
  ].join("\n");
}

function keysHelp(schema: HelpSchema, depth: number, style: TextStyle): string[] {
  return Object.entries(schema.properties ?? {}).flatMap(([key, property]) => {
    const indent = "  ".repeat(depth);
    const inset = `${indent}    `;
    const must = schema.required?.includes(key) ? " (needed)" : "";
    const list = [property.type].flat().includes("array") ? " (a list)" : "";
    const about = [
      property.description ?? "",
      ...(property.enum ? [`One of: ${property.enum.map(String).join(", ")}.`] : []),
      ...(property.default === undefined ? [] : [`Without it: ${inFlow(property.default)}.`]),
    ].join(" ");
    const example = property.examples?.[0];
    // Of several forms the group of keys is the one with something to explain.
    const group = property.anyOf?.find((form) => form.properties !== undefined) ?? property;
    const isNested = property.properties !== undefined || property.items?.properties !== undefined;
    return [
      `${indent}${style.heading(`${key}:`)}${must}${list}`,
      ...wrap(about, style.width - inset.length).map((line) => inset + line),
      ...(example === undefined || isNested ? [] : [`${inset}${key}: ${inFlow(example)}`]),
      ...keysHelp(group, depth + 1, style),
      ...(property.items ? keysHelp(property.items, depth + 1, style) : []),
    ];
  });
}

/** A value as it stands in YAML, on one line. */
function inFlow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inFlow).join(", ")}]`;
  if (typeof value === "object" && value !== null)
    return `{ ${Object.entries(value)
      .map(([key, item]) => `${key}: ${inFlow(item)}`)
      .join(", ")} }`;
  return typeof value === "string" && /^\d+:\d+$/.test(value) ? `"${value}"` : String(value);
}
