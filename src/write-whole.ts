import { createHash, randomBytes } from "node:crypto";
import type { Stats } from "node:fs";
import {
  constants,
  type FileHandle,
  lstat,
  open,
  readlink,
  realpath,
  rename,
  rm,
  writeFile,
} from "node:fs/promises";
import { basename, dirname, join } from "node:path";

/** Why a file is left as it is, with what to do about it. */
export class NotWritten extends Error {
  readonly code: string;
  readonly what: string;
  readonly mend: string;

  constructor(code: string, file: string, what: string, mend: string) {
    super(`${file}: ${what}`);
    this.code = code;
    this.what = what;
    this.mend = mend;
  }
}

export interface HowWritten {
  /** Permissions of a new file, less those that the process's mask takes away. */
  readonly mode?: number;
  /** The program alone writes it: a link in its place is replaced, another name of it keeps its text. */
  readonly isOurs?: true;
  /** What it throws leaves the file as it was. */
  readonly beforeReplacing?: () => Promise<void>;
}

/**
 * Writes a file whole or not at all: beside it first, then in its place in one step. Links are
 * followed. A file that is there keeps mode, group and, where this user may give it away, owner; not
 * its extended attributes and access lists, of which Node.js knows nothing. Throws `NotWritten`, else
 * the system's errors.
 */
export async function writeWhole(
  file: string,
  content: string | Iterable<string>,
  { mode = 0o666, isOurs, beforeReplacing = () => Promise.resolve() }: HowWritten = {},
): Promise<void> {
  const target = isOurs ? file : await targetOf(file);
  const there = await lstat(target).catch(ifMissing);
  const before = there?.isFile() ? there : undefined;
  if (before !== undefined) await refuseProtected(target, before);
  if (before !== undefined && before.nlink > 1 && !isOurs) throw secondName(file);
  const beside = besideOf(target, `${randomBytes(6).toString("hex")}.tmp`);
  try {
    // Nobody else reads it before it has the rights of the file.
    const handle = await openBeside(beside, before === undefined ? mode : 0o600, file);
    try {
      if (before !== undefined) await giveRights(handle, before, file);
      await writeFile(handle, content);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await beforeReplacing();
    await rename(beside, target);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}

/** A file of ours beside another, by whose name it is known; that may be as long as names can be. */
export function besideOf(file: string, ending: string): string {
  const name = basename(file);
  const short =
    Buffer.byteLength(name) <= 200 ? name : createHash("sha256").update(name).digest("hex");
  return join(dirname(file), `.${short}.${ending}`);
}

/** What links lead to, which must be there: a link may lead to a disk that is not in its place. */
async function targetOf(file: string): Promise<string> {
  try {
    return await realpath(file);
  } catch (error) {
    const there = await lstat(file).catch(() => undefined);
    if (!there?.isSymbolicLink()) return file;
    ifMissing(error);
    const what = `it is a link to ${await readlink(file)}, and there is no such file`;
    throw new NotWritten("dangling", file, what, "make that file first, or remove the link");
  }
}

/** By its mode also for a superuser, who may write everything: its owner did not want it changed. */
async function refuseProtected(file: string, before: Stats): Promise<void> {
  const isClosed = (before.mode & 0o222) === 0;
  if (!isClosed && (await opensForWriting(file))) return;
  const mend = isClosed
    ? "allow it with `chmod u+w`, or leave it as it is"
    : "run this as its owner, or let the owner give this user the right to write it";
  throw new NotWritten("protected", file, "it is write-protected", mend);
}

function secondName(file: string): NotWritten {
  const what = "it has a second name (a hard link), under which the old text would stay";
  const mend = "make it a file of its own first: copy it, and move the copy over it";
  return new NotWritten("linked", file, what, mend);
}

async function opensForWriting(file: string): Promise<boolean> {
  try {
    await (await open(file, constants.O_WRONLY)).close();
    return true;
  } catch (error) {
    if (isDenied(error)) return false;
    throw error;
  }
}

function isDenied(error: unknown): boolean {
  const { code } = error as NodeJS.ErrnoException;
  return code === "EACCES" || code === "EPERM";
}

async function openBeside(beside: string, mode: number, file: string): Promise<FileHandle> {
  try {
    return await open(beside, "wx", mode);
  } catch (error) {
    if (!isDenied(error)) throw error;
    const what = "its folder may not be written in, and a file is written anew beside the old one";
    const mend = "give this user the right to write in the folder";
    throw new NotWritten("folder-protected", file, what, mend);
  }
}

/** The group matters: other rights of the old mode would be those of another group. */
async function giveRights(handle: FileHandle, before: Stats, file: string): Promise<void> {
  const { uid, gid } = await handle.stat();
  if (uid !== before.uid || gid !== before.gid)
    await handle.chown(before.uid, before.gid).catch(() =>
      handle.chown(uid, before.gid).catch(() => {
        const what = "it belongs to a group that this user is not in, and could not stay so";
        const mend = "run this as its owner, or give the file a group of this user";
        throw new NotWritten("other-group", file, what, mend);
      }),
    );
  const mode = before.mode & 0o7777;
  // Giving a file away takes some of its mode.
  if (((await handle.stat()).mode & 0o7777) !== mode) await handle.chmod(mode);
}

function ifMissing(error: unknown): undefined {
  if ((error as NodeJS.ErrnoException).code !== "ENOENT") throw error;
  return undefined;
}
