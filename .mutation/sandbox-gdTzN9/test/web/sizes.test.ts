/** What a browser has to fetch before the editor and the plan are there. */
// @ts-nocheck

import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { gzipSync } from "node:zlib";
import { beforeAll, expect, test } from "vitest";
import { type Built, built } from "./a-web-page.js";

let web: Built;
beforeAll(async () => {
  web = await built();
});

function gzipBytes(name: string): number {
  return gzipSync(readFileSync(join(web.dir, name)), { level: 9 }).length;
}

/** A script and what it imports at once. */
function withImports(name: string, seen = new Set<string>()): ReadonlySet<string> {
  if (seen.has(name)) return seen;
  seen.add(name);
  const [, script] = Object.entries(web.scripts).find(([path]) => basename(path) === name) ?? [];
  if (script === undefined) throw new Error(`no script ${name}`);
  for (const { path, kind } of script.imports)
    if (kind === "import-statement") withImports(basename(path), seen);
  return seen;
}

/** The editor is asked for by the page's script as soon as it runs. */
function firstView(): string[] {
  const editor = readdirSync(web.dir).filter((name) => /^app-editor-.*[.]js$/.test(name));
  const scripts = ["app.js", "worker.js", ...editor].flatMap((name) => [...withImports(name)]);
  return ["index.html", "app.css", "icon.svg", "manifest.webmanifest", ...new Set(scripts)];
}

test("editor and plan are at most 400 kB, compressed", () => {
  const bytes = firstView().reduce((sum, name) => sum + gzipBytes(name), 0);
  expect(bytes).toBeLessThan(400_000);
});

test("climate, calendar and prints are fetched when they are asked for", () => {
  const first = firstView();
  for (const later of [/normals-points/, /-make-/, /-reasons-/, /earlier-calendar/, /-examples-/]) {
    expect(readdirSync(web.dir).some((name) => later.test(name))).toBe(true);
    expect(first.filter((name) => later.test(name))).toEqual([]);
  }
});

test("no script of the page makes code from text", () => {
  const scripts = readdirSync(web.dir).filter((name) => name.endsWith(".js"));
  expect(scripts.length).toBeGreaterThan(5);
  for (const name of scripts)
    expect(readFileSync(join(web.dir, name), "utf8")).not.toMatch(/\beval\(|new Function\(/);
});
