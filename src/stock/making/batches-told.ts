/** Chosen batches and lost feedings in the words of the plan. */
import { addDays, type Day, dayFromNumber, daysBetween } from "../../dates.js";
import {
  type Draw,
  type MakingProblem,
  type MakingStep,
  makingSteps,
  type PlannedBatch,
  type Shortage,
  type StockBottle,
  type StockNeed,
} from "../making-problem.js";
import type { WayOfMaking } from "../making-rules.js";
import type { BatchChoice } from "./batches-fewest.js";
import type { RecipeStep } from "./recipe-types.js";
import { shellsFor, type ShellUse } from "./shells.js";

export interface NamedBatch extends ShellUse {
  readonly id: string;
  readonly acidOn: Day;
  readonly readyOn: Day;
}

/** Ids come from the ready day, so that they stay when other batches come or go. */
export function nameBatches(
  choices: readonly BatchChoice[],
  inHand: readonly { readonly id: string }[],
): NamedBatch[] {
  const taken = new Set(inHand.map(({ id }) => id));
  return choices.map(({ slot, volumeMl }) => {
    const readyOn = dayFromNumber(slot.ready);
    let id = `batch-${readyOn}`;
    for (let n = 2; taken.has(id); n++) id = `batch-${readyOn}-${n}`;
    taken.add(id);
    const startOn = dayFromNumber(slot.start);
    return { id, startOn, acidOn: dayFromNumber(slot.acid), readyOn, volumeMl };
  });
}

export function bottleOf(batch: NamedBatch, making: WayOfMaking): StockBottle {
  return {
    id: batch.id,
    readyOn: batch.readyOn,
    useBy: addDays(batch.readyOn, making.shelfLifeDays),
    leftMl: batch.volumeMl,
    strengthGPerL: making.strengthGPerL,
  };
}

export function plannedBatch(
  batch: NamedBatch,
  draws: readonly Draw[],
  { making, shells }: MakingProblem,
): PlannedBatch {
  const { id, startOn, acidOn, readyOn, volumeMl } = batch;
  const days = { "dry-shells": startOn, "add-acid": acidOn, strain: readyOn };
  return {
    id,
    startOn,
    readyOn,
    useBy: bottleOf(batch, making).useBy,
    steps: makingSteps.map((step) => ({ step, day: days[step] })),
    volumeMl,
    bottles: Math.ceil(volumeMl / making.bottleMl),
    ...shellsFor(volumeMl, shells),
    strengthGPerL: making.strengthGPerL,
    serves: draws.filter((d) => d.batch === id).map(({ need, day, ml }) => ({ need, day, ml })),
  };
}

/** The visit at which each step of the recipe is done. */
export const visitOf: Readonly<Record<RecipeStep["key"], MakingStep>> = {
  "dry-shells": "dry-shells",
  grind: "add-acid",
  mix: "add-acid",
  wait: "add-acid",
  check: "strain",
  strain: "strain",
  store: "strain",
  use: "strain",
};

export function dayOfStep(
  { id, steps }: Pick<PlannedBatch, "id" | "steps">,
  step: MakingStep,
): Day {
  const visit = steps.find((s) => s.step === step);
  if (visit === undefined) throw new Error(`${id} has no day to ${step}`);
  return visit.day;
}

/** @param inTime whether a batch can be made for that day, shells aside */
export function shortageOf(
  { need, ml }: { readonly need: StockNeed; readonly ml: number },
  inTime: boolean,
  { today, making }: MakingProblem,
): Shortage {
  const lost = { need: need.id, day: need.day, ml };
  const what = `no stock for ${ml} mL on ${need.day}`;
  const leadDays = making.dryDays + making.reactionDays;
  if (inTime)
    return {
      ...lost,
      reason: "shells",
      message: `${what}: too few eggshells are dry in time`,
      mend: "keep more shells a week, or ask neighbours for theirs",
    };
  if (daysBetween(today, need.day) < leadDays)
    return {
      ...lost,
      reason: "too-soon",
      message: `${what}: a batch begun on ${today} is ready ${leadDays} days later at the earliest`,
      mend: `begin a batch at once and feed from ${addDays(today, leadDays)} on, or list a bottle in hand under stock`,
    };
  const from = addDays(need.day, -making.shelfLifeDays);
  return {
    ...lost,
    reason: "away",
    message: `${what}: with the days away no batch can be made and strained for it that still keeps`,
    mend: `let someone strain and bottle a batch between ${from < today ? today : from} and ${need.day}, or keep the stock in the fridge`,
  };
}
