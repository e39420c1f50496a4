/** Chosen batches and lost feedings in the words of the plan. */
// @ts-nocheck

import { addDays, type Day, dayFromNumber, dayNumber, type DaySpan, earlier } from "../../dates.js";
import { shortDay } from "../../garden/index.js";
import {
  type Draw,
  type MakingProblem,
  type MakingStep,
  makingSteps,
  type PlannedBatch,
  type Shortage,
  type StockBottle,
  type StockNeed,
  type UnderWay,
} from "../making-problem.js";
import { batchId, batchName } from "../batch-name.js";
import type { WayOfMaking } from "../making-rules.js";
import { batchSlots } from "./batches-days.js";
import { type BatchChoice, slotFor } from "./batches-fewest.js";
import type { RecipeStep } from "./recipe-types.js";
import { namesFor } from "./kept-batches.js";
import { shellsFor } from "./shells.js";
import { nextNumbers } from "./standing.js";

/** A published batch that moves keeps its own id and number. */
export function nameBatches(
  choices: readonly BatchChoice[],
  { bottles, underWay = [], toBegin = [], told = [] }: MakingProblem,
): UnderWay[] {
  const taken = new Set([...bottles, ...underWay, ...told].map(({ id }) => id));
  const drawNumber = nextNumbers([...told, ...underWay]);
  const draw = (): Pick<UnderWay, "id" | "number"> => {
    const number = drawNumber();
    const id = batchId(number);
    return taken.has(id) ? draw() : { id, number };
  };
  const names = namesFor(choices, toBegin);
  return choices.map(({ slot, volumeMl }, i) => {
    const [startOn, acidOn, readyOn] = [slot.start, slot.acid, slot.ready].map(dayFromNumber) as [
      Day,
      Day,
      Day,
    ];
    const { id, number } = names[i] ?? draw();
    return { id, number, startOn, acidOn, readyOn, volumeMl };
  });
}

export function bottleOf(batch: UnderWay, making: WayOfMaking): StockBottle {
  return {
    id: batch.id,
    readyOn: batch.readyOn,
    useBy: addDays(batch.readyOn, making.shelfLifeDays),
    leftMl: batch.volumeMl,
    strengthGPerL: making.strengthGPerL,
  };
}

export function plannedBatch(
  batch: UnderWay,
  draws: readonly Draw[],
  { making, shells, today }: MakingProblem,
): PlannedBatch {
  const { id, number, startOn, acidOn, readyOn, volumeMl } = batch;
  const days = { "dry-shells": startOn, "add-acid": acidOn, strain: readyOn };
  return {
    id,
    number,
    ...(startOn <= today ? { underWay: true as const } : {}),
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

/**
 * In words that stay the same from day to day.
 *
 * @param inTime whether a batch can be made for that day, shells aside
 * @param batches under way and to be made
 */
export function shortageOf(
  { need, ml }: { readonly need: StockNeed; readonly ml: number },
  inTime: boolean,
  { amounts = "metric", away, making }: MakingProblem,
  batches: readonly UnderWay[],
): Shortage {
  const said = (day: Day): string => shortDay(day, amounts);
  const lost = { need: need.id, day: need.day, ml };
  if (inTime)
    return {
      ...lost,
      reason: "shells",
      why: "too few eggshells are dry in time",
      mend: "keep more shells a week, or ask neighbours for theirs",
    };
  if (!couldBeMade(need.day, away, making))
    return {
      ...lost,
      reason: "away",
      why: "with the days away no batch can be made and strained for it that still keeps",
      mend: `let someone strain and bottle a batch between ${said(addDays(need.day, -making.shelfLifeDays))} and ${said(need.day)}, or keep the stock in the fridge`,
    };
  const next = batches.find(({ readyOn }) => readyOn > need.day);
  return next === undefined
    ? {
        ...lost,
        reason: "too-soon",
        why: `a batch takes ${making.dryDays + making.reactionDays} days to make`,
        mend: "begin one at once and feed when it is bottled, or list a bottle in hand under stock",
      }
    : {
        ...lost,
        reason: "too-soon",
        why: `${batchName(next.id)} is bottled on ${said(next.readyOn)}`,
        mend: `feed on ${said(next.readyOn)} or as soon after as you can, or list a bottle in hand under stock`,
      };
}

/** Whether someone who began early enough has a batch for that day. */
function couldBeMade(day: Day, away: readonly DaySpan[], making: WayOfMaking): boolean {
  const { dryDays, longestStandDays, shelfLifeDays } = making;
  const early = away.reduce((earliest, { from }) => earlier(earliest, from), day);
  const today = addDays(early, -(dryDays + longestStandDays + shelfLifeDays));
  const slots = batchSlots({ today, last: day }, away, making);
  return slotFor(dayNumber(day), slots, shelfLifeDays) !== undefined;
}
