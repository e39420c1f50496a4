/** The `log` command on a file whose last line is the comment `# the end`. */
// @ts-nocheck

import { readFileSync } from "node:fs";
import { expect } from "vitest";
import { cli, type CliResult } from "../support/run-cli.js";

export async function log(path: string, today: string, ...argv: string[]): Promise<CliResult> {
  const before = fileText(path);
  const result = await cli(["log", path, ...argv], { today });
  // Whatever is written, comments stay.
  expect(fileText(path)).toContain("# the end");
  if (result.code !== 0) expect(fileText(path)).toBe(before);
  return result;
}

export async function logged(path: string, today: string, ...argv: string[]): Promise<string> {
  const { code, stdout, stderr } = await log(path, today, ...argv);
  expect({ code, stderr }).toEqual({ code: 0, stderr: `${path}: written\n` });
  return stdout;
}

export function fileText(path: string): string {
  return readFileSync(path, "utf8");
}
