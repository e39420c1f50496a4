import { randomBytes } from "node:crypto";
import { open, rename, rm } from "node:fs/promises";

/** Writes a file whole or not at all: beside it first, then in its place in one step. */
export async function writeWhole(file: string, content: string, mode = 0o666): Promise<void> {
  const beside = `${file}.${randomBytes(6).toString("hex")}.tmp`;
  try {
    const handle = await open(beside, "wx", mode);
    try {
      await handle.writeFile(content);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(beside, file);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}
