import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Result } from "../problem.js";
import { byText } from "../values.js";
import { writeWhole } from "../write-whole.js";
import type { Trouble } from "./system-trouble.js";

/** Names of the files that we wrote into a folder, each with the hash of its content. */
export type Manifest = ReadonlyMap<string, string>;

export const manifestName = "feedround-files.json";

/** Only such names: whatever a manifest says, nothing outside its folder is ever touched. */
const ours = /^[A-Za-z0-9-]+(?:\.[A-Za-z0-9-]+)*\.(?:ics|html|js|css|svg|webmanifest)$/;

export async function readManifest(dir: string): Promise<Result<Manifest, Trouble>> {
  const path = join(dir, manifestName);
  const text = await textOf(path);
  if (text === undefined) return { ok: true, value: new Map() };
  const entries = entriesIn(text);
  if (entries) return { ok: true, value: new Map(entries) };
  const mend = "delete it, and the calendars and pages beside it, to publish them anew";
  const message = `${path} is not a list of published files`;
  return { ok: false, problems: [{ code: "bad-manifest", message, mend }] };
}

/** Written only when it changes, as all published files. */
export async function writeManifest(dir: string, files: Manifest): Promise<void> {
  const path = join(dir, manifestName);
  const sorted = Object.fromEntries([...files].sort(([a], [b]) => byText(a, b)));
  const text = `${JSON.stringify({ version: 1, files: sorted }, null, 2)}\n`;
  if ((await textOf(path)) !== text) await writeWhole(path, text, { isOurs: true });
}

/** Undefined when there is no such file. */
export async function textOf(file: string): Promise<string | undefined> {
  return readFile(file, "utf8").catch((error: unknown) => {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw error;
  });
}

function entriesIn(text: string): [string, string][] | undefined {
  try {
    const { version, files } = JSON.parse(text) as { version?: unknown; files?: unknown };
    if (version !== 1 || typeof files !== "object" || files === null) return undefined;
    const entries = Object.entries(files);
    const sound = entries.every(([name, hash]) => ours.test(name) && typeof hash === "string");
    return sound ? (entries as [string, string][]) : undefined;
  } catch {
    return undefined;
  }
}
