/** Hands the world to `run`. */
import { Settings } from "luxon";
import { availableParallelism } from "node:os";
import { setTimeout as sleep } from "node:timers/promises";
import { todayAt } from "../garden/index.js";
import { secondText } from "../second.js";
import { run } from "./program.js";
import { exitCodes, type Shell } from "./shell.js";
import { isTerminalAt, type StandardOutputs } from "./standard-output.js";

Settings.throwOnInvalid = true;

const isTerminal = isTerminalAt(1);
const world: Omit<Shell, keyof StandardOutputs> = {
  readStdin: async (mostBytes) => {
    const chunks: Buffer[] = [];
    let size = 0;
    for await (const chunk of process.stdin) {
      chunks.push(chunk as Buffer);
      size += (chunk as Buffer).length;
      if (size > mostBytes) break;
    }
    return Buffer.concat(chunks);
  },
  today: (zone) => todayAt(Date.now(), zone),
  localTimezone: () => Intl.DateTimeFormat().resolvedOptions().timeZone,
  now: () => secondText(Date.now()),
  pause: (ms) => sleep(ms),
  ...(isTerminal ? { columns: process.stdout.columns } : {}),
  progress: isTerminalAt(2),
  threads: { entry: new URL("garden-worker.js", import.meta.url), most: availableParallelism() },
  ...(process.env["XDG_STATE_HOME"] ? { stateHome: process.env["XDG_STATE_HOME"] } : {}),
  color: isTerminal && !process.env["NO_COLOR"] && process.env["TERM"] !== "dumb",
};

/** Gives the exit code. */
export async function start(argv: readonly string[], outputs: StandardOutputs): Promise<number> {
  try {
    return await run(argv, { ...world, ...outputs });
  } catch (error) {
    outputs.stderr(
      `feedround: this is a fault of the program, not of your file: ${String(error)}\n` +
        "Please report it with the garden file; FEEDROUND_DEBUG=1 shows where it happened.\n",
    );
    if (process.env["FEEDROUND_DEBUG"]) console.error(error);
    return exitCodes.bug;
  }
}
