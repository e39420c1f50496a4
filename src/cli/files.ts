import { randomBytes } from "node:crypto";
import { open, readFile, realpath, rename, stat, unlink } from "node:fs/promises";
import { dirname, basename, join } from "node:path";
import { CommandError, exitCodes, type Shell } from "./shell.js";

/** Larger than any garden; anything bigger is refused before it fills the memory. */
const mostBytes = 50_000_000;

/** Bytes of a file, or of standard input for `-`. Throws CommandError with exit code 3. */
export async function readBytes(path: string, shell: Shell): Promise<Uint8Array> {
  try {
    if (path === "-") return await shell.readStdin();
    const info = await stat(path);
    if (info.isDirectory()) throw ioError(path, "it is a folder", "give the garden file in it");
    if (info.size > mostBytes)
      throw ioError(path, "it is far too large for a garden", "check that it is the garden file");
    return await readFile(path);
  } catch (error) {
    throw error instanceof CommandError ? error : ioErrorFrom(path, error);
  }
}

export async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}

/**
 * Writes a file whole or not at all: a new file beside it takes its place once it is complete. A
 * link stays one: what it points to is written. The same content leaves the file untouched.
 *
 * @param expected what the file held when it was read: it is left alone if it holds anything else
 *   by now. Throws CommandError with exit code 3.
 */
export async function writeWhole(
  path: string,
  text: string,
  expected?: Uint8Array,
): Promise<"written" | "unchanged"> {
  const target = await realpath(path).catch(() => path);
  const temporary = join(
    dirname(target),
    `.${basename(target)}.${randomBytes(6).toString("hex")}.tmp`,
  );
  try {
    const before = await readFile(target, "utf8").catch(() => undefined);
    if (before === text) return "unchanged";
    const mode = before === undefined ? 0o666 : (await stat(target)).mode;
    const file = await open(temporary, "wx", mode);
    try {
      await file.writeFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
    if (expected !== undefined && !(await readFile(target)).equals(expected))
      throw ioError(path, "it was changed meanwhile by someone else", "run the command again");
    await rename(temporary, target);
    return "written";
  } catch (error) {
    await unlink(temporary).catch(() => undefined);
    throw error instanceof CommandError ? error : ioErrorFrom(path, error, "written");
  }
}

function ioErrorFrom(path: string, error: unknown, what = "read"): CommandError {
  const code = (error as { code?: string }).code;
  switch (code) {
    case "ENOENT":
      return what === "read"
        ? ioError(path, "there is no such file", "check the name and the folder")
        : ioError(path, "its folder does not exist", "make the folder first");
    case "EACCES":
    case "EPERM":
      return ioError(
        path,
        `it may not be ${what}`,
        "check the permissions of the file and its folder",
      );
    case "EISDIR":
      return ioError(path, "it is a folder", "give the name of a file");
    case "ENOTDIR":
      return ioError(path, "a part of its path is no folder", "check the path");
    case "ENOSPC":
      return ioError(path, "the disk is full", "make room");
    default:
      return ioError(path, `it cannot be ${what} (${code ?? String(error)})`, "try another place");
  }
}

function ioError(path: string, what: string, mend: string): CommandError {
  return new CommandError(exitCodes.io, `${path}: ${what}: ${mend}`);
}
