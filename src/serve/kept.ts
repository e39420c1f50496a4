import { mkdir } from "node:fs/promises";
import { given } from "../values.js";
import { writeWhole } from "../write-whole.js";
import { textOf } from "./publish-manifest.js";
import { contentHash } from "./representation.js";
import { readState, statePath } from "./state-file.js";
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
  const path = statePath(stateDir, file, ".json");
  const { value, text, notice } = await readState(path, (read) => keptIn(read, file));
  return given({ kept: value, hash: text === undefined ? undefined : contentHash(text), notice });
}

/** Gives its hash. Throws where the file is no longer what it was, by its hash. */
export async function writeKept(
  stateDir: string,
  kept: Kept,
  was: string | undefined,
): Promise<string> {
  await mkdir(stateDir, { recursive: true, mode: 0o700 });
  const path = statePath(stateDir, kept.file, ".json");
  const text = JSON.stringify(kept);
  await writeWhole(path, text, {
    isOurs: true,
    mode: 0o600,
    beforeReplacing: async () => {
      const now = await textOf(path);
      refuseChanged(was, now === undefined ? undefined : contentHash(now));
    },
  });
  return contentHash(text);
}

function keptIn(value: unknown, file: string): Kept | undefined {
  const kept = value as Partial<Kept> | null | undefined;
  const sound =
    kept?.keptVersion === 1 &&
    kept.file === file &&
    typeof kept.calendar === "string" &&
    Number.isSafeInteger(kept.modifiedS);
  return sound ? (kept as Kept) : undefined;
}
