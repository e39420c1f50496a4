/** The process's own outputs, and what becomes of what they do not take. */
import { fstatSync, writeSync } from "node:fs";
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
  const stderr = (text: string): void => void process.stderr.write(text);
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
  process.stdout.on("error", trouble);
  process.stderr.on("error", () => undefined);
  if (!isFile()) return { stdout: (text) => void process.stdout.write(text), stderr };
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

function isFile(): boolean {
  const about = fstatSync(process.stdout.fd);
  return about.isFile() || (about.isCharacterDevice() && !process.stdout.isTTY);
}

/** Node.js's own stream takes no notice where a nearly full disk takes only a part. */
function writeAll(text: string): void {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length;) at += writeSync(process.stdout.fd, bytes, at);
}
