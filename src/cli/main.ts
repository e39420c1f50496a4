#!/usr/bin/env node
/** The bin: little of it, so that what is asked for begins at once. */
import { keepCompiled } from "./compile-cache.js";
import { standardOutputs } from "./standard-output.js";
import { version } from "./version.js";

const argv = process.argv.slice(2);
const outputs = standardOutputs();
if (argv.length === 1 && ["-V", "--version"].includes(argv[0] ?? "")) {
  outputs.stdout(`${version()}\n`);
} else {
  const keep = keepCompiled(argv[0]);
  const { start } = await import("./start.js");
  const code = await start(argv, outputs);
  // Standard output may have had trouble.
  process.exitCode ??= code;
  if (code === 0) keep();
}
