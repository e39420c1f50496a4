/** Jobs for the stock: whole, and in the few words of a first line. */
// @ts-nocheck

import { type Amounts, counted, totalStockText } from "../garden/index.js";
import type { Plan, StockJob } from "../season/index.js";
import { batchName, type MakingStep, type PlannedBatch, weightText } from "../stock/index.js";
import { openBottle, useUpJob } from "./bottles.js";
import { stepCommand, throwAwayCommand } from "./commands.js";
import { keepShells, visitJob } from "./making.js";
import type { Say } from "./say.js";

type StockPlan = Pick<Plan, "garden" | "today"> & { readonly stock: NonNullable<Plan["stock"]> };

/** @param named the name of a batch as it is shown */
export function jobInFull<T>(
  say: Say<T>,
  job: StockJob,
  { garden: { amounts }, stock, today }: StockPlan,
  named: (batch: string) => T,
): T {
  switch (job.kind) {
    case "save-shells":
      return say`${keepShells(job.eggs)}`;
    case "visit":
      return visitJob(say, job.step, job.batch, named(job.batch.id), stock, amounts);
    case "open-bottle":
      return openBottle(say, named(job.batch));
    case "use-up":
      return useUpJob(say, job.discard, named(job.discard.batch), amounts, today);
  }
}

/** The line to type when it is done, where it is a step of a batch. */
export function jobCommand(job: StockJob): string | undefined {
  if (job.kind === "visit") return stepCommand(job.step, job.batch.id);
  return job.kind === "use-up" ? throwAwayCommand(job.discard.batch) : undefined;
}

/** At hand for the stock on one day, minutes; 0 where no visit is among the jobs. */
export function workMinutes(jobs: readonly StockJob[], { stock }: Pick<Plan, "stock">): number {
  const visits = jobs.filter((job) => job.kind === "visit");
  return visits.reduce((sum, { step }) => sum + (stock?.visitMinutes[step] ?? 0), 0);
}

/** Within a sentence: `crush 16 g of shell, stir into the acid` */
export function jobInShort(job: StockJob, { garden: { amounts } }: Pick<Plan, "garden">): string {
  switch (job.kind) {
    case "save-shells":
      return `keep eggshells from now on, ${job.eggs} in all`;
    case "visit":
      return visitInShort(job.step, job.batch, amounts);
    case "open-bottle":
      return `open a bottle of ${batchName(job.batch)}`;
    case "use-up": {
      const { ml, batch } = job.discard;
      return `use up or throw away ${totalStockText(ml, amounts)} of ${batchName(batch)}`;
    }
  }
}

function visitInShort(
  step: MakingStep,
  { eggs, shellG, volumeMl }: PlannedBatch,
  amounts: Amounts,
): string {
  switch (step) {
    case "dry-shells":
      return `boil ${counted(eggs, "eggshell")} and set them out to dry`;
    case "add-acid":
      return `crush ${weightText(shellG, amounts)} of shell, stir into the acid`;
    case "strain":
      return `strain and bottle ${totalStockText(volumeMl, amounts)}`;
  }
}
