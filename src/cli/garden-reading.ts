/** How gardens are read to be served or published: in this thread, and in threads of their own. */
import type { Problem, Result } from "../problem.js";
import {
  type AsOf,
  gardenSource,
  type GardenSource,
  type PlannedGarden,
  todayIn,
  type WorkerStart,
} from "../serve/index.js";
import { loadTables } from "../tables.js";
import { tickSheet } from "../ticks/index.js";
import { given } from "../values.js";
import { loadGarden } from "./load.js";
import { ownCalendar } from "./published-state.js";
import { CommandError, type Shell } from "./shell.js";

/** Plain values: they are told to threads. */
export interface ReadingWishes {
  readonly extraRounds?: number;
  /** With what can be marked. */
  readonly write?: true;
}

export function sourceOf(wishes: ReadingWishes): GardenSource {
  return gardenSource({ loadPlan: (file, asOf) => loadPlan(file, asOf, wishes) });
}

/** Threads that read as this one does, where the world has some. */
export function threadsFor(wishes: ReadingWishes, { threads }: Shell): WorkerStart | undefined {
  return threads && { ...threads, data: wishes };
}

/** A file that cannot be read is a problem of that garden: the others are served on. */
async function loadPlan(
  file: string,
  asOf: AsOf,
  { extraRounds, write }: ReadingWishes,
): Promise<Result<PlannedGarden>> {
  const { today, nowMs, previous, previousFile } = asOf;
  try {
    const notices: string[] = [];
    const loaded = await loadGarden(file, shellAt(asOf, notices), {
      ...{ isForWriting: true, served: previous ?? "" },
      ...given({ extraRounds, servedFile: previousFile }),
    });
    if (!loaded.ok) return loaded;
    const { garden, plan, earlier } = loaded.value;
    // What the garden's own calendar holds counts as published: only a real day may write it.
    const isReal = today === undefined || today === todayIn(garden.timezone, { nowMs });
    const path = isReal ? ownCalendar(file, garden) : undefined;
    const own = path === undefined ? undefined : { path, ...given({ bytes: earlier?.bytes }) };
    const ticks = write ? tickSheet(garden, plan, loadTables()) : undefined;
    const more = given({ previous: earlier?.text, ownCalendar: own, ticks });
    return { ok: true, value: { plan, ...more, notices } };
  } catch (error) {
    if (!(error instanceof CommandError)) throw error;
    const problem: Problem = {
      code: "cannot-read",
      file,
      at: { line: 1, column: 1 },
      message: "the file cannot be read",
      mend: "check that it is there and may be read",
    };
    return { ok: false, problems: [problem] };
  }
}

/** Its clock stands; what would be told on the terminal is told with the garden. */
function shellAt(asOf: AsOf, notices: string[]): Shell {
  return {
    stdout: () => undefined,
    stderr: (text) => notices.push(text.trimEnd()),
    readStdin: () => Promise.reject(new Error("gardens are read from files here")),
    today: (timezone) => todayIn(timezone, asOf),
    now: () => new Date(asOf.nowMs).toISOString(),
    pause: () => Promise.resolve(),
    localTimezone: () => "Etc/UTC",
    color: false,
    progress: false,
  };
}
