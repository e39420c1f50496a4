// @ts-nocheck
import { randomBytes } from "node:crypto";
import { link, readFile, realpath, rename, rm, stat, writeFile } from "node:fs/promises";
import { hostname } from "node:os";
import { basename, dirname, join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import type { Problem, Result } from "./problem.js";

type Locked = Pick<Problem, "code" | "message" | "mend">;

/** The clock of those who wait. */
export interface Waiting {
  readonly pause: (ms: number) => Promise<void>;
  /** Ms since 1970. */
  readonly nowMs: () => number;
}

const realWaiting: Waiting = { pause: (ms) => sleep(ms), nowMs: Date.now };

/** Five seconds in all: longer than a garden takes, shorter than a person's patience. Our choice. */
const pauseMs = 50;
const mostPauses = 100;
/** Our choice: nothing that holds a lock takes so long. */
const staleMs = 10 * 60_000;

/** What this process holds: a number of a process may come back, this one's too. */
const ownMarks = new Set<string>();

/**
 * Does work on files while no other process of ours does, for what is read, thought over and written.
 * Who holds a file stands in `.<name>.lock` beside it. A lock is taken over when its process is gone
 * or it is old. Where no lock can be made, in a folder that can only be read, the work is done without.
 *
 * @param paths files, there or not; whoever works on several locks them in one order, so that nobody
 *   waits in a circle
 * @returns problem `locked`, the work not begun, where another process keeps one of them too long
 */
export async function withLocks<T>(
  paths: readonly string[],
  work: () => Promise<T>,
  { pause, nowMs }: Partial<Waiting> = {},
): Promise<Result<T, Locked>> {
  const waiting = { pause: pause ?? realWaiting.pause, nowMs: nowMs ?? realWaiting.nowMs };
  const files = await Promise.all(paths.map((path) => realpath(path).catch(() => path)));
  const held: Held[] = [];
  try {
    for (const file of [...new Set(files)].sort()) {
      const lock = join(dirname(file), `.${basename(file)}.lock`);
      const taken = await take(lock, waiting);
      if (taken === "kept") return { ok: false, problems: [await locked(file, lock)] };
      if (taken !== "impossible") held.push(taken);
    }
    return { ok: true, value: await work() };
  } finally {
    for (const one of held.reverse()) await release(one);
  }
}

interface Held {
  readonly lock: string;
  /** Process, computer, and chance. */
  readonly mark: string;
}

async function take(lock: string, waiting: Waiting): Promise<Held | "kept" | "impossible"> {
  const mark = `${process.pid} ${hostname()} ${randomBytes(6).toString("hex")}`;
  ownMarks.add(mark);
  for (let pauses = 0; ; pauses++) {
    try {
      await writeFile(lock, mark, { flag: "wx" });
      return { lock, mark };
    } catch (error) {
      const isThere = (error as NodeJS.ErrnoException).code === "EEXIST";
      if (!isThere || pauses === mostPauses) {
        ownMarks.delete(mark);
        return isThere ? "kept" : "impossible";
      }
    }
    const left = await markOf(lock);
    if (left !== undefined && (await isLeft(lock, left, waiting.nowMs()))) await clear(lock, left);
    else await waiting.pause(pauseMs);
  }
}

/** Whether nobody holds a lock any more. */
async function isLeft(lock: string, mark: string, nowMs: number): Promise<boolean> {
  const about = await stat(lock).catch(() => undefined);
  if (about === undefined) return false;
  if (nowMs - about.mtimeMs > staleMs) return true;
  const [pid = "", host] = mark.split(" ");
  if (host !== hostname() || !/^\d+$/.test(pid)) return false;
  return Number(pid) === process.pid ? !ownMarks.has(mark) : !isRunning(Number(pid));
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Another user's process can't be asked, and is there.
    return (error as NodeJS.ErrnoException).code !== "ESRCH";
  }
}

/** Two may find the same lock left: what is moved aside is put back if it is by now the other's. */
async function clear(lock: string, mark: string): Promise<void> {
  const aside = `${lock}.${randomBytes(6).toString("hex")}.tmp`;
  try {
    await rename(lock, aside);
    if ((await markOf(aside)) !== mark) await link(aside, lock);
  } catch {
    // The next try tells how it stands.
  }
  await rm(aside, { force: true });
}

async function release({ lock, mark }: Held): Promise<void> {
  if ((await markOf(lock)) === mark) await rm(lock, { force: true });
  ownMarks.delete(mark);
}

async function markOf(lock: string): Promise<string | undefined> {
  return readFile(lock, "utf8").catch(() => undefined);
}

async function locked(file: string, lock: string): Promise<Locked> {
  const [pid = "", host] = ((await markOf(lock)) ?? "").split(" ");
  const who = host === undefined ? "another process" : `process ${pid} on ${host}`;
  return {
    code: "locked",
    message: `${file}: ${who} is working on it, so nothing was written`,
    mend: `try again when it is done; if there is no such process, delete ${lock}`,
  };
}
