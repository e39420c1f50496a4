#!/usr/bin/env node
/** The bin: little of it, so that what is asked for begins at once. */
import { keptScript } from "./kept-script.js";
import { standardOutputs } from "./standard-output.js";
import type { start } from "./start.js";
import { version } from "./version.js";

/** Told by `scripts/build-program.js`: the mark of the program's script, and its commands. */
declare const EDITION: string;
declare const COMMANDS: readonly string[];

/**
 * Node.js 20 makes fast code of a function so early that a second thread works as long as the plan
 * takes; newer ones wait by themselves, and know no such option.
 */
async function optimiseLate(): Promise<void> {
  if (!process.version.startsWith("v20.")) return;
  const { setFlagsFromString } = await import("node:v8");
  setFlagsFromString("--interrupt-budget=600000");
}

/** Gives the exit code. */
async function main(argv: readonly string[]): Promise<number> {
  const outputs = standardOutputs();
  if (argv.length === 1 && ["-V", "--version"].includes(argv[0] ?? "")) {
    outputs.stdout(`${version()}\n`);
    return 0;
  }
  await optimiseLate();
  const asksHelp = argv.some((word) => ["-h", "--help"].includes(word));
  const use = asksHelp ? undefined : COMMANDS.find((command) => command === argv[0]);
  const program = keptScript(new URL("program.cjs", import.meta.url), use, EDITION);
  const { start: begin } = program.exports as { start: typeof start };
  const code = await begin(argv, outputs);
  if (code === 0) program.keep();
  return code;
}

void main(process.argv.slice(2)).then((code) => {
  // Standard output may have had trouble.
  process.exitCode ??= code;
});
