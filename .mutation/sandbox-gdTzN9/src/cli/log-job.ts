/** What the parts of the `log` command share. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type DoneToBatch, keepsLog, type KnownBatch, knownBatches } from "../log/index.js";
import type { Result } from "../problem.js";
import type { Plan } from "../season/index.js";
import { planRead } from "./load.js";
import type { LogOptions } from "./log-options.js";
import type { Shell } from "./shell.js";
import type { GardenNow, LogWish } from "./write-log.js";

export interface LogJob extends GardenNow {
  readonly today: Day;
  readonly on: Day;
  readonly options: LogOptions;
}

/** A wish of the command line, with what it tells. */
export interface CommandWish extends LogWish {
  /** Why there is nothing to write. */
  readonly already?: string;
  /** What is taken out, a row each. */
  readonly taken?: readonly (readonly string[])[];
}

/** Where nothing was published, the file alone tells what the grower went by. */
const unpublished = { isUnpublished: true } as const;

/**
 * The plans that may have told the grower of a day: first the one that the kept calendar speaks of;
 * that of the day itself; and that of the file as it is, where no log moves it on with the clock.
 */
export async function plansOfDay(
  job: LogJob,
  shell: Shell,
): Promise<Result<readonly [Plan, ...Plan[]]>> {
  const { file, garden, on, today } = job;
  if (garden.calendarFile !== undefined) {
    const kept = await planRead(job, file, shell, { today });
    if (!kept.ok) return kept;
    if (kept.value.earlier !== undefined) return { ok: true, value: [kept.value.plan] };
  }
  const then = await planRead(job, file, shell, { asOf: on, ...unpublished });
  if (!then.ok) return then;
  const timeless = keepsLog(garden)
    ? undefined
    : await planRead(job, file, shell, { isTimeless: true, ...unpublished });
  const plans: readonly [Plan, ...Plan[]] = timeless?.ok
    ? [then.value.plan, timeless.value.plan]
    : [then.value.plan];
  return { ok: true, value: plans };
}

/** Of those plans, and of today's. */
export async function batchesOfDay(
  job: LogJob,
  plans: readonly Plan[],
  done: DoneToBatch,
  shell: Shell,
): Promise<readonly KnownBatch[]> {
  const now = await planRead(job, job.file, shell, { today: job.today });
  return knownBatches([...plans, ...(now.ok ? [now.value.plan] : [])], done, job.on);
}
