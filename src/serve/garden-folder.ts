import { sep } from "node:path";
import type { Day } from "../dates.js";
import type { Result } from "../problem.js";
import { gardenNames } from "./garden-names.js";
import { type GardenShow, gardenShow, reload, type ShowContext } from "./garden-show.js";
import { type Print, printOf, scan, type Scan, type Sniffed } from "./scan.js";
import { todayAt } from "./today.js";
import { type Trouble, troubleLine } from "./system-trouble.js";
import { stepOf, type Seen } from "./watch-step.js";

/** All gardens on show, kept in step with their files. */
export interface GardenFolder {
  readonly shows: () => readonly GardenShow[];
  readonly named: (name: string) => GardenShow | undefined;
  /** Begins to look: reads what is new or changed, one garden after another. */
  readonly start: () => void;
  /** Fulfilled once each garden there was at the start has been read. */
  readonly ready: Promise<void>;
  readonly stop: () => Promise<void>;
}

interface Watched extends Seen {
  readonly show: GardenShow;
  goneSinceMs?: number;
  /** Today, there, at the last reading: what is planned depends on it. */
  readDay?: Day;
}

const usualLookMs = 400;
/** Between two looks at a file that has just changed: it may still be being written. */
const settleMs = 100;
/** Reading of many gardens pauses after this for a look at what changed meanwhile. */
const readingMs = 300;
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
  let byName = new Map<string, GardenShow>();
  let troubles = "";
  let timer: NodeJS.Timeout | undefined;
  let looking: Promise<void> = Promise.resolve();
  let stopped = false;
  const { promise: ready, resolve: setReady } = withResolvers();

  const meet = (found: Scan): void => {
    const told = found.troubles.map(({ trouble }) => troubleLine(trouble)).join("\n");
    if (told !== troubles && told !== "") log(told);
    troubles = told;
    const nowMs = context.nowMs();
    let changed = false;
    for (const file of found.prints.keys()) {
      if (watched.has(file)) continue;
      watched.set(file, { show: gardenShow(file, "") });
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
    if (!changed) return;
    for (const { file, name } of gardenNames([...watched.keys()])) {
      const { show } = watched.get(file) ?? {};
      if (show) show.name = name;
    }
    byName = new Map([...watched.values()].map(({ show }) => [show.name, show]));
  };

  /** Gives the time to the next look. */
  const look = async (): Promise<number> => {
    const found = await scan(roots, sniffed);
    meet(found);
    const prints = printer(found);
    const today = dayTeller(context.nowMs());
    const due: { one: Watched; print: Print }[] = [];
    let waiting = false;
    for (const [file, one] of watched) {
      if (!found.prints.has(file) && heldByTrouble(file, found)) continue;
      const print = (
        await Promise.all([file, ...one.show.reads].map(async (each) => prints(each)))
      ).join("\n");
      const isAnotherDay = one.readDay !== undefined && one.readDay !== today(one.show);
      const step = isAnotherDay ? "read" : stepOf(one, print);
      one.lastPrint = print;
      if (step === "wait") waiting = true;
      if (step === "read") due.push({ one, print });
    }
    // An edit goes before gardens that have not been read at all.
    due.sort(
      (a, b) => Number(a.one.readPrint === undefined) - Number(b.one.readPrint === undefined),
    );
    const untilMs = performance.now() + readingMs;
    for (const [done, { one, print }] of due.entries()) {
      if (stopped) return 0;
      if (done > 0 && performance.now() > untilMs) return 0;
      one.readPrint = print;
      const dayNow = dayTeller(context.nowMs());
      for (const line of await readAgain(one.show, context)) log(line);
      const day = dayNow(one.show);
      if (day !== undefined) one.readDay = day;
    }
    setReady();
    return waiting ? settleMs : lookMs;
  };

  const keepLooking = (): void => {
    looking = look().then((pauseMs) => {
      if (!stopped) timer = setTimeout(keepLooking, pauseMs);
    });
  };

  meet(first);
  return {
    ok: true,
    value: {
      shows: () => [...byName.values()],
      named: (name) => byName.get(name),
      start: keepLooking,
      ready,
      stop: async () => {
        stopped = true;
        clearTimeout(timer);
        await looking;
        setReady();
      },
    },
  };
}

/** A bug met with one garden must not keep the others from being served. */
async function readAgain(show: GardenShow, context: ShowContext): Promise<readonly string[]> {
  try {
    return await reload(show, context);
  } catch (error) {
    return [`${show.name}: bug: ${error instanceof Error ? String(error.stack) : String(error)}`];
  }
}

/** A folder or file that can't be looked at at all (a disk that is away) says nothing of its gardens. */
function heldByTrouble(file: string, { troubles }: Scan): boolean {
  return troubles.some(({ root }) => file.startsWith(root + sep));
}

/** Each file is looked at once, however many gardens depend on it. */
function printer({ prints }: Scan): (file: string) => Print | Promise<Print> {
  const seen = new Map<string, Print | Promise<Print>>(prints);
  return (file) => {
    const print = seen.get(file) ?? printOf(file);
    seen.set(file, print);
    return print;
  };
}

/** The day it is in a garden's zone, once its zone is known. */
function dayTeller(nowMs: number): (show: GardenShow) => Day | undefined {
  const days = new Map<string, Day>();
  return ({ good }) => {
    if (good?.plan === undefined) return undefined;
    const { timezone } = good.plan;
    const day = days.get(timezone) ?? todayAt(nowMs, timezone);
    days.set(timezone, day);
    return day;
  };
}

function withResolvers(): { promise: Promise<void>; resolve: () => void } {
  let resolve = (): void => undefined;
  const promise = new Promise<void>((r) => (resolve = r));
  return { promise, resolve };
}
