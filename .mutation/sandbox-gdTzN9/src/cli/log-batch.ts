/** What `log` writes of a batch: a step done, or its last step taken back. */
// @ts-nocheck

import { type DoneToBatch, batchNamed, stepEdits, undoEdit } from "../log/index.js";
import type { BatchStepKey } from "../garden/index.js";
import type { Result } from "../problem.js";
import { batchName } from "../stock/index.js";
import { nearest } from "../suggest.js";
import { given } from "../values.js";
import { batchesOfDay, type LogJob, type CommandWish, plansOfDay } from "./log-job.js";
import { spaced } from "./log-options.js";
import { entryRow } from "./log-text.js";
import { stepKey, stepWordOf, type StepWord } from "./log-steps.js";
import { type Shell, wrongUsage } from "./shell.js";

/** The day of a plan's batch that a step is compared with; of those after it, its bottling. */
export const visits: Partial<Record<BatchStepKey, DoneToBatch>> = {
  shells_out: "shellsOut",
  acid_in: "acidIn",
};

export async function stepWish(
  job: LogJob,
  name: string,
  step: StepWord,
  shell: Shell,
): Promise<Result<CommandWish>> {
  const { garden, written, on, options } = job;
  const plans = await plansOfDay(job, shell);
  if (!plans.ok) return plans;
  const done = { step: stepKey(step), on, isDayNamed: options.on !== undefined };
  const known = await batchesOfDay(job, plans.value, visits[done.step] ?? "made", shell);
  const volume = options.volume === undefined ? undefined : spaced(options.volume);
  const batch = batchNamed(name, written, known);
  const wish = stepEdits(name, batch, { ...done, ...given({ volume }) }, garden.amounts);
  if (wish === undefined) {
    const ids = [...(written.stock?.batches ?? []), ...known].map(({ id }) => id);
    throw noBatch(name, ids, "; one that no plan has is listed when you give its --volume");
  }
  const { id, edits, writtenOn } = wish;
  const already = `the file says so of ${batchName(id)} already (${step} on ${writtenOn ?? on}): give --on to correct the day`;
  return { ok: true, value: { edits, ...(edits.length === 0 ? { already } : {}) } };
}

/** Entries of the last day that the log speaks of, from its end on; or the last day of a batch. */
export async function undoWish(job: LogJob, shell: Shell): Promise<Result<CommandWish>> {
  const { batch } = job.options;
  return batch === undefined
    ? { ok: true, value: undoneFeedings(job) }
    : undoneStep(job, batch, shell);
}

async function undoneStep(job: LogJob, name: string, shell: Shell): Promise<Result<CommandWish>> {
  const { written } = job;
  const plans = await plansOfDay(job, shell);
  if (!plans.ok) return plans;
  const { listed } = batchNamed(name, written, await batchesOfDay(job, plans.value, "made", shell));
  if (listed === undefined) {
    const batches = written.stock?.batches ?? [];
    throw noBatch(
      name,
      batches.map(({ id }) => id),
    );
  }
  const { edit, step } = undoEdit(listed);
  const day = step === undefined ? [] : [stepWordOf(step), listed[step] ?? ""];
  return { ok: true, value: { edits: [edit], taken: [[listed.id, ...day]] } };
}

function undoneFeedings({ written }: LogJob): CommandWish {
  const log = written.log ?? [];
  const last = log.at(-1)?.on;
  const count = log.length - 1 - log.findLastIndex(({ on }) => on !== last);
  if (count === 0) return { edits: [], already: "the log is empty" };
  return {
    edits: [{ kind: "take-from-log", count }],
    taken: log.slice(-count).map(entryRow),
  };
}

function noBatch(name: string, ids: readonly string[], hint = ""): Error {
  const near = nearest(name, ids);
  const known = [...new Set(ids)].slice(0, 8).join(", ");
  const mend = near === undefined ? known && `it is one of ${known}` : `did you mean ${near}?`;
  return wrongUsage(`there is no batch ${name}: ${mend || "none is listed or planned"}${hint}`);
}
