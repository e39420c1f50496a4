import { onOneLine } from "../legible.js";

/** Names of files: their blanks count. */
const ofFiles: ReadonlySet<string> = new Set(["rules", "seen", "forecast", "file"]);

/**
 * Makes every text of a file that has been read one line, since none of its keys takes several: names
 * and reasons stand in titles, tables and on labels. A file's name only loses line breaks at its end.
 *
 * @param value plain, of this reading alone; no part of it holds itself
 */
export function textsOnOneLine(value: unknown, done = new Set<object>()): void {
  if (typeof value !== "object" || value === null || done.has(value)) return;
  done.add(value);
  const parts = value as Record<string, unknown>;
  for (const key of Object.keys(parts)) {
    const part = parts[key];
    if (typeof part !== "string") textsOnOneLine(part, done);
    else parts[key] = ofFiles.has(key) ? part.replace(/[\r\n]+$/, "") : onOneLine(part);
  }
}
