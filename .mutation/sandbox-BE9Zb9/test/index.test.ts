// @ts-nocheck
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { planGarden } from "../src/plan-garden.js";
import { loadTables } from "../src/tables.js";
import { scratchFile } from "./support/run-cli.js";

const face = readFileSync(new URL("../src/index.ts", import.meta.url), "utf8");

/** The code of the first @example, and what its comments say it prints. */
function example(): { code: string; prints: string[] } {
  const lines = (/@example\n([\s\S]*?)\n \*\//.exec(face)?.[1] ?? "")
    .split("\n")
    .map((line) => line.replace(/^ \* ?/, ""));
  return {
    code: lines.filter((line) => !line.startsWith("// ")).join("\n"),
    prints: lines.filter((line) => line.startsWith("// ")).map((line) => line.slice(3)),
  };
}

test("the example of the library's public face prints what it says", () => {
  const built = fileURLToPath(new URL("../dist/index.js", import.meta.url));
  const { code, prints } = example();
  const file = scratchFile("example.mjs", code.replace('"feedround"', JSON.stringify(built)));
  expect(execFileSync(process.execPath, [file], { encoding: "utf8" }).trim().split("\n")).toEqual(
    prints,
  );
});

test("a grower's own rules come in as text", () => {
  const text = readFileSync(new URL("../examples/orchard-corner.yaml", import.meta.url), "utf8");
  const ownRules = readFileSync(new URL("../examples/orchard-rules.yaml", import.meta.url), "utf8");
  const planned = planGarden(text, loadTables(), { today: "2027-09-01", ownRules });
  expect(planned.ok && planned.value.rules.map((rule) => rule.id)).toContain("our-pumpkins");
  const broken = planGarden(text, loadTables(), { today: "2027-09-01", ownRules: "version: 1" });
  expect(broken.ok ? [] : broken.problems.map((p) => p.file)).toEqual(["orchard-rules.yaml"]);
});

test("today must be a day", () => {
  expect(() => planGarden("", loadTables(), { today: "now" })).toThrow(RangeError);
});
