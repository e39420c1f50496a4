/** What the server keeps of each garden, a file of JSON each in the state folder. */
// @ts-nocheck

import { createHash } from "node:crypto";
import { readFile, rename } from "node:fs/promises";
import { join } from "node:path";

/** By the whole path of the garden file: two folders may hold files of one name. */
export function statePath(stateDir: string, file: string, ending: string): string {
  return join(stateDir, `${createHash("sha256").update(file).digest("hex").slice(0, 32)}${ending}`);
}

export interface StateRead<T> {
  /** Absent where there is no such file, or it can't be read, or is damaged. */
  readonly value?: T;
  readonly text?: string;
  /** For the terminal. */
  readonly notice?: string;
}

/** A damaged file is moved aside and told of. */
export async function readState<T>(
  path: string,
  soundIn: (value: unknown) => T | undefined,
): Promise<StateRead<T>> {
  let text: string;
  try {
    text = await readFile(path, "utf8");
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    return code === "ENOENT" ? {} : { notice: `${path} can't be read (${String(code)})` };
  }
  const value = soundIn(parsed(text));
  if (value !== undefined) return { value, text };
  await rename(path, `${path}.damaged`).catch(() => undefined);
  return { notice: `${path} was damaged; it is now ${path}.damaged` };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
