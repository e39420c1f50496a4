import { createHash, randomBytes } from "node:crypto";
import { link, open, readFile, readlink, realpath, rm, stat } from "node:fs/promises";
import { hostname } from "node:os";
import { setTimeout as sleep } from "node:timers/promises";
import { threadId } from "node:worker_threads";
import type { Problem, Result } from "./problem.js";
import { besideOf } from "./write-whole.js";

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
/** Our choice: nothing that holds a lock takes so long. So long a number that came back is believed. */
const staleMs = 10 * 60_000;

/** What this thread holds: a number of a process may come back, this one's too. */
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
      const lock = besideOf(file, "lock");
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
  /** Process, computer, what tells its start and thread from others, and chance. */
  readonly mark: string;
}

async function take(lock: string, waiting: Waiting): Promise<Held | "kept" | "impossible"> {
  const chance = randomBytes(6).toString("hex");
  const mark = [process.pid, hostname(), await whereNow(), threadId, chance].join(" ");
  ownMarks.add(mark);
  for (let pauses = 0; ; pauses++) {
    try {
      await make(lock, mark);
      return { lock, mark };
    } catch (error) {
      const isThere = (error as NodeJS.ErrnoException).code === "EEXIST";
      if (!isThere || pauses === mostPauses) {
        ownMarks.delete(mark);
        return isThere ? "kept" : "impossible";
      }
    }
    const nowMs = waiting.nowMs();
    const left = await markOf(lock);
    const isOver = left !== undefined && (await isLeft(lock, left, nowMs));
    if (!isOver || !(await clear(lock, left, nowMs))) await waiting.pause(pauseMs);
  }
}

/**
 * A lock without its mark would keep all others waiting: where a disk is full, or its process ends in
 * between, there is none. So it is written under another name first, where files may have two names.
 */
async function make(lock: string, mark: string): Promise<void> {
  const beside = `${lock}.${randomBytes(6).toString("hex")}`;
  try {
    await writeNew(beside, mark);
    await link(beside, lock);
  } catch (error) {
    if (!hasNoSecondNames(error)) throw error;
    await writeNew(lock, mark);
  } finally {
    await rm(beside, { force: true });
  }
}

async function writeNew(path: string, text: string): Promise<void> {
  const handle = await open(path, "wx");
  try {
    await handle.writeFile(text);
  } catch (error) {
    await rm(path, { force: true });
    throw error;
  } finally {
    await handle.close();
  }
}

/** Of some memory sticks and network disks. */
function hasNoSecondNames(error: unknown): boolean {
  const { code = "", syscall } = error as NodeJS.ErrnoException;
  return syscall === "link" && ["EPERM", "ENOTSUP", "ENOSYS", "EMLINK"].includes(code);
}

let where: Promise<string> | undefined;

/**
 * Numbers of processes say something within one start of one computer, and within one container of it;
 * names of computers may be alike. Where the system does not tell, the name must do.
 */
function whereNow(): Promise<string> {
  where ??= Promise.all([
    readFile("/proc/sys/kernel/random/boot_id", "utf8"),
    readlink("/proc/self/ns/pid"),
  ]).then(
    (told) => createHash("sha256").update(told.join(" ")).digest("hex").slice(0, 12),
    () => "-",
  );
  return where;
}

/** Whether nobody holds a lock any more. */
async function isLeft(lock: string, mark: string, nowMs: number): Promise<boolean> {
  const about = await stat(lock).catch(() => undefined);
  if (about === undefined) return false;
  if (nowMs - about.mtimeMs > staleMs) return true;
  const [pid = "", host, there, thread] = mark.split(" ");
  if (host !== hostname() || there !== (await whereNow()) || !/^\d+$/.test(pid)) return false;
  if (Number(pid) !== process.pid) return !isRunning(Number(pid));
  return thread === String(threadId) && !ownMarks.has(mark);
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

/**
 * Two may find the same lock left: one at a time looks again and takes it away, so that none takes away
 * what the other has made in its place.
 *
 * @returns whether it may be tried again at once
 */
async function clear(lock: string, mark: string, nowMs: number): Promise<boolean> {
  const turn = `${lock}.turn`;
  try {
    await make(turn, "");
  } catch {
    const about = await stat(turn).catch(() => undefined);
    if (about !== undefined && nowMs - about.mtimeMs > staleMs) await rm(turn, { force: true });
    return false;
  }
  try {
    if ((await markOf(lock)) === mark) await rm(lock, { force: true });
    return true;
  } finally {
    await rm(turn, { force: true });
  }
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
