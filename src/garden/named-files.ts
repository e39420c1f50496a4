import { readYaml } from "./read.js";

/**
 * Paths of the files that are read with a garden file, as written: rules and weather. Also of one
 * with problems; none of a text that is no YAML, since nothing but an edit of it can mend that.
 */
export function namedFiles(text: string): string[] {
  // Most gardens name none, and reading YAML takes its time; an escape may spell any letter.
  if (!/rules|weather|\\/.test(text)) return [];
  const read = readYaml(text, "");
  if (!read.ok) return [];
  const weather = keyOf(read.value.value, "weather");
  return [
    keyOf(read.value.value, "rules"),
    keyOf(weather, "seen"),
    keyOf(weather, "forecast"),
  ].filter((path) => typeof path === "string");
}

function keyOf(value: unknown, key: string): unknown {
  return typeof value === "object" && value !== null && Object.hasOwn(value, key)
    ? (value as Record<string, unknown>)[key]
    : undefined;
}
