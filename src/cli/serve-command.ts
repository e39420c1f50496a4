import type { Day } from "../dates.js";
import { announcement, batchedLines, serveGardens, stopOnSignals } from "../serve/index.js";
import { given } from "../values.js";
import { sourceOf, threadsFor } from "./garden-reading.js";
import { gardenWriter } from "./garden-writer.js";
import { ioTrouble } from "./report.js";
import { exitCodes, type Shell, wrongUsage } from "./shell.js";
import { webFolder } from "./writing-page.js";
import { fstatSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";

interface ServeWishes {
  /** Stays today for as long as it runs; the clock's without it. */
  readonly today?: Day;
  readonly extraRounds?: number;
  readonly host?: string;
  readonly port?: number;
  readonly url?: string;
  readonly cert?: string;
  readonly key?: string;
  readonly state?: string;
  readonly write?: true;
}

/** Runs until it is told to stop (SIGTERM, SIGINT). */
export async function serveCommand(
  gardens: readonly string[],
  { host, port, url, cert, key, state, write, today, extraRounds }: ServeWishes,
  shell: Shell,
): Promise<number> {
  if ((cert === undefined) !== (key === undefined))
    throw wrongUsage("--cert and --key go together: the certificate, and its own key");
  const certificate = cert !== undefined && key !== undefined ? { cert, key } : undefined;
  const lines = batchedLines(shell.stderr, { sizeBytes: () => fileBytes(standardError) });
  const wishes = given({ extraRounds, write });
  const server = await serveGardens({
    gardens,
    source: sourceOf(wishes),
    stateDir: state ?? stateFolder(shell),
    log: lines.log,
    logRequest: lines.logRequest,
    pause: shell.pause,
    nowMs: () => Date.parse(shell.now()),
    ...given({ host, port, url, certificate, today, threads: threadsFor(wishes, shell) }),
    ...(write ? { writing: { writer: gardenWriter(shell), webDir: webFolder } } : {}),
  });
  if (!server.ok) throw ioTrouble(server.problems);
  // Gardens are named once they have been read; a folder of very many is not waited for.
  await Promise.race([server.value.ready, sleep(1500, undefined, { ref: false })]);
  shell.stdout(announcement(server.value, shell.color));
  await stopOnSignals(server.value.stop);
  lines.flush();
  return exitCodes.fine;
}

const standardError = 2;

/** 0 for a terminal, a pipe and the like. */
export function fileBytes(fd: number): number {
  try {
    const is = fstatSync(fd);
    return is.isFile() ? is.size : 0;
  } catch {
    return 0;
  }
}

/** The XDG Base Directory Specification's place for state. */
function stateFolder(shell: Shell): string {
  return join(shell.stateHome ?? join(homedir(), ".local", "state"), "feedround");
}
