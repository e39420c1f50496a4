/**
 * What `feedround batch` tells: the recipe of a batch and, for a garden, which batches to make when.
 * `schemas/batch.schema.json` documents it for other programs.
 */
// @ts-nocheck

import { addDays, type Day } from "../dates.js";
import type { Acid, Amounts } from "../garden/index.js";
import type { CanMix, Plan, PlanWarning } from "../season/index.js";
import {
  type AccountLine,
  dayOfStep,
  type Discard,
  type PlannedBatch,
  type Recipe,
  type RecipeMeans,
  type RecipeStep,
  type ShellPlan,
} from "../stock/index.js";
import { given } from "../values.js";

export interface BatchReport {
  readonly batchVersion: 1;
  /** The day it was made for. */
  readonly today: Day;
  readonly amounts: Amounts;
  readonly garden?: { readonly id: string; readonly name: string };
  /** The batches of the season; absent when a size was asked for, or no garden was given. */
  readonly making?: MakingReport;
  /** Of the size asked for, or of the next batch to make; absent when none is to be made. */
  readonly recipe?: RecipeReport;
}

export interface MakingReport {
  /** By the day they are ready. */
  readonly batches: readonly BatchToMake[];
  readonly inHand: readonly AccountLine[];
  readonly discards: readonly Discard[];
  /** One for each round that lacks stock. */
  readonly shortages: readonly PlanWarning[];
  readonly shells: ShellPlan;
}

export interface BatchToMake extends Omit<PlannedBatch, "serves"> {
  readonly serves: readonly ServedFeeding[];
}

/** Cans of one bed on one day that are poured from the batch. */
export interface ServedFeeding {
  readonly day: Day;
  readonly bed: string;
  readonly route: CanMix["route"];
  readonly plantings: readonly string[];
  readonly ml: number;
}

/** What the report tells as the recipe has it. */
type RecipeAmounts = Pick<
  Recipe,
  | "shellG"
  | "eggs"
  | "shellTablespoons"
  | "crushedTablespoons"
  | "acidG"
  | "acidTablespoons"
  | "vinegarMl"
  | "waterMl"
  | "vesselL"
  | "carbonDioxideG"
  | "carbonDioxideL"
  | "makesMl"
  | "bottles"
  | "crystalsG"
  | "whitePasses"
  | "shellLeftG"
>;

export interface RecipeReport extends RecipeAmounts {
  /** Id of the planned batch, where it is one of the making plan. */
  readonly batch?: string;
  readonly acid: Acid;
  /** How the citric acid is sold. */
  readonly citricForm?: "anhydrous" | "monohydrate";
  /** g of acetic acid per 100 mL of the vinegar. */
  readonly vinegarPercent?: number;
  /** Weight class of the eggs: `EU M`. */
  readonly eggSize: string;
  readonly dryShellPerEggG: number;
  /** Calcium carbonate in the dry shell, 0 to 1. */
  readonly shellPurity: number;
  readonly temperatureC: number;
  readonly bottleMl: number;
  readonly ph: { readonly whileFizzing: number; readonly finished: number };
  /** Calcium, g/L: bottle shaken; poured clear once settled; and clear in the first day or two. */
  readonly strengthGPerL: {
    readonly shaken: number;
    readonly clear: number;
    readonly beforeCrystals: number;
  };
  readonly startOn: Day;
  readonly acidOn: Day;
  readonly readyOn: Day;
  readonly useBy: { readonly shelf: Day; readonly fridge: Day };
  readonly steps: readonly DatedStep[];
}

export interface DatedStep extends Omit<RecipeStep, "dayFromStart"> {
  readonly day: Day;
}

/** Days of the visits of a batch. */
type BatchDays = Pick<RecipeReport, "startOn" | "acidOn" | "readyOn">;

/** Begun that day, and never left longer than it takes. */
export function daysFrom(startOn: Day, { dryDays, reactionDays }: Recipe): BatchDays {
  const acidOn = addDays(startOn, dryDays);
  return { startOn, acidOn, readyOn: addDays(acidOn, reactionDays) };
}

export function daysOf(batch: PlannedBatch): BatchDays {
  const { startOn, readyOn } = batch;
  return { startOn, acidOn: dayOfStep(batch, "add-acid"), readyOn };
}

function acidBought(means: RecipeMeans): Pick<RecipeReport, "citricForm" | "vinegarPercent"> {
  switch (means.acid) {
    case "citric":
      return { citricForm: means.citricForm };
    case "vinegar":
      return { vinegarPercent: means.vinegarPercent };
  }
}

export function recipeReport(recipe: Recipe, days: BatchDays, batch?: string): RecipeReport {
  const { means } = recipe;
  const { shellG, eggs, shellTablespoons, crushedTablespoons, acidG, waterMl, vesselL } = recipe;
  const { carbonDioxideG, carbonDioxideL, makesMl, bottles, crystalsG, whitePasses, shellLeftG } =
    recipe;
  const dayOf = (dayFromStart: number): Day =>
    dayFromStart === 0 ? days.startOn : dayFromStart <= recipe.dryDays ? days.acidOn : days.readyOn;
  return {
    ...given({ batch }),
    acid: means.acid,
    ...acidBought(means),
    shellPurity: means.shellPurity,
    temperatureC: means.temperatureC,
    shellG,
    eggs,
    eggSize: means.eggs.name,
    dryShellPerEggG: means.eggs.dryShellG,
    shellTablespoons,
    crushedTablespoons,
    acidG,
    ...given({ acidTablespoons: recipe.acidTablespoons, vinegarMl: recipe.vinegarMl }),
    waterMl,
    vesselL,
    carbonDioxideG,
    carbonDioxideL,
    makesMl,
    bottles,
    bottleMl: means.bottleMl,
    ph: { whileFizzing: recipe.phWhileFizzing, finished: recipe.phFinished },
    strengthGPerL: {
      shaken: recipe.shakenGPerL,
      clear: recipe.clearGPerL,
      beforeCrystals: recipe.beforeCrystalsGPerL,
    },
    crystalsG,
    whitePasses,
    shellLeftG,
    ...days,
    useBy: {
      shelf: addDays(days.readyOn, recipe.shelfDays),
      fridge: addDays(days.readyOn, recipe.fridgeDays),
    },
    steps: recipe.steps.map(({ key, dayFromStart, text, cautions }) => ({
      key,
      day: dayOf(dayFromStart),
      text,
      cautions,
    })),
  };
}

/** Undefined where the plan has no stock side. */
export function makingReport({ stock, rounds, warnings }: Plan): MakingReport | undefined {
  if (stock === undefined) return undefined;
  const { batches, account, discards, shells } = stock.making;
  const servedBy = (batch: string): ServedFeeding[] =>
    rounds.flatMap(({ day, beds }) =>
      beds.flatMap(({ bed, mixes }) =>
        mixes.flatMap(({ route, feedings, pours = [] }) =>
          pours
            .filter((pour) => pour.batch === batch)
            .map(({ ml }) => ({ day, bed, route, plantings: feedings.map((f) => f.planting), ml })),
        ),
      ),
    );
  return {
    batches: batches.map((batch) => ({ ...batch, serves: servedBy(batch.id) })),
    inHand: account.filter(({ planned }) => !planned),
    discards,
    shortages: warnings.filter(({ code }) => code.startsWith("stock-short-")),
    shells,
  };
}
