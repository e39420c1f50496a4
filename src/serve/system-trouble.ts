import { legibleWord } from "../legible.js";
import type { Problem, Result } from "../problem.js";
import { NotWritten } from "../write-whole.js";

/** Something that keeps the server or the writing of files from its work; not in any one garden. */
export type Trouble = Pick<Problem, "code" | "message" | "mend">;

/** The code of {@link refuseChanged}. */
const changedMeanwhile = "ECHANGED";

const known: Readonly<Record<string, readonly [what: string, mend: string]>> = {
  EACCES: ["is not open to this user", "give this user the right to it, or choose another"],
  EPERM: ["is not open to this user", "give this user the right to it, or choose another"],
  EADDRINUSE: ["is in use already", "choose another port, or stop the program that uses it"],
  EADDRNOTAVAIL: ["is no address of this computer", "choose one of its own addresses"],
  ENOTFOUND: ["is not known", "choose one of this computer's own addresses"],
  ENOENT: ["does not exist", "check the path"],
  EEXIST: ["is a file, where a folder is needed", "give the name of a folder"],
  EBUSY: [
    "is in use, or mounted by itself",
    "mount its folder in its place, or close it elsewhere",
  ],
  ENOTDIR: ["is not in a folder", "check the path"],
  ENOSPC: ["could not be written: the disk is full", "make room on the disk"],
  [changedMeanwhile]: ["was changed meanwhile by another program", "do it again"],
  EROFS: ["is on a disk that can only be read", "choose another place"],
};

/** What an error of the operating system means for the user. Throws on what is our own bug. */
export function troubleOf(error: unknown, what: string): Trouble {
  if (error instanceof NotWritten) {
    const { code, message, mend } = error;
    return { code, message, mend };
  }
  const { code, message } = error as NodeJS.ErrnoException;
  if (code === undefined) throw error;
  const [text, mend] = known[code] ?? [`gives an error: ${message}`, "see the error's text"];
  return { code: code.toLowerCase(), message: `${legibleWord(what)} ${text}`, mend };
}

/** Keeps a file as it is that no longer is as it was read. */
export function refuseChanged(was: string | undefined, is: string | undefined): void {
  if (was !== is) throw Object.assign(new Error("changed meanwhile"), { code: changedMeanwhile });
}

/** What a call to the operating system gives, or what stood in its way. */
export async function attempt<T>(
  what: string,
  call: () => Promise<T>,
): Promise<Result<T, Trouble>> {
  try {
    return { ok: true, value: await call() };
  } catch (error) {
    return { ok: false, problems: [troubleOf(error, what)] };
  }
}

export function troubleLine({ message, mend }: Trouble): string {
  return `${message}: ${mend}`;
}
