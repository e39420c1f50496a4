/** A garden file that is JSON stays JSON, laid out as it was. */
import { newlineOf } from "./line-ends.js";

export function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

/**
 * The file with what it is to say, where its layout is that of `JSON.stringify`: on one line, or each
 * value on its own, set in alike.
 *
 * @param says what it says now
 * @returns undefined for any other text
 */
export function jsonText(text: string, says: unknown, said: unknown): string | undefined {
  const [start = "", end = ""] = [/^\s*/.exec(text)?.[0], /\s*$/.exec(text)?.[0]];
  const [, indent = ""] = /^\s*\{(?:\r\n|\r|\n)([ \t]+)"/.exec(text) ?? [];
  const written = (value: unknown): string =>
    start + JSON.stringify(value, null, indent).replaceAll("\n", newlineOf(text)) + end;
  return written(says) === text ? written(said) : undefined;
}

/** On one line, with blanks between. */
export function jsonFlow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(jsonFlow).join(", ")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const pairs = Object.entries(value).map(
    ([key, part]) => `${JSON.stringify(key)}: ${jsonFlow(part)}`,
  );
  return `{ ${pairs.join(", ")} }`;
}
