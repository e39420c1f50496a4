import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Result } from "../problem.js";
import { byText } from "../values.js";
import { writeWhole } from "../write-whole.js";
import type { IndexEntry } from "./plain-page.js";
import { type Part, partWord } from "./publish-part.js";
import type { Trouble } from "./system-trouble.js";

/** Names of the files that we wrote into a folder, each with the hash of its content. */
export type Manifest = ReadonlyMap<string, string>;

/** What a part has published, until all parts are joined. */
export interface PartList {
  readonly part: Part;
  readonly files: Manifest;
  readonly index: readonly IndexEntry[];
}

export const manifestName = "feedround-files.json";

/** In the published folder, until the parts are joined: a list of each, and what is under way. */
export const partsFolder = "feedround-parts";

/** Below the published folder. */
export function listName(part: Part | undefined): string {
  return part === undefined ? manifestName : join(partsFolder, `${partWord(part)}.json`);
}

const partListName = /^(\d+)-of-(\d+)\.json$/;

/** Only such names: whatever a manifest says, nothing outside its folder is ever touched. */
const ours = /^[A-Za-z0-9-]+(?:\.[A-Za-z0-9-]+)*\.(?:ics|html|js|css|svg|webmanifest)$/;

export function isPublishedName(name: string): boolean {
  return ours.test(name);
}

export async function readManifest(dir: string): Promise<Result<Manifest, Trouble>> {
  const read = await readList(join(dir, manifestName));
  return read.ok ? { ok: true, value: read.value.files } : read;
}

/** Those that lie there, in the order of their names. */
export async function readPartLists(dir: string): Promise<Result<PartList[], Trouble>> {
  const lists: PartList[] = [];
  const folder = join(dir, partsFolder);
  for (const name of (await readdir(folder).catch(none)).sort()) {
    const [, number, of] = partListName.exec(name) ?? [];
    if (of === undefined) continue;
    const read = await readList(join(folder, name));
    if (!read.ok) return read;
    lists.push({ ...read.value, part: { number: Number(number), of: Number(of) } });
  }
  return { ok: true, value: lists };
}

/** Written only when it changes, as all published files. */
export async function writeManifest(dir: string, files: Manifest): Promise<void> {
  await writeList(join(dir, manifestName), { version: 1, files: inOrder(files) });
}

export async function writePartList(dir: string, { part, files, index }: PartList): Promise<void> {
  const gardens = [...index].sort((a, b) => byText(a.page, b.page));
  const content = { version: 1, files: inOrder(files), index: gardens };
  await writeList(join(dir, listName(part)), content);
}

function inOrder(files: Manifest): Record<string, string> {
  return Object.fromEntries([...files].sort(([a], [b]) => byText(a, b)));
}

async function writeList(path: string, content: object): Promise<void> {
  const text = `${JSON.stringify(content, null, 2)}\n`;
  if ((await textOf(path)) !== text) await writeWhole(path, text, { isOurs: true });
}

/** Undefined when there is no such file. */
export async function textOf(file: string): Promise<string | undefined> {
  return readFile(file, "utf8").catch((error: unknown) => {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw error;
  });
}

async function readList(path: string): Promise<Result<Omit<PartList, "part">, Trouble>> {
  const text = await textOf(path);
  if (text === undefined) return { ok: true, value: { files: new Map(), index: [] } };
  const list = listIn(text);
  if (list) return { ok: true, value: list };
  const mend = "delete it, and the calendars and pages beside it, to publish them anew";
  const message = `${path} is not a list of published files`;
  return { ok: false, problems: [{ code: "bad-manifest", message, mend }] };
}

interface LooseList {
  readonly version?: unknown;
  readonly files?: unknown;
  readonly index?: unknown;
}

function listIn(text: string): Omit<PartList, "part"> | undefined {
  try {
    const { version, files, index = [] } = JSON.parse(text) as LooseList;
    if (version !== 1 || typeof files !== "object" || files === null) return undefined;
    const entries = Object.entries(files);
    const sound = entries.every(([name, hash]) => ours.test(name) && typeof hash === "string");
    if (!sound || !Array.isArray(index) || !index.every(isIndexEntry)) return undefined;
    return { files: new Map(entries as [string, string][]), index };
  } catch {
    return undefined;
  }
}

function isIndexEntry(value: unknown): value is IndexEntry {
  const { title, page, calendar, hasProblems, asks = "" } = value as Record<string, unknown>;
  return (
    [title, page, calendar, asks].every((text) => typeof text === "string") &&
    typeof hasProblems === "boolean"
  );
}

/** Where there is no such folder. */
export function none(error: unknown): string[] {
  if ((error as NodeJS.ErrnoException).code === "ENOENT") return [];
  throw error;
}
