/** One garden into the published folder: page and calendar, each whole, and the calendar it names. */
import { join } from "node:path";
import { type Waiting, withLocks } from "../lock.js";
import type { Problem } from "../problem.js";
import { given } from "../values.js";
import { writeWhole } from "../write-whole.js";
import type { NamedFile } from "./garden-names.js";
import type { GardenReader } from "./garden-reader.js";
import { type Document, type Documents, publishedNames } from "./garden-reading.js";
import { fileRead } from "./garden-source.js";
import { writeOwn } from "./own-calendar.js";
import type { IndexEntry } from "./plain-page.js";
import { type GardenDone, isStillDone, type Journal } from "./publish-journal.js";
import { manifestName } from "./publish-manifest.js";
import { refuseChanged, type Trouble, troubleOf } from "./system-trouble.js";
import type { Now } from "./today.js";

/** What all gardens of a run share. */
export interface Run {
  readonly dir: string;
  readonly url?: string;
  readonly now: Now;
  readonly reader: Pick<GardenReader, "documents">;
  readonly journal: Pick<Journal, "done" | "add">;
  /** Whether we wrote the file of that name that lies there. */
  readonly isOurs: (name: string) => boolean;
  readonly waiting: Partial<Waiting>;
}

export interface Outcome {
  /** Hashes by name, of all that is of this garden now. */
  readonly files: Readonly<Record<string, string>>;
  readonly written: readonly string[];
  readonly unchanged: readonly string[];
  /** Files that stay as they are, if there are any. */
  readonly kept: readonly string[];
  readonly entry?: IndexEntry;
  readonly problems: readonly Problem[];
  readonly notices: readonly string[];
  readonly troubles: readonly Trouble[];
}

const nothing: Outcome = {
  ...{ files: {}, written: [], unchanged: [], kept: [] },
  ...{ problems: [], notices: [], troubles: [] },
};

/** Under the garden's lock. Throws the system's errors where nothing can be written. */
export async function publishGarden(garden: NamedFile, run: Run): Promise<Outcome> {
  const work = (): Promise<Outcome> => publishLocked(garden, run);
  const done = await withLocks([garden.file], work, run.waiting);
  return done.ok ? done.value : { ...(await asItIs(garden, run, false)), troubles: done.problems };
}

async function publishLocked(garden: NamedFile, run: Run): Promise<Outcome> {
  const { dir, url, now, reader, journal } = run;
  const before = journal.done.get(garden.name);
  if (before?.file === garden.file && (await isStillDone(before, dir, now)))
    return { ...outcomeOf(before), unchanged: Object.keys(before.files) };
  const made = await reader.documents({ ...garden, dir, ...now, ...given({ url }) });
  if (!made.ok) return { ...(await asItIs(garden, run, true)), problems: made.problems };
  const strange = made.files.filter(
    ({ name, hash, before: there }) => there !== undefined && there !== hash && !run.isOurs(name),
  );
  if (strange.length > 0)
    return {
      ...(await asItIs(garden, run, false)),
      troubles: strange.map(({ name }) => notOurs(dir, name)),
    };
  const done = doneOf(garden, made);
  // First what will be ours, so that a run cut off half-way can be done again.
  await journal.add(done);
  return writeDocuments(made, done, run);
}

export function notOurs(dir: string, name: string): Trouble {
  return {
    code: "not-ours",
    message: `${join(dir, name)} is there already and ${manifestName} does not list it`,
    mend: "move it away, or publish into another folder",
  };
}

/**
 * The page first and the calendars last: what comes next is planned from them, so wherever this is cut
 * off it comes out the same when it is done again.
 */
async function writeDocuments(
  made: Documents & { ok: true },
  done: GardenDone,
  { dir }: Run,
): Promise<Outcome> {
  const [written, unchanged]: [string[], string[]] = [[], []];
  for (const document of made.files) {
    const path = join(dir, document.name);
    if (document.before === document.hash) unchanged.push(document.name);
    else {
      try {
        await writeDocument(path, document);
      } catch (error) {
        const trouble = troubleOf(error, path);
        if (!isChangedMeanwhile(error)) throw error;
        return { ...outcomeOf(done), written, unchanged, troubles: [trouble] };
      }
      written.push(document.name);
    }
  }
  const calendar = made.files.at(-1)?.content ?? "";
  const lines = [...made.notices, ...(await writeOwn(made.ownCalendar, calendar))];
  const notices = lines.map((line) => `${done.name}: ${line}`);
  return { ...outcomeOf(done), written, unchanged, notices };
}

async function writeDocument(path: string, { content, before }: Document): Promise<void> {
  await writeWhole(path, content, {
    isOurs: true,
    beforeReplacing: async () => {
      refuseChanged(before, (await fileRead(path)).hash);
    },
  });
}

function isChangedMeanwhile(error: unknown): boolean {
  return (error as NodeJS.ErrnoException).code === "ECHANGED";
}

function doneOf({ file, name }: NamedFile, made: Documents & { ok: true }): GardenDone {
  const { timezone, today, title, asks, ownCalendar } = made;
  const calendarHash = made.files.at(-1)?.hash;
  return {
    ...{ file, name, timezone, today, title, asks },
    reads: made.reads.map((read) =>
      read.path === ownCalendar?.path ? { ...read, ...given({ hash: calendarHash }) } : read,
    ),
    files: Object.fromEntries(made.files.map((one) => [one.name, one.hash])),
  };
}

function outcomeOf({ name, title, asks, files }: GardenDone): Outcome {
  const [page, calendar] = publishedNames(name);
  return { ...nothing, files, entry: { page, calendar, hasProblems: false, title, asks } };
}

/** What was published of it before stays. */
async function asItIs({ name }: NamedFile, { dir }: Run, hasProblems: boolean): Promise<Outcome> {
  const [page, calendar] = publishedNames(name);
  const kept = { ...nothing, kept: [page, calendar] };
  const isThere = (await fileRead(join(dir, calendar))).hash !== undefined;
  return isThere ? { ...kept, entry: { page, calendar, hasProblems, title: name } } : kept;
}
