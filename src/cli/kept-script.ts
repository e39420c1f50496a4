/**
 * A script whose compiled functions are kept from one run to the next, in the user's own folder for
 * such; where that cannot be written, it is compiled each time. What Node.js itself would keep
 * (`module.enableCompileCache`, 22.1 and newer) has none of the functions that are compiled as they are
 * called, which are nearly all.
 */
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { homedir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { Script } from "node:vm";

export interface KeptScript {
  readonly exports: unknown;
  /** Keeps what has been compiled by now, unless an earlier run did. */
  readonly keep: () => void;
}

/**
 * @param file a function of `module`, `require` and `moduleUrl`
 * @param use names what of it is called: each use is kept apart, none is not kept
 * @param edition changes whenever the script does
 */
export function keptScript(file: URL, use: string | undefined, edition: string): KeptScript {
  const kept = use === undefined ? undefined : keptFile(use, edition);
  const cachedData = kept && readIfThere(kept.path);
  const script = new Script(readFileSync(file, "latin1"), {
    filename: fileURLToPath(file),
    ...(cachedData === undefined ? {} : { cachedData }),
  });
  const module: { exports: unknown } = { exports: {} };
  const run = script.runInThisContext() as (...given: unknown[]) => void;
  run(module, createRequire(file), file.href);
  const isKept = kept === undefined || (cachedData && script.cachedDataRejected === false);
  return {
    exports: module.exports,
    keep: () => {
      if (!isKept) write(kept, script.createCachedData());
    },
  };
}

interface KeptFile {
  readonly folder: string;
  readonly use: string;
  readonly path: string;
}

/** Node.js itself refuses what another Node.js has compiled. */
function keptFile(use: string, edition: string): KeptFile | undefined {
  try {
    const caches = process.env["XDG_CACHE_HOME"] || join(homedir(), ".cache");
    const folder = join(caches, "feedround");
    return { folder, use, path: join(folder, `${use}-${edition}-${process.version}`) };
  } catch {
    return undefined;
  }
}

function readIfThere(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}

/** Whole or not at all, in place of what is there of the same use. */
function write({ folder, use, path }: KeptFile, code: Buffer): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const begun = `${path}.${process.pid}`;
    writeFileSync(begun, code, { mode: 0o600 });
    for (const name of readdirSync(folder))
      if (name.startsWith(`${use}-`) && join(folder, name) !== begun) rmSync(join(folder, name));
    renameSync(begun, path);
  } catch {
    // Then it is compiled again next time.
  }
}
