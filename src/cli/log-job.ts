/** What the parts of the `log` command share. */
import type { GardenFile } from "../compiled/garden-file.js";
import type { Day } from "../dates.js";
import type { Garden, GardenEdit, NewLogEntry } from "../garden/index.js";
import { type DoneToBatch, keepsLog, type KnownBatch, knownBatches } from "../log/index.js";
import type { Result } from "../problem.js";
import type { Plan } from "../season/index.js";
import { loadGardenText } from "./load.js";
import type { LogOptions } from "./log-options.js";
import type { Shell } from "./shell.js";

export interface LogJob {
  readonly file: string;
  readonly text: string;
  readonly garden: Garden;
  /** As the file has it, sound. */
  readonly written: GardenFile;
  readonly today: Day;
  readonly on: Day;
  readonly options: LogOptions;
}

/** What is to be changed in the file. */
export interface LogWish {
  /** Empty where there is nothing to write. */
  readonly edits: readonly GardenEdit[];
  /** Why there is nothing to write. */
  readonly already?: string;
  readonly entries?: readonly NewLogEntry[];
  /** What is taken out, a row each. */
  readonly taken?: readonly (readonly string[])[];
  /** Said on standard error beside it. */
  readonly remarks?: readonly string[];
}

/** Where nothing was published, the file alone tells what the grower went by. */
const unpublished = { isUnpublished: true } as const;

/**
 * The plans that may have told the grower of a day: first the one that the kept calendar speaks of;
 * that of the day itself; and that of the file as it is, where no log moves it on with the clock.
 */
export async function plansOfDay(
  { text, file, garden, on, today }: LogJob,
  shell: Shell,
): Promise<Result<readonly [Plan, ...Plan[]]>> {
  if (garden.calendarFile !== undefined) {
    const kept = await loadGardenText(text, file, shell, { today });
    if (!kept.ok) return kept;
    if (kept.value.earlier !== undefined) return { ok: true, value: [kept.value.plan] };
  }
  const then = await loadGardenText(text, file, shell, { asOf: on, ...unpublished });
  if (!then.ok) return then;
  const timeless = keepsLog(garden)
    ? undefined
    : await loadGardenText(text, file, shell, { isTimeless: true, ...unpublished });
  const plans: readonly [Plan, ...Plan[]] = timeless?.ok
    ? [then.value.plan, timeless.value.plan]
    : [then.value.plan];
  return { ok: true, value: plans };
}

/** Of those plans, and of today's. */
export async function batchesOfDay(
  { text, file, today, on }: LogJob,
  plans: readonly Plan[],
  done: DoneToBatch,
  shell: Shell,
): Promise<readonly KnownBatch[]> {
  const now = await loadGardenText(text, file, shell, { today });
  return knownBatches([...plans, ...(now.ok ? [now.value.plan] : [])], done, on);
}
