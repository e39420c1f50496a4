import { createHash } from "node:crypto";
import { mkdir, readFile, rename } from "node:fs/promises";
import { join } from "node:path";
import { writeWhole } from "../write-whole.js";
import { textOf } from "./publish-manifest.js";
import { contentHash } from "./representation.js";
import { refuseChanged } from "./system-trouble.js";

/** The calendar last served of a garden: the next one must follow it, a broken edit falls back on it. */
export interface Kept {
  readonly keptVersion: 1;
  readonly file: string;
  readonly calendar: string;
  /** Seconds since 1970 when the calendar last changed. */
  readonly modifiedS: number;
}

export interface KeptRead {
  readonly kept?: Kept;
  /** Of the file, where it is whole: tells whether it is still the same. */
  readonly hash?: string;
  /** For the terminal. */
  readonly notice?: string;
}

/** A damaged file is moved aside, told of, and taken as none. */
export async function readKept(stateDir: string, file: string): Promise<KeptRead> {
  const path = keptPath(stateDir, file);
  let text: string;
  try {
    text = await readFile(path, "utf8");
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    return code === "ENOENT" ? {} : { notice: `${path} can't be read (${String(code)})` };
  }
  const kept = keptIn(text, file);
  if (kept !== undefined) return { kept, hash: contentHash(text) };
  await rename(path, `${path}.damaged`).catch(() => undefined);
  return { notice: `${path} was damaged; it is now ${path}.damaged` };
}

/** Gives its hash. Throws where the file is no longer what it was, by its hash. */
export async function writeKept(
  stateDir: string,
  kept: Kept,
  was: string | undefined,
): Promise<string> {
  await mkdir(stateDir, { recursive: true, mode: 0o700 });
  const path = keptPath(stateDir, kept.file);
  const text = JSON.stringify(kept);
  await writeWhole(path, text, 0o600, async () => {
    const now = await textOf(path);
    refuseChanged(was, now === undefined ? undefined : contentHash(now));
  });
  return contentHash(text);
}

/** By the whole path of the garden file: two folders may hold files of one name. */
function keptPath(stateDir: string, file: string): string {
  return join(stateDir, `${createHash("sha256").update(file).digest("hex").slice(0, 32)}.json`);
}

function keptIn(text: string, file: string): Kept | undefined {
  try {
    const kept = JSON.parse(text) as Partial<Kept> | null;
    const sound =
      kept?.keptVersion === 1 &&
      kept.file === file &&
      typeof kept.calendar === "string" &&
      Number.isSafeInteger(kept.modifiedS);
    return sound ? (kept as Kept) : undefined;
  } catch {
    return undefined;
  }
}
