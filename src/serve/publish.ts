import { join, resolve } from "node:path";
import type { Waiting } from "../lock.js";
import type { Result } from "../problem.js";
import { given } from "../values.js";
import { gardenNames, type NamedFile } from "./garden-names.js";
import { gardenReader } from "./garden-reader.js";
import type { GardenSource } from "./garden-source.js";
import {
  clearTemporary,
  forgetParts,
  indexFiles,
  inFolder,
  keptHashes,
  type Owned,
  ownedIn,
  type Published,
  putFiles,
  putWriting,
  removeGone,
  together,
} from "./publish-folder.js";
import { type Outcome, publishGarden } from "./publish-garden.js";
import { type Journal, journalName, openJournal } from "./publish-journal.js";
import { listName, writeManifest, writePartList } from "./publish-manifest.js";
import { isInPart, type Part } from "./publish-part.js";
import { scan } from "./scan.js";
import type { Trouble } from "./system-trouble.js";
import type { Now } from "./today.js";
import type { WorkerStart } from "./worker-pool.js";

export interface PublishOptions extends Pick<Partial<Now>, "nowMs" | "today"> {
  /** Garden files, and folders of them. */
  readonly gardens: readonly string[];
  /** Where to write; made when it is not there. */
  readonly dir: string;
  readonly source: GardenSource;
  /** For many gardens; without it all are read in this thread. */
  readonly threads?: WorkerStart;
  /** Program and wishes, as text: a run of the same goes on where one of today was cut off. */
  readonly making: string;
  /** These gardens alone, for {@link joinParts}; index and writing page come with that. */
  readonly part?: Part;
  /** Whether to write an `index.html` with a link to each garden. */
  readonly index?: boolean;
  /** Files of the writing page, to be put into a folder of its own there. */
  readonly writing?: ReadonlyMap<string, string>;
  /** Address at which `dir` will be found, for links and codes on the pages. */
  readonly url?: string;
  readonly waiting?: Partial<Waiting>;
  /** After each garden, for progress. */
  readonly onGarden?: (done: number, all: number) => void;
}

/**
 * Writes calendar and page of each garden as files for any web host. A file whose content is the same
 * keeps its bytes and times; files of gardens that are gone are removed if we wrote them and nobody
 * changed them. Trouble: a path can't be read or written.
 */
export async function publishGardens(options: PublishOptions): Promise<Result<Published, Trouble>> {
  const { dir, part } = options;
  const found = await scan(options.gardens.map((path) => resolve(path)));
  if (found.troubles.length > 0) {
    return { ok: false, problems: found.troubles.map(({ trouble }) => trouble) };
  }
  const all = gardenNames([...found.prints.keys()]);
  const gardens = all.filter(({ name }) => isInPart(name, part));
  return inFolder(dir, [listName(part)], options.waiting, () => publishAll(gardens, options));
}

async function publishAll(
  gardens: readonly NamedFile[],
  options: PublishOptions,
): Promise<Result<Published, Trouble>> {
  const { dir, part, making, url, today, nowMs = Date.now() } = options;
  await clearTemporary(dir, part);
  const owned = await ownedIn(dir, part);
  if (!owned.ok) return owned;
  const day = today ?? new Date(nowMs).toISOString().slice(0, 10);
  const head = { making, day, isAsked: today !== undefined, ...given({ url }) };
  const journal = await openJournal(join(dir, journalName(part)), head, nowMs);
  try {
    const now = { nowMs, stampMs: journal.startedMs, ...given({ today }) };
    const going = { now, journal, owned: owned.value };
    const published = await endRun(await eachGarden(gardens, going, options), going, options);
    await journal.end();
    return { ok: true, value: published };
  } finally {
    await journal.close();
  }
}

interface Going {
  readonly now: Now;
  readonly journal: Journal;
  readonly owned: Owned;
}

/** In the order of the gardens, some of them at once. */
async function eachGarden(
  gardens: readonly NamedFile[],
  { now, journal, owned }: Going,
  { dir, url, source, threads, waiting = {}, onGarden }: PublishOptions,
): Promise<Outcome[]> {
  const reader = gardenReader(source, threads);
  const isOurs = (name: string): boolean => owned.has(name);
  const run = { dir, now, reader, journal, isOurs, waiting, ...given({ url }) };
  reader.expect(gardens.length);
  const outcomes: Outcome[] = [];
  let [done, isFailing] = [0, false];
  const left = gardens.entries();
  const lane = async (): Promise<void> => {
    for (const [i, garden] of left) {
      if (isFailing) return;
      outcomes[i] = await publishGarden(garden, run).catch((error: unknown) => {
        isFailing = true;
        throw error;
      });
      onGarden?.(++done, gardens.length);
    }
  };
  const lanes = await Promise.allSettled(Array.from({ length: reader.atOnce() }, lane));
  await reader.rest();
  for (const one of lanes) if (one.status === "rejected") throw one.reason;
  return outcomes;
}

/** What is of the folder as a whole, and its list last. */
async function endRun(
  outcomes: readonly Outcome[],
  { journal, owned }: Going,
  { dir, part, index, writing }: PublishOptions,
): Promise<Published> {
  const entries = outcomes.flatMap(({ entry }) => entry ?? []);
  const put = await putFiles(dir, indexFiles(index, entries), owned, journal.claim);
  const kept = outcomes.flatMap((one) => one.kept);
  const after = new Map([
    ...outcomes.flatMap(({ files }) => Object.entries(files)),
    ...Object.entries(put.hashes),
    ...(await keptHashes(dir, kept, owned)),
  ]);
  const gone = await removeGone(dir, owned, after);
  const beside = writing === undefined ? {} : await putWriting(dir, writing);
  if (part === undefined) {
    await writeManifest(dir, after);
    await forgetParts(dir);
  } else await writePartList(dir, { part, files: after, index: entries });
  return together([...outcomes, put, gone, beside]);
}
