/** The process's own outputs, and what becomes of what they do not take. */
import { fstatSync, statSync, writeSync } from "node:fs";
import { devNull } from "node:os";
import { exitCodes } from "./shell.js";

export interface StandardOutputs {
  readonly stdout: (text: string) => void;
  readonly stderr: (text: string) => void;
}

/**
 * Where standard output takes nothing more, the command goes on, since it may have a file to write; it
 * is told once, and the exit code says so. A reader that stops early (`| head`) is no trouble. Nobody
 * can be told that standard error takes nothing.
 */
export function standardOutputs(): StandardOutputs {
  let isHeard = false;
  const stderr = (text: string): void => {
    if (!isHeard) process.stderr.on("error", () => undefined);
    isHeard = true;
    process.stderr.write(text);
  };
  let isOver = false;
  const trouble = ({ code }: NodeJS.ErrnoException): void => {
    if (isOver) return;
    isOver = true;
    if (code === "EPIPE") return;
    const why =
      code === "ENOSPC" ? "the disk is full: make room" : `it cannot be written (${String(code)})`;
    stderr(`standard output: ${why}\n`);
    process.exitCode = exitCodes.io;
  };
  if (!isFile()) {
    process.stdout.on("error", trouble);
    return { stdout: (text) => void process.stdout.write(text), stderr };
  }
  return {
    stdout: (text) => {
      if (isOver) return;
      try {
        writeAll(text);
      } catch (error) {
        trouble(error as NodeJS.ErrnoException);
      }
    },
    stderr,
  };
}

/** Standard output (1) or error (2); where it is plain that it is none, without the time that a stream takes. */
export function isTerminalAt(descriptor: 1 | 2): boolean {
  const about = fstatSync(descriptor);
  if (!about.isCharacterDevice() || about.rdev === statSync(devNull).rdev) return false;
  return (descriptor === 1 ? process.stdout : process.stderr).isTTY;
}

function isFile(): boolean {
  const about = fstatSync(1);
  return about.isFile() || (about.isCharacterDevice() && !isTerminalAt(1));
}

/** Node.js's own stream takes no notice where a nearly full disk takes only a part. */
function writeAll(text: string): void {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length;) at += writeSync(1, bytes, at);
}
