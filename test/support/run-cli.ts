import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { run } from "../../src/cli/program.js";
import type { Shell } from "../../src/cli/shell.js";
import { day } from "../../src/dates.js";
import { given } from "../../src/values.js";

export interface CliResult {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
}

export interface World {
  readonly stdin?: string | Uint8Array;
  readonly today?: string;
  readonly now?: string;
  readonly timezone?: string;
  readonly columns?: number;
  readonly color?: boolean;
  /** Waits for a lock; a moment unless given. */
  readonly pause?: () => Promise<void>;
  /** Standard error is a terminal. */
  readonly progress?: boolean;
  readonly threads?: Shell["threads"];
}

/** Runs one command line inside this process, with a world of its own. */
export async function cli(argv: readonly string[], world: World = {}): Promise<CliResult> {
  const { shell, out, err } = aShell(world);
  const code = await run(argv, shell);
  return { code, stdout: out.join(""), stderr: err.join("") };
}

/** A shell, and what is written to its outputs. */
export function aShell(world: World = {}): { shell: Shell; out: string[]; err: string[] } {
  const out: string[] = [];
  const err: string[] = [];
  const today = world.today ?? "2027-03-01";
  const shell: Shell = {
    stdout: (text) => void out.push(text),
    stderr: (text) => void err.push(text),
    readStdin: () => {
      const { stdin } = world;
      if (stdin === undefined)
        throw new Error("standard input was read although `-` was not given");
      return Promise.resolve(typeof stdin === "string" ? new TextEncoder().encode(stdin) : stdin);
    },
    today: () => day(today),
    now: () => world.now ?? `${today}T08:00:00Z`,
    pause: world.pause ?? (() => new Promise((resolve) => setImmediate(resolve))),
    localTimezone: () => world.timezone ?? "Europe/Dublin",
    color: world.color ?? false,
    progress: world.progress ?? false,
    ...given({ columns: world.columns, threads: world.threads }),
  };
  return { shell, out, err };
}

/** A folder of its own in the system's place for such. */
export function scratchFolder(): string {
  return mkdtempSync(join(tmpdir(), "feedround-test-"));
}

export function scratchFile(name: string, text: string | Uint8Array): string {
  const path = join(scratchFolder(), name);
  writeFileSync(path, text);
  return path;
}

export const examples = ["back-garden", "shared-garden", "orchard-corner"] as const;
export function examplePath(name: string): string {
  return new URL(`../../examples/${name}.yaml`, import.meta.url).pathname;
}
