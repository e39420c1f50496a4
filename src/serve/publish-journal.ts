/**
 * What a run that publishes has done so far, a line for each garden, written before its files: they are
 * ours from then on, and a run that comes after one cut off leaves out what that has written whole.
 */
import { open, readdir, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import type { Day } from "../dates.js";
import { fileRead, type FileRead } from "./garden-source.js";
import { isPublishedName, none, partsFolder } from "./publish-manifest.js";
import { type Part, partWord } from "./publish-part.js";
import { type Now, todayIn } from "./today.js";

/** All that documents depend on beside the garden. */
export interface RunHead {
  /** Program and wishes. */
  readonly making: string;
  readonly url?: string;
  /** That of UTC at the run's beginning, whose moment is not taken up on another; or the one asked for. */
  readonly day: string;
  readonly isAsked: boolean;
}

export interface GardenDone {
  readonly file: string;
  readonly name: string;
  /** With what they hold now that it is done. */
  readonly reads: readonly FileRead[];
  readonly timezone: string;
  readonly today: Day;
  readonly title: string;
  readonly asks: string;
  /** Hashes by name. */
  readonly files: Readonly<Record<string, string>>;
}

type Line =
  | { readonly head: RunHead; readonly startedMs: number }
  | { readonly done: GardenDone }
  | { readonly claimed: Readonly<Record<string, string>> };

export interface Journal {
  /** The moment of the run that goes on, or of this one. */
  readonly startedMs: number;
  /** By name, what that run has done. */
  readonly done: ReadonlyMap<string, GardenDone>;
  readonly add: (done: GardenDone) => Promise<void>;
  /** Files beside those of gardens. */
  readonly claim: (files: Readonly<Record<string, string>>) => Promise<void>;
  /** The run is over, and its list written. */
  readonly end: () => Promise<void>;
  /** The run could not be done: the next goes on. */
  readonly close: () => Promise<void>;
}

/** Below the published folder. */
export function journalName(part: Part | undefined): string {
  return part === undefined
    ? "feedround-journal.jsonl"
    : join(partsFolder, `${partWord(part)}.jsonl`);
}

/** Goes on with the run that is written there, where it was of the same head. */
export async function openJournal(path: string, head: RunHead, nowMs: number): Promise<Journal> {
  const lines = await linesOf(path);
  const last = lines.findLastIndex((line) => "head" in line);
  const begun = lines[last];
  const isSame =
    begun !== undefined && "head" in begun && JSON.stringify(begun.head) === JSON.stringify(head);
  const done = new Map<string, GardenDone>();
  if (isSame)
    for (const line of lines.slice(last)) if ("done" in line) done.set(line.done.name, line.done);
  const startedMs = isSame ? begun.startedMs : nowMs;
  const { write, close } = await appending(path);
  // Where the last line was cut off, the next begins on one of its own.
  await write(isSame ? "\n" : `\n${JSON.stringify({ head, startedMs } satisfies Line)}\n`);
  return {
    ...{ startedMs, done, close },
    add: (one) => write(`${JSON.stringify({ done: one } satisfies Line)}\n`),
    claim: (claimed) => write(`${JSON.stringify({ claimed } satisfies Line)}\n`),
    end: async () => {
      await close();
      await rm(path, { force: true });
    },
  };
}

/** Names and hashes of all that runs cut off may have written. */
export async function claimedIn(path: string): Promise<(readonly [name: string, hash: string])[]> {
  const claimed = (await linesOf(path)).flatMap((line) => {
    if ("done" in line) return Object.entries(line.done.files);
    return "claimed" in line ? Object.entries(line.claimed) : [];
  });
  return claimed.filter(([name]) => isPublishedName(name));
}

/** Paths of what parts have under way, or have left when they were cut off. */
export async function partJournals(dir: string): Promise<string[]> {
  const folder = join(dir, partsFolder);
  const names = (await readdir(folder).catch(none)).filter((name) => name.endsWith(".jsonl"));
  return names.sort().map((name) => join(folder, name));
}

/** Whether a garden stands as it was written, and nothing that it was made from has changed. */
export async function isStillDone(
  { reads, files, timezone, today }: GardenDone,
  dir: string,
  now: Now,
): Promise<boolean> {
  if (todayIn(timezone, now) !== today) return false;
  const written = Object.entries(files).map(([name, hash]) => ({ path: join(dir, name), hash }));
  const are = await Promise.all([...reads, ...written].map(({ path }) => fileRead(path)));
  return [...reads, ...written].every(({ hash }, i) => hash !== undefined && are[i]?.hash === hash);
}

async function linesOf(path: string): Promise<Line[]> {
  const text = await readFile(path, "utf8").catch(() => "");
  return text.split("\n").flatMap((line) => {
    try {
      return [JSON.parse(line) as Line];
    } catch {
      return [];
    }
  });
}

/** Each write is on the disk when it is fulfilled; those that come meanwhile go together. */
async function appending(path: string): Promise<{
  readonly write: (text: string) => Promise<void>;
  readonly close: () => Promise<void>;
}> {
  const file = await open(path, "a");
  let waiting = "";
  let last = Promise.resolve();
  const flush = async (): Promise<void> => {
    if (waiting === "") return;
    const text = waiting;
    waiting = "";
    await file.appendFile(text);
    await file.datasync();
  };
  return {
    write: (text) => {
      waiting += text;
      return (last = last.then(flush));
    },
    close: async () => {
      await last.catch(() => undefined);
      await file.close();
    },
  };
}
