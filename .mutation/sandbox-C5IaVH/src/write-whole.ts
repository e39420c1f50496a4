// @ts-nocheck
import { randomBytes } from "node:crypto";
import { open, rename, rm } from "node:fs/promises";
import { basename, dirname, join } from "node:path";

/**
 * Writes a file whole or not at all: beside it first, then in its place in one step. A link that
 * stands in its place is replaced. Throws the system's errors.
 *
 * @param mode permissions, less those that the process's mask takes away
 * @param beforeReplacing what it throws leaves the file as it was
 */
export async function writeWhole(
  file: string,
  content: string,
  mode = 0o666,
  beforeReplacing: () => Promise<void> = () => Promise.resolve(),
): Promise<void> {
  const beside = join(dirname(file), `.${basename(file)}.${randomBytes(6).toString("hex")}.tmp`);
  try {
    const handle = await open(beside, "wx", mode);
    try {
      await handle.writeFile(content);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await beforeReplacing();
    await rename(beside, file);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}
