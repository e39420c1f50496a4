import type { Stats } from "node:fs";
import { readFile, stat, writeFile } from "node:fs/promises";
import { legibleWord } from "../legible.js";
import { withLocks } from "../lock.js";
import { NotWritten, writeWhole } from "../write-whole.js";
import { CommandError, exitCodes, type Shell, wrongUsage } from "./shell.js";

/** Larger than any garden; anything bigger is refused before it fills the memory. */
const mostBytes = 50_000_000;

/** A path as messages name it. */
export function shownName(path: string): string {
  return path === "-" ? "<stdin>" : legibleWord(path);
}

/** Bytes of a file, or of standard input for `-`. Throws CommandError with exit code 3. */
export async function readBytes(path: string, shell: Shell): Promise<Uint8Array> {
  try {
    if (path === "-") return await readStdin(shell);
    const info = await stat(path);
    if (info.isDirectory()) throw ioError(path, "it is a folder", "give the name of a file in it");
    if (info.size > mostBytes) throw tooLarge(path);
    noteRead(info, shell);
    return await readFile(path);
  } catch (error) {
    throw error instanceof CommandError ? error : ioErrorFrom(path, error);
  }
}

/** The byte order mark that a file begins with, to be kept; empty where it has none. */
export function byteOrderMarkOf(bytes: Uint8Array): string {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? "\ufeff" : "";
}

async function readStdin(shell: Shell): Promise<Uint8Array> {
  const bytes = await shell.readStdin(mostBytes);
  if (bytes.length > mostBytes) throw tooLarge(shownName("-"));
  return bytes;
}

function tooLarge(path: string): CommandError {
  return ioError(path, "it is far too large for a garden", "check that it is the garden file");
}

/** By shell, the files that its command has read: a name, a link and a hard link are one file. */
const filesRead = new WeakMap<Shell, Set<string>>();

function noteRead(info: Stats, shell: Shell): void {
  const read = filesRead.get(shell) ?? new Set();
  filesRead.set(shell, read.add(fileId(info)));
}

function fileId({ dev, ino }: Stats): string {
  return `${dev} ${ino}`;
}

export async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}

/** A pipe, a terminal, `/dev/null`: it can be written to, but neither read back nor replaced. */
export async function isDevice(path: string): Promise<boolean> {
  return stat(path).then(
    (info) => !info.isFile() && !info.isDirectory(),
    () => false,
  );
}

/**
 * Gives a file this text, or these pieces of one, whole or not at all. A link stays one: what it
 * points to is written. The same content leaves the file untouched. A device is written to as it stands.
 *
 * @param expected what the file held when it was read, or `nothing` where there was none: it is left
 *   alone if it holds anything else by now. Without it no file is written over that the command reads.
 *   Throws CommandError with exit code 2 for such a file, else with 3.
 */
export async function writeText(
  path: string,
  content: string | Iterable<string>,
  shell: Shell,
  expected?: Uint8Array | "nothing",
): Promise<"written" | "unchanged"> {
  try {
    if (await isDevice(path)) {
      await writeFile(path, content);
      return "written";
    }
    const before = await readFile(path, "utf8").catch(() => undefined);
    // Only beside a text that is there pieces become one too.
    const text =
      before === undefined || typeof content === "string" ? content : [...content].join("");
    if (before === text) return "unchanged";
    const info = await stat(path).catch(() => undefined);
    if (expected === undefined && info && filesRead.get(shell)?.has(fileId(info)))
      throw wrongUsage(
        `${shownName(path)}: this command reads it, and would write over it: give --out another name`,
      );
    await writeWhole(path, text, {
      beforeReplacing: async () => {
        if (expected !== undefined && !(await holds(path, expected)))
          throw ioError(path, "it was changed meanwhile by someone else", "run the command again");
      },
    });
    return "written";
  } catch (error) {
    throw error instanceof CommandError ? error : ioErrorFrom(path, error, "written");
  }
}

/**
 * Reads, thinks and writes while no other process of ours does so with that file. Throws CommandError
 * with exit code 3 where one keeps it.
 */
export async function whileLocked<T>(
  path: string,
  shell: Shell,
  work: () => Promise<T>,
): Promise<T> {
  const done = await withLocks([path], work, { pause: shell.pause });
  if (done.ok) return done.value;
  throw new CommandError(
    exitCodes.io,
    done.problems.map(({ message, mend }) => `${message}: ${mend}`).join("\n"),
  );
}

async function holds(path: string, expected: Uint8Array | "nothing"): Promise<boolean> {
  if (expected === "nothing") return !(await exists(path));
  return (await readFile(path)).equals(expected);
}

function ioErrorFrom(path: string, error: unknown, what = "read"): CommandError {
  if (error instanceof NotWritten) return ioError(path, error.what, error.mend);
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
    case "EBUSY":
      return ioError(path, "it is in use, or mounted by itself", "mount its folder in its place");
    case "ENAMETOOLONG":
      return ioError(path, "its name is too long", "give it a shorter one");
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
  return new CommandError(exitCodes.io, `${legibleWord(path)}: ${what}: ${mend}`);
}
