#!/usr/bin/env node
/** The bin: hands the world to `run` and its exit code back. */
import { DateTime, Settings } from "luxon";
import { setTimeout as sleep } from "node:timers/promises";
import { day } from "../dates.js";
import { run } from "./program.js";
import { exitCodes, type Shell } from "./shell.js";

Settings.throwOnInvalid = true;

// A reader that stops early (`| head`) is no error.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(exitCodes.fine);
  throw error;
});

const isTerminal = process.stdout.isTTY;
const shell: Shell = {
  stdout: (text) => void process.stdout.write(text),
  stderr: (text) => void process.stderr.write(text),
  readStdin: async (mostBytes) => {
    const chunks: Buffer[] = [];
    let size = 0;
    for await (const chunk of process.stdin) {
      chunks.push(chunk as Buffer);
      size += (chunk as Buffer).length;
      if (size > mostBytes) break;
    }
    return Buffer.concat(chunks);
  },
  today: (zone) => day(DateTime.now().setZone(zone).toISODate() ?? ""),
  now: secondsClock(),
  pause: (ms) => sleep(ms),
  localTimezone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  ...(isTerminal ? { columns: process.stdout.columns } : {}),
  progress: process.stderr.isTTY,
  ...(process.env["XDG_STATE_HOME"] ? { stateHome: process.env["XDG_STATE_HOME"] } : {}),
  color: isTerminal && !process.env["NO_COLOR"] && process.env["TERM"] !== "dumb",
};

try {
  process.exitCode = await run(process.argv.slice(2), shell);
} catch (error) {
  process.stderr.write(
    `feedround: this is a fault of the program, not of your file: ${String(error)}\n` +
      "Please report it with the garden file; FEEDROUND_DEBUG=1 shows where it happened.\n",
  );
  if (process.env["FEEDROUND_DEBUG"]) console.error(error);
  process.exitCode = exitCodes.bug;
}
