/** What is of the published folder as a whole: whose its files are, and those beside the gardens'. */
import { mkdir, readdir, rename, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import { type Waiting, withLocks } from "../lock.js";
import type { Problem, Result } from "../problem.js";
import { writeWhole } from "../write-whole.js";
import { fileRead } from "./garden-source.js";
import { type IndexEntry, indexPage } from "./plain-page.js";
import { notOurs } from "./publish-garden.js";
import { claimedIn, journalName, partJournals } from "./publish-journal.js";
import {
  isPublishedName,
  type Manifest,
  manifestName,
  none,
  partsFolder,
  readManifest,
  readPartLists,
  textOf,
  writeManifest,
} from "./publish-manifest.js";
import { indexName, isInPart, type Part } from "./publish-part.js";
import { contentHash } from "./representation.js";
import { withPolicy } from "./security-headers.js";
import { type Trouble, troubleOf } from "./system-trouble.js";

export interface Published {
  /** File names in the folder. */
  readonly written: readonly string[];
  readonly unchanged: readonly string[];
  readonly removed: readonly string[];
  /** Of gardens that have some; what was published of them before stays. */
  readonly problems: readonly Problem[];
  readonly notices: readonly string[];
  /** What kept single files or gardens from being written; all others are. */
  readonly troubles: readonly Trouble[];
}

export function together(parts: readonly Partial<Published>[]): Published {
  return {
    written: parts.flatMap(({ written = [] }) => written),
    unchanged: parts.flatMap(({ unchanged = [] }) => unchanged),
    removed: parts.flatMap(({ removed = [] }) => removed),
    problems: parts.flatMap(({ problems = [] }) => problems),
    notices: parts.flatMap(({ notices = [] }) => notices),
    troubles: parts.flatMap(({ troubles = [] }) => troubles),
  };
}

/** By name, the hashes of all that we wrote there, or were about to when a run was cut off. */
export type Owned = ReadonlyMap<string, ReadonlySet<string>>;

/** Makes the folder, and works there while no other process of ours does with the same lists. */
export async function inFolder<T>(
  dir: string,
  lists: readonly string[],
  waiting: Partial<Waiting> | undefined,
  work: () => Promise<Result<T, Trouble>>,
): Promise<Result<T, Trouble>> {
  try {
    const paths = lists.map((name) => join(dir, name));
    for (const path of paths) await mkdir(dirname(path), { recursive: true });
    const done = await withLocks(paths, work, waiting);
    return done.ok ? done.value : done;
  } catch (error) {
    return { ok: false, problems: [troubleOf(error, dir)] };
  }
}

/** Of a part, or of the whole folder, whatever its parts have left there. */
export async function ownedIn(
  dir: string,
  part: Part | undefined,
): Promise<Result<Owned, Trouble>> {
  const whole = await readManifest(dir);
  if (!whole.ok) return whole;
  const lists = await readPartLists(dir);
  if (!lists.ok) return lists;
  // Of all parts: the count of parts may have been another.
  const journals = [...(await partJournals(dir)), join(dir, journalName(undefined))];
  const known = [
    ...whole.value,
    ...lists.value.flatMap(({ files }) => [...files]),
    ...(await Promise.all(journals.map(claimedIn))).flat(),
  ];
  const owned = new Map<string, Set<string>>();
  for (const [name, hash] of known)
    if (isInPart(name, part)) owned.set(name, (owned.get(name) ?? new Set()).add(hash));
  return { ok: true, value: owned };
}

const temporary = /^\.(.+)\.[0-9a-f]{12}\.tmp$/;

/** What is left beside a file where a run was killed as it wrote. */
export async function clearTemporary(dir: string, part?: Part): Promise<void> {
  for (const entry of await readdir(dir)) {
    const name = temporary.exec(entry)?.[1] ?? "";
    const isList = name === manifestName && part === undefined;
    if (isList || (isPublishedName(name) && isInPart(name, part)))
      await rm(join(dir, entry), { force: true });
  }
}

const goneParts = `.${partsFolder}.gone`;

/** In one step, so that a run that is killed meanwhile leaves all lists of parts or none. */
export async function forgetParts(dir: string): Promise<void> {
  await rm(join(dir, goneParts), { recursive: true, force: true });
  await rename(join(dir, partsFolder), join(dir, goneParts)).catch(none);
  await rm(join(dir, goneParts), { recursive: true, force: true });
}

/** Files of the folder's own, beside those of the gardens; none of them where one is not ours. */
export async function putFiles(
  dir: string,
  files: ReadonlyMap<string, string>,
  owned: Owned,
  claim: (files: Readonly<Record<string, string>>) => Promise<void>,
): Promise<Put> {
  const present = new Map<string, string | undefined>();
  for (const name of files.keys()) present.set(name, await textOf(join(dir, name)));
  const strange = [...files.keys()].filter((name) => {
    const there = present.get(name);
    return there !== undefined && there !== files.get(name) && !owned.has(name);
  });
  if (strange.length > 0)
    return { hashes: {}, troubles: strange.map((name) => notOurs(dir, name)) };
  const hashes = Object.fromEntries([...files].map(([name, text]) => [name, contentHash(text)]));
  await claim(hashes);
  const [written, unchanged]: [string[], string[]] = [[], []];
  for (const [name, content] of files) {
    if (present.get(name) === content) unchanged.push(name);
    else {
      await writeWhole(join(dir, name), content, { isOurs: true });
      written.push(name);
    }
  }
  return { hashes, written, unchanged };
}

interface Put extends Partial<Published> {
  readonly hashes: Readonly<Record<string, string>>;
}

/** The list of gardens, where there is to be one. */
export function indexFiles(
  isAsked: boolean | undefined,
  entries: readonly IndexEntry[],
): ReadonlyMap<string, string> {
  return new Map(isAsked ? [[indexName, withPolicy(indexPage(entries))]] : []);
}

/** The hashes to be listed of files that stay as they are. */
export async function keptHashes(
  dir: string,
  names: readonly string[],
  owned: Owned,
): Promise<[name: string, hash: string][]> {
  const kept: [string, string][] = [];
  for (const name of names) {
    const hashes = owned.get(name);
    if (hashes === undefined) continue;
    const is = (await fileRead(join(dir, name))).hash;
    const listed = is !== undefined && hashes.has(is) ? is : [...hashes][0];
    if (listed !== undefined) kept.push([name, listed]);
  }
  return kept;
}

/** Removes what is ours and no longer among `after`, where nobody has changed it. */
export async function removeGone(
  dir: string,
  owned: Owned,
  after: Manifest,
): Promise<Pick<Published, "removed" | "notices">> {
  const [removed, notices]: [string[], string[]] = [[], []];
  for (const [name, hashes] of owned) {
    if (after.has(name)) continue;
    const text = await textOf(join(dir, name));
    if (text === undefined) continue;
    if (hashes.has(contentHash(text))) {
      await rm(join(dir, name));
      removed.push(name);
    } else notices.push(`${name} stays: someone has changed it`);
  }
  return { removed, notices };
}

const writingFolder = "writing";

/** The writing page beside the gardens, with a list of files of its own. */
export async function putWriting(
  dir: string,
  files: ReadonlyMap<string, string>,
): Promise<Partial<Published>> {
  const folder = join(dir, writingFolder);
  await mkdir(folder, { recursive: true });
  await clearTemporary(folder);
  const before = await readManifest(folder);
  if (!before.ok) return { troubles: before.problems };
  const owned = new Map([...before.value].map(([name, hash]) => [name, new Set([hash])]));
  const put = await putFiles(folder, files, owned, (claimed) =>
    writeManifest(folder, new Map([...before.value, ...Object.entries(claimed)])),
  );
  if (put.troubles) return put;
  const after = new Map(Object.entries(put.hashes));
  const gone = await removeGone(folder, owned, after);
  await writeManifest(folder, after);
  const named = (names: readonly string[] = []): string[] =>
    names.map((name) => `${writingFolder}/${name}`);
  return {
    written: named(put.written),
    unchanged: named(put.unchanged),
    removed: named(gone.removed),
    notices: gone.notices,
  };
}
