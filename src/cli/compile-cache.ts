/**
 * Compiled code is kept from one run to the next where Node.js can (22.1 and newer), in the user's own
 * folder for such; where it cannot be written, it is compiled each time. `NODE_DISABLE_COMPILE_CACHE`
 * turns it off, as for any program.
 */
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import nodeModule from "node:module";
import { homedir } from "node:os";
import { join } from "node:path";
import { version } from "./version.js";

/** Node.js 20 does not have it. */
interface NewerModule {
  readonly enableCompileCache?: (folder: string) => unknown;
}

/** Those that plan gardens or may take a while: the rest is not worth a folder. */
export const keptCommands: readonly string[] = [
  ...["plan", "check", "why", "calendar", "changes", "batch", "log", "sheet", "labels"],
  ...["crops", "new", "serve", "publish"],
];

/**
 * What Node.js keeps is what the first run has used, for good. So each command has a folder of its own,
 * which is begun anew until a run of it ended well.
 *
 * @param enable does it, into a folder
 * @returns tells that the run has ended well
 */
export function keepCompiled(
  command = "",
  enable = (nodeModule as NewerModule).enableCompileCache,
): () => void {
  const nothing = (): void => undefined;
  if (enable === undefined || !keptCommands.includes(command)) return nothing;
  try {
    const caches = process.env["XDG_CACHE_HOME"] ?? join(homedir(), ".cache");
    const folder = join(caches, "feedround", command);
    const mark = join(folder, "made-by");
    const madeBy = `${version()} ${process.version}`;
    const isWhole = textOf(mark) === madeBy;
    if (!isWhole) rmSync(folder, { recursive: true, force: true });
    enable(folder);
    if (isWhole) return nothing;
    return () => {
      write(mark, madeBy);
    };
  } catch {
    return nothing;
  }
}

function textOf(file: string): string | undefined {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return undefined;
  }
}

function write(file: string, text: string): void {
  try {
    writeFileSync(file, text);
  } catch {
    // Then it is begun anew next time.
  }
}
