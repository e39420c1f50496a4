#!/usr/bin/env node
/** The bin: little of it, so that what is asked for begins at once. */
import { keepCompiled } from "./compile-cache.js";
import { version } from "./version.js";

// A reader that stops early (`| head`) is no error.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
});

const argv = process.argv.slice(2);
if (argv.length === 1 && ["-V", "--version"].includes(argv[0] ?? "")) {
  process.stdout.write(`${version()}\n`);
} else {
  const keep = keepCompiled(argv[0]);
  const { start } = await import("./start.js");
  process.exitCode = await start(argv);
  if (process.exitCode === 0) keep();
}
