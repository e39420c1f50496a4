import type { Day } from "../dates.js";
import type { Problem, Result } from "../problem.js";
import {
  announcement,
  type AsOf,
  batchedLines,
  gardenSource,
  type GardenSource,
  type PlannedGarden,
  publishGardens,
  serveGardens,
  stopOnSignals,
  todayIn,
  type Trouble,
} from "../serve/index.js";
import { loadTables } from "../tables.js";
import { tickSheet } from "../ticks/index.js";
import { given } from "../values.js";
import { gardenWriter } from "./garden-writer.js";
import { loadGarden } from "./load.js";
import { ownCalendar } from "./published-state.js";
import { reportProblems, withMend } from "./report.js";
import { CommandError, exitCodes, type Shell, wrongUsage } from "./shell.js";
import { webFolder, writingPage } from "./writing-page.js";
import { fstatSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";

interface PlanWishes {
  /** Stays today for as long as it runs; the clock's without it. */
  readonly today?: Day;
  readonly extraRounds?: number;
}

interface ServeWishes extends PlanWishes {
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
  { host, port, url, cert, key, state, write, ...wishes }: ServeWishes,
  shell: Shell,
): Promise<number> {
  if ((cert === undefined) !== (key === undefined))
    throw wrongUsage("--cert and --key go together: the certificate, and its own key");
  const certificate = cert !== undefined && key !== undefined ? { cert, key } : undefined;
  const lines = batchedLines(shell.stderr, { sizeBytes: () => fileBytes(standardError) });
  const server = await serveGardens({
    gardens,
    source: sourceOf(shell, { ...wishes, ...given({ write }) }),
    stateDir: state ?? stateFolder(shell),
    log: lines.log,
    logRequest: lines.logRequest,
    pause: shell.pause,
    nowMs: () => Date.parse(shell.now()),
    ...given({ host, port, url, certificate, today: wishes.today }),
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

interface PublishWishes extends PlanWishes {
  readonly index?: true;
  readonly writing?: true;
  readonly url?: string;
}

export async function publishCommand(
  dir: string,
  gardens: readonly string[],
  { index, url, writing, ...wishes }: PublishWishes,
  shell: Shell,
): Promise<number> {
  // On a terminal, one line counts up while a folder of gardens is worked on.
  const show = shell.progress ? shell.stderr : () => undefined;
  const published = await publishGardens({
    gardens,
    dir,
    source: sourceOf(shell, wishes),
    waiting: { pause: shell.pause },
    nowMs: Date.parse(shell.now()),
    onGarden: (done, all) => {
      if (all > 1) show(`\r${done} of ${all} gardens`);
    },
    ...given({ index, url, today: wishes.today, writing: writing && (await writingPage()) }),
  });
  show("\r\u001b[K");
  if (!published.ok) throw ioTrouble(published.problems);
  const { written, unchanged, removed, problems, notices } = published.value;
  for (const notice of notices) shell.stderr(`${notice}\n`);
  shell.stderr(
    `${dir}: ${written.length} written, ${unchanged.length} unchanged, ${removed.length} removed\n`,
  );
  return problems.length > 0 ? reportProblems(problems, {}, shell) : exitCodes.fine;
}

function sourceOf(shell: Shell, wishes: PlanWishes & { readonly write?: true }): GardenSource {
  return gardenSource({ loadPlan: (file, asOf) => loadPlan(file, asOf, wishes, shell) });
}

/** A file that cannot be read is a problem of that garden: the others are served on. */
async function loadPlan(
  file: string,
  asOf: AsOf,
  { extraRounds, write }: PlanWishes & { readonly write?: true },
  shell: Shell,
): Promise<Result<PlannedGarden>> {
  const { today, previous, previousFile } = asOf;
  try {
    const notices: string[] = [];
    const at: Shell = {
      ...shell,
      today: (timezone) => todayIn(timezone, asOf),
      stderr: (text) => notices.push(text.trimEnd()),
    };
    const loaded = await loadGarden(file, at, {
      ...{ isForWriting: true, served: previous ?? "" },
      ...given({ extraRounds, servedFile: previousFile }),
    });
    if (!loaded.ok) return loaded;
    const { garden, plan, earlier } = loaded.value;
    // What the garden's own calendar holds counts as published: only a real day may write it.
    const isReal = today === undefined || today === shell.today(garden.timezone);
    const path = isReal ? ownCalendar(file, garden) : undefined;
    const own = path === undefined ? undefined : { path, ...given({ bytes: earlier?.bytes }) };
    const ticks = write ? tickSheet(garden, plan, loadTables()) : undefined;
    const more = given({ previous: earlier?.text, ownCalendar: own, ticks });
    return { ok: true, value: { plan, ...more, notices } };
  } catch (error) {
    if (!(error instanceof CommandError)) throw error;
    const problem: Problem = {
      code: "cannot-read",
      file,
      at: { line: 1, column: 1 },
      message: "the file cannot be read",
      mend: "check that it is there and may be read",
    };
    return { ok: false, problems: [problem] };
  }
}

function ioTrouble(troubles: readonly Trouble[]): CommandError {
  return new CommandError(exitCodes.io, troubles.map(withMend).join("\n"));
}

/** The XDG Base Directory Specification's place for state. */
function stateFolder(shell: Shell): string {
  return join(shell.stateHome ?? join(homedir(), ".local", "state"), "feedround");
}
