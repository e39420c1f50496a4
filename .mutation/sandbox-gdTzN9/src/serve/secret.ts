// @ts-nocheck
import { randomBytes } from "node:crypto";
import { chmod, mkdir, open, readFile, stat } from "node:fs/promises";
import { join } from "node:path";
import type { Result } from "../problem.js";
import { type Trouble, troubleOf } from "./system-trouble.js";

const secretBytes = 24;
const secretForm = /^[A-Za-z0-9_-]{32}$/;

export interface Secret {
  readonly secret: string;
  /** For the terminal, when there is something to tell. */
  readonly notice?: string;
}

/** One for those who read, one for those who write, each with what has to be done when it is a new one. */
const anew = {
  secret: "every subscription must then be made again",
  "write-secret": "the link that writes must then be opened again on every phone",
};

export type SecretName = keyof typeof anew;

/**
 * A secret path segment, 192 random bits as base64url: the one kept in the state folder, or a new
 * one, in a file that only its owner can read.
 */
export async function keptSecret(
  stateDir: string,
  name: SecretName,
): Promise<Result<Secret, Trouble>> {
  const file = join(stateDir, name);
  try {
    await mkdir(stateDir, { recursive: true, mode: 0o700 });
    const made = await makeSecret(file);
    if (made !== undefined) return { ok: true, value: { secret: made } };
    const secret = (await readFile(file, "utf8")).trim();
    if (!secretForm.test(secret)) {
      const message = `${file} does not hold a secret as this program makes them`;
      const mend = `delete it to get a new one; ${anew[name]}`;
      return { ok: false, problems: [{ code: "bad-secret", message, mend }] };
    }
    if (!(await closeToOthers(file))) return { ok: true, value: { secret } };
    const notice = `${file} could be read by others on this computer; now it can't. If that matters, delete it and start again; ${anew[name]}.`;
    return { ok: true, value: { secret, notice } };
  } catch (error) {
    return { ok: false, problems: [troubleOf(error, file)] };
  }
}

/** Whether the state folder still holds it: deleting the file takes it back while the server runs. */
export async function stillHolds(
  stateDir: string,
  name: SecretName,
  secret: string,
): Promise<boolean> {
  const text = await readFile(join(stateDir, name), "utf8").catch(() => "");
  return text.trim() === secret;
}

/** Undefined when there is one already; `wx` decides between two servers that start at once. */
async function makeSecret(file: string): Promise<string | undefined> {
  try {
    const handle = await open(file, "wx", 0o600);
    try {
      const secret = randomBytes(secretBytes).toString("base64url");
      await handle.writeFile(`${secret}\n`);
      await handle.sync();
      return secret;
    } finally {
      await handle.close();
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return undefined;
    throw error;
  }
}

/** Whether it was open to them. */
async function closeToOthers(file: string): Promise<boolean> {
  // Windows has no such bits: a file there shows 0o666 whoever may read it.
  if (process.platform === "win32") return false;
  const { mode } = await stat(file);
  if ((mode & 0o077) === 0) return false;
  await chmod(file, 0o600);
  return true;
}
