/** Steps of making that can be ticked, and those written down lately. */
// @ts-nocheck

import { type Day, within } from "../dates.js";
import { batchStepKeys, type BatchStepKey, type Garden } from "../garden/index.js";
import { writtenVolume } from "../log/index.js";
import { type Plan, stockJobs } from "../season/index.js";
import { batchName, type MakingStep } from "../stock/index.js";
import { byText, given } from "../values.js";
import { capital, jobInShort } from "../words/index.js";
import type { StepToTick } from "./sheet.js";
import { listedBatch, listedBatches, standingOf } from "./standing.js";
import { stepsDone } from "./told.js";
import { daysToTick } from "./window.js";

const keyOf: Readonly<Record<MakingStep, BatchStepKey>> = {
  "dry-shells": "shells_out",
  "add-acid": "acid_in",
  strain: "made",
};

type Step = Omit<StepToTick, "seen" | "told" | "batchName">;

/**
 * What the plan asks for; what a past calendar asked for and nobody wrote down; what was written; and
 * what is left in a bottle can be thrown away on any day.
 */
export function stepsToTick(
  garden: Garden,
  plan: Plan,
  bottles: readonly { readonly id: string }[],
): StepToTick[] {
  const shown = daysToTick(plan.today);
  const steps = new Map<string, Step>();
  for (const step of [
    ...plannedSteps(plan),
    ...toldSteps(garden, plan),
    ...writtenSteps(garden),
    ...bottles.map(({ id }) => thrownAway(id, plan.today)),
  ]) {
    const key = `${step.batch} ${step.step}`;
    if (within(step.day, shown) && !steps.has(key)) steps.set(key, step);
  }
  return [...steps.values()]
    .map((step) => ({
      ...step,
      batchName: batchName(step.batch),
      ...standingOf(garden, { kind: "step", ...step }, plan.published),
    }))
    .sort((a, b) => byText(a.day, b.day) || byText(a.batch, b.batch));
}

function plannedSteps(plan: Plan): Step[] {
  const { amounts } = plan.garden;
  return stockJobs(plan).flatMap((job): Step[] => {
    const line = capital(jobInShort(job, plan));
    const { day } = job;
    if (job.kind === "use-up")
      return [{ batch: job.discard.batch, step: "thrown_away", day, line }];
    if (job.kind !== "visit") return [];
    const step = keyOf[job.step];
    const volume = step === "made" ? writtenVolume(job.batch, amounts) : undefined;
    return [{ batch: job.batch.id, step, day, line, ...given({ volume }) }];
  });
}

/** Of batches that the plan counts on; one that a listed batch stands for has its id. */
function toldSteps(garden: Garden, { published, today, stock }: Plan): Step[] {
  const counted = new Set(stock?.making.account.map(({ batch }) => batch));
  return published.batches
    .map((batch) => {
      const { id } = listedBatch(garden, batch.id, published.batches) ?? batch;
      return { ...batch, id };
    })
    .filter(({ id, withdrawn }) => withdrawn === undefined && counted.has(id))
    .flatMap((batch) => {
      const days: readonly (readonly [BatchStepKey, Day])[] = [
        ["shells_out", batch.shellsOut],
        ["acid_in", batch.acidIn],
        ["made", batch.made],
      ];
      return days
        .filter(([, day]) => day < today)
        .map(([step, day]): Step => {
          const volume = step === "made" ? writtenVolume(batch, garden.amounts) : undefined;
          return doneStep(batch.id, step, day, volume);
        });
    });
}

function writtenSteps(garden: Garden): Step[] {
  return listedBatches(garden).flatMap(({ id, days, volumeMl = 0 }) =>
    batchStepKeys.flatMap((step) => {
      const day = days[step];
      if (day === undefined) return [];
      const volume = step === "made" ? writtenVolume({ volumeMl }, garden.amounts) : undefined;
      return [doneStep(id, step, day, volume)];
    }),
  );
}

function thrownAway(batch: string, day: Day): Step {
  const line = "Throw away what is left of it";
  return { batch, step: "thrown_away", day, line, isAnyDay: true };
}

function doneStep(batch: string, step: BatchStepKey, day: Day, volume?: string): Step {
  return { batch, step, day, line: capital(stepsDone[step]), ...given({ volume }) };
}
