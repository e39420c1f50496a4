import { existsSync, mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, expect, test, vi } from "vitest";
import { commandList } from "../../src/cli/command-list.js";
import { keepCompiled, keptCommands } from "../../src/cli/compile-cache.js";
import { scratchFile, scratchFolder } from "../support/run-cli.js";

let caches: string;
beforeEach(() => {
  caches = scratchFolder();
  vi.stubEnv("XDG_CACHE_HOME", caches);
});

/** As Node.js does at the end of a run, where there is nothing yet. */
function aRun(command: string, endsWell: boolean): string {
  let used = "";
  const keep = keepCompiled(command, (folder) => {
    used = folder;
    mkdirSync(folder, { recursive: true });
    if (!existsSync(join(folder, "code"))) writeFileSync(join(folder, "code"), command);
  });
  if (endsWell) keep();
  return used;
}

test("every command but those that only tell of the others has a folder of its own", () => {
  const names = commandList.map(({ usage }) => usage.split(" ")[0]);
  expect([...keptCommands, "help", "completion"].sort()).toEqual(names.sort());
  expect(aRun("plan", true)).toBe(join(caches, "feedround", "plan"));
  expect(aRun("check", true)).toBe(join(caches, "feedround", "check"));
  for (const other of ["", "help", "../plan", "no-command"]) expect(aRun(other, true)).toBe("");
  expect(readdirSync(join(caches, "feedround")).sort()).toEqual(["check", "plan"]);
});

test("what a run kept that ended badly is thrown away, what one kept that ended well stays", () => {
  const folder = aRun("plan", false);
  writeFileSync(join(folder, "code"), "half");
  writeFileSync(join(aRun("plan", true), "more"), "");
  expect(readdirSync(folder).sort()).toEqual(["code", "made-by", "more"]);
  aRun("plan", false);
  expect(readdirSync(folder).sort()).toEqual(["code", "made-by", "more"]);
  // Of another version.
  writeFileSync(join(folder, "made-by"), "0.0.1 v22.1.0");
  aRun("plan", true);
  expect(readdirSync(folder).sort()).toEqual(["code", "made-by"]);
});

test("where nothing can be written, nothing is kept, and nothing is said", () => {
  vi.stubEnv("XDG_CACHE_HOME", scratchFile("file", ""));
  expect(() => aRun("plan", true)).not.toThrow();
});
