/** Where the values of all data files come from. */
// @ts-nocheck

import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { parse } from "yaml";

const src = new URL("../../src/", import.meta.url);
const files = readdirSync(src, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".yaml"))
  .sort();

/** Rows of a file, each a mapping, that say of themselves that something is from memory. */
function fromMemory(node: unknown): number {
  if (typeof node !== "object" || node === null) return 0;
  const values: readonly unknown[] = Object.values(node);
  const own = values.some((value) => typeof value === "string" && value.includes("from memory"));
  return values.reduce((sum: number, value) => sum + fromMemory(value), own ? 1 : 0);
}

test("a row counts once, however deep it lies", () => {
  const rows = [
    { source: "from memory", source_status: "from memory" },
    { of: { a: { source: "read; the rest from memory" }, b: { source: "read" } } },
  ];
  expect(fromMemory(rows)).toBe(2);
});

test("fewer than 30 rows of all data files are still from memory", () => {
  const counts = files.map((file) => fromMemory(parse(readFileSync(new URL(file, src), "utf8"))));
  const total = counts.reduce((sum, count) => sum + count, 0);
  const told = files.map((file, i) => `${file}: ${counts[i] ?? 0}`);
  console.log(`still from memory: ${total} rows\n${told.join("\n")}`);
  expect(total).toBeLessThan(30);
});
