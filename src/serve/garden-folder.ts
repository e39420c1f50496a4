import { sep } from "node:path";
import type { Result } from "../problem.js";
import { gardenNames } from "./garden-names.js";
import { type GardenShow, gardenShow, reload, type ShowContext, wasRead } from "./garden-show.js";
import { readingQueue } from "./reading-queue.js";
import { bugLine } from "./request-log.js";
import { type Print, printOf, scan, type Scan, type Sniffed } from "./scan.js";
import { type Trouble, troubleLine } from "./system-trouble.js";
import { isWithin, spanOfToday, type TimeSpan } from "./today.js";

/** All gardens on show, kept in step with their files. */
export interface GardenFolder {
  readonly shows: () => readonly GardenShow[];
  readonly named: (name: string) => GardenShow | undefined;
  /** For a request that comes before the garden's first reading: it is read before those that wait. */
  readonly firstRead: (show: GardenShow) => Promise<void>;
  /** After its file was written here: its next state is read at once, and `settled` waits for it. */
  readonly reread: (show: GardenShow) => void;
  /** Begins to look: reads what is new or changed. */
  readonly start: () => void;
  /** Fulfilled once each garden there was at the start has been read. */
  readonly ready: Promise<void>;
  readonly stop: () => Promise<void>;
}

/** What was seen of a garden's files. */
export interface Seen {
  /** When they were last read; undefined before the first reading. */
  readPrint?: Print;
  /** At the last look. */
  lastPrint?: Print;
}

interface Watched extends Seen {
  readonly show: GardenShow;
  goneSinceMs?: number;
  /** Today, there, at the last reading: what is planned depends on it. */
  readDay?: TimeSpan;
  /** A bug of ours that the last reading met. */
  fault?: Error;
}

const usualLookMs = 400;
/** Between two looks at a file that has just changed: it may still be being written. */
const settleMs = 100;
/** While many gardens are read, there is a look at what changed meanwhile after so many. */
const readsBetweenLooks = 50;
/** A file may be away for a moment when it is synced or renamed; after this its addresses end. */
const goneMs = 60_000;

/** Trouble: a garden file or folder is not there at the start. */
export async function gardenFolder(
  roots: readonly string[],
  context: ShowContext,
  log: (line: string) => void,
  lookMs = usualLookMs,
): Promise<Result<GardenFolder, Trouble>> {
  const sniffed: Sniffed = new Map();
  const first = await scan(roots, sniffed);
  if (first.troubles.length > 0) {
    return { ok: false, problems: first.troubles.map(({ trouble }) => trouble) };
  }
  const watched = new Map<string, Watched>();
  meet(watched, first, context.now().nowMs, log);
  let byName = nameAll(watched);
  let told = "";
  let timer: NodeJS.Timeout | undefined;
  let looking: Promise<void> = Promise.resolve();
  let stopped = false;
  let setReady = (): void => undefined;
  const ready = new Promise<void>((resolve) => (setReady = resolve));
  const { reader } = context;
  const queue = readingQueue<Watched>(async (one) => {
    for (const line of await readAgain(one, context)) log(line);
  }, reader.atOnce);

  /** Gives the time to the next look. */
  const look = async (): Promise<number> => {
    const found = await scan(roots, sniffed);
    const troubles = found.troubles.map(({ trouble }) => troubleLine(trouble)).join("\n");
    if (troubles !== told && troubles !== "") log(troubles);
    told = troubles;
    if (meet(watched, found, context.now().nowMs, log)) byName = nameAll(watched);
    const { due, isWaiting } = await dueOf(watched, found, context.now().nowMs);
    reader.expect(due.length);
    queue.wait(due);
    await queue.progress(readsBetweenLooks);
    if (!queue.isIdle()) return 0;
    await reader.rest();
    setReady();
    return isWaiting ? settleMs : lookMs;
  };

  const keepLooking = (): void => {
    looking = look().then((pauseMs) => {
      if (!stopped) timer = setTimeout(keepLooking, pauseMs);
    });
  };

  return {
    ok: true,
    value: {
      shows: () => [...byName.values()],
      named: (name) => byName.get(name),
      firstRead: async (show) => {
        const one = watched.get(show.file);
        if (one === undefined) return;
        one.lastPrint ??= await printOfAll(show);
        if (!wasRead(show)) await queue.first(one);
        if (one.fault) throw one.fault;
      },
      reread: (show) => {
        const one = watched.get(show.file);
        if (one === undefined || stopped) return;
        const before = show.rereading ?? Promise.resolve();
        show.rereading = before.then(() => readIfChanged(one, context, log));
      },
      start: keepLooking,
      ready,
      stop: async () => {
        stopped = true;
        clearTimeout(timer);
        await queue.stop();
        await looking;
        for (const { show } of watched.values()) await show.rereading;
        await reader.rest();
        setReady();
      },
    },
  };
}

/** Takes up gardens whose files are new and drops those that are gone; whether there were any. */
function meet(
  watched: Map<string, Watched>,
  found: Scan,
  nowMs: number,
  log: (line: string) => void,
): boolean {
  let changed = false;
  for (const file of found.prints.keys()) {
    if (watched.has(file)) continue;
    watched.set(file, { show: gardenShow(file) });
    changed = true;
  }
  for (const [file, one] of watched) {
    if (found.prints.has(file) || heldByTrouble(file, found)) delete one.goneSinceMs;
    else if (nowMs - (one.goneSinceMs ??= nowMs) >= goneMs) {
      watched.delete(file);
      changed = true;
      log(`${one.show.name}: its file is gone, and so are its addresses`);
    }
  }
  return changed;
}

function nameAll(watched: ReadonlyMap<string, Watched>): Map<string, GardenShow> {
  const names = new Map(gardenNames([...watched.keys()]).map(({ file, name }) => [file, name]));
  for (const [file, { show }] of watched) show.name = names.get(file) ?? show.name;
  return new Map([...watched.values()].map(({ show }) => [show.name, show]));
}

/** Gardens to be read now, and whether others wait until their files keep still. */
async function dueOf(
  watched: ReadonlyMap<string, Watched>,
  found: Scan,
  nowMs: number,
): Promise<{ due: Watched[]; isWaiting: boolean }> {
  const due: Watched[] = [];
  let isWaiting = false;
  for (const [file, one] of watched) {
    if (!found.prints.has(file) && heldByTrouble(file, found)) continue;
    const print = await printOfAll(one.show, found.prints);
    const isAnotherDay = one.readDay !== undefined && !isWithin(one.readDay, nowMs);
    const step = isAnotherDay ? "read" : stepOf(one, print);
    one.lastPrint = print;
    if (step === "wait") isWaiting = true;
    if (step === "read") due.push(one);
  }
  // An edit goes before gardens that have not been read at all.
  due.sort((a, b) => Number(a.readPrint === undefined) - Number(b.readPrint === undefined));
  return { due, isWaiting };
}

async function printOfAll(
  { file, reads }: GardenShow,
  known: ReadonlyMap<string, Print> = new Map(),
): Promise<Print> {
  const prints = [file, ...reads].map(async (each) => known.get(each) ?? (await printOf(each)));
  return (await Promise.all(prints)).join("\n");
}

/** Not where a look has met the change before. */
async function readIfChanged(
  one: Watched,
  context: ShowContext,
  log: (line: string) => void,
): Promise<void> {
  one.lastPrint = await printOfAll(one.show);
  if (one.lastPrint === one.readPrint) return;
  for (const line of await readAgain(one, context)) log(line);
}

/**
 * What to do after a look at a garden's files. A change is read once it has kept still from one look to
 * the next, so that a file that is being written is not taken for a shorter garden.
 */
export function stepOf({ readPrint, lastPrint }: Seen, print: Print): "none" | "wait" | "read" {
  if (print === readPrint) return "none";
  return readPrint === undefined || print === lastPrint ? "read" : "wait";
}

/** A bug met with one garden must not keep the others from being served. Gives lines for the terminal. */
async function readAgain(one: Watched, context: ShowContext): Promise<readonly string[]> {
  const { show, lastPrint } = one;
  if (lastPrint !== undefined) one.readPrint = lastPrint;
  delete one.fault;
  const now = context.now();
  try {
    const lines = await reload(show, context);
    if (show.isHeld) delete one.readPrint;
    return lines;
  } catch (error) {
    one.fault = error instanceof Error ? error : new Error(String(error));
    return [`${show.name}: ${bugLine(error)}`];
  } finally {
    const timezone = show.good?.plan?.timezone;
    if (timezone !== undefined) one.readDay = spanOfToday(timezone, now);
  }
}

/** A folder or file that can't be looked at at all (a disk that is away) says nothing of its gardens. */
function heldByTrouble(file: string, { troubles }: Scan): boolean {
  return troubles.some(({ root }) => file.startsWith(root + sep));
}
