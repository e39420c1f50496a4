/** Saving shells, and the visits to a batch. */
// @ts-nocheck

import type { Day } from "../dates.js";
import {
  type Acid,
  type Amounts,
  counted,
  dayText,
  fullDate,
  shortDay,
  type KeptIn,
  shortDate,
  totalStockText,
} from "../garden/index.js";
import type { BatchRecipe, SeasonStock } from "../season/index.js";
import {
  batchName,
  dayOfStep,
  kitchenVolumeText,
  type MakingStep,
  type PlannedBatch,
  vesselText,
  weightText,
} from "../stock/index.js";
import { capital, type Say } from "./say.js";

export const acidNames: Readonly<Record<Acid, string>> = {
  citric: "citric acid",
  vinegar: "vinegar",
};

const keptNames: Readonly<Record<KeptIn, string>> = {
  fridge: "in the fridge",
  shelf: "on the shelf",
};

/** What all feedings take, and what is made for them. */
export function seasonOfStock(
  { making, acid, keep, pour }: SeasonStock,
  stockMl: number,
  amounts: Amounts,
): string {
  const { batches, shells } = making;
  const need = `The season takes ${totalStockText(stockMl, amounts)} of stock, poured ${pour}.`;
  return batches.length === 0
    ? `${need} No batch needs to be made.`
    : `${need} ${counted(batches.length, "batch", "batches")} to make with ${acidNames[acid]}, kept ${keptNames[keep]}, from ${counted(shells.eggs, "eggshell")} (${weightText(shells.shellG, amounts)} when dry).`;
}

/** A visit as a job on its day. */
export function visitJob<T>(
  say: Say<T>,
  step: MakingStep,
  batch: PlannedBatch,
  name: T,
  { recipes, acid, newWhite }: SeasonStock,
  amounts: Amounts,
): T {
  switch (step) {
    case "dry-shells":
      return say`Boil ${counted(batch.eggs, "eggshell")} and set them out to dry, for ${name}`;
    case "add-acid": {
      const recipe = recipes.find((r) => r.batch === batch.id);
      return recipe === undefined
        ? say`Grind the shells to a fine powder and add the acid in an open vessel: ${name}`
        : say`Grind the shells to a fine powder; stir ${weightText(batch.shellG, amounts)} of them bit by bit into ${liquidWords(acid, recipe, " in ", amounts)}, in an open vessel of ${vesselText(recipe.vesselL, amounts)} at the least: ${name}`;
    }
    case "strain": {
      const { bottles, volumeMl, useBy } = batch;
      const strain =
        newWhite === undefined ? "Strain" : "Stir up, strain through a mesh (no cloth)";
      return say`${strain} and bottle ${name}: ${totalStockText(volumeMl, amounts)} in ${counted(bottles, "bottle")}; label ${bottles === 1 ? "it" : "them"}, use by ${fullDate(useBy, amounts)}`;
    }
  }
}

/** Water stands after `between` the acid that is weighed; vinegar brings its own. */
function liquidWords(
  acid: Acid,
  { acidG = 0, vinegarMl = 0, waterMl }: Pick<BatchRecipe, "acidG" | "vinegarMl" | "waterMl">,
  between: string,
  amounts: Amounts,
): string {
  switch (acid) {
    case "citric":
      return `${weightText(acidG, amounts)} of citric acid${between}${kitchenVolumeText(waterMl, amounts)} of water`;
    case "vinegar":
      return `${kitchenVolumeText(vinegarMl, amounts)} of vinegar`;
  }
}

/** A batch to make, and how. */
export interface Making {
  readonly batch: PlannedBatch;
  readonly recipe: BatchRecipe;
}

type Some<T> = readonly [T, ...T[]];

/**
 * A visit to all batches of a day.
 *
 * @example "Start 1 L of stock: 62 g of shell, 50 g of citric acid, 1 L of water"
 */
export function visitSummary(
  step: MakingStep,
  makings: Some<Making>,
  acid: Acid,
  amounts: Amounts,
): string {
  const sum = (of: (making: Making) => number) => makings.reduce((n, m) => n + of(m), 0);
  const stock = totalStockText(
    sum(({ batch }) => batch.volumeMl),
    amounts,
  );
  const what = makings.length === 1 ? `${stock} of stock` : `${makings.length} batches, ${stock}`;
  switch (step) {
    case "dry-shells": {
      const eggs = sum(({ batch }) => batch.eggs);
      return `Boil ${counted(eggs, "eggshell")} and set them out to dry, for ${what}`;
    }
    case "add-acid": {
      const shellG = sum(({ batch }) => batch.shellG);
      const liquid = {
        acidG: sum(({ recipe }) => recipe.acidG ?? 0),
        vinegarMl: sum(({ recipe }) => recipe.vinegarMl ?? 0),
        waterMl: sum(({ recipe }) => recipe.waterMl),
      };
      return `Start ${what}: ${weightText(shellG, amounts)} of shell, ${liquidWords(acid, liquid, ", ", amounts)}`;
    }
    case "strain": {
      const bottles = sum(({ batch }) => batch.bottles);
      return `Strain and bottle ${what}: ${counted(bottles, "bottle")}, use by ${fullDate(makings[0].batch.useBy, amounts)}`;
    }
  }
}

/** What comes after a visit. */
export function afterVisit(step: MakingStep, batch: PlannedBatch, amounts: Amounts): string {
  const dayIn = (day: Day): string => shortDay(day, amounts, batch.startOn);
  const strainOn = dayIn(dayOfStep(batch, "strain"));
  switch (step) {
    case "dry-shells":
      return `Add the acid on ${dayIn(dayOfStep(batch, "add-acid"))}, strain on ${strainOn}.`;
    case "add-acid":
      return `Strain and bottle it on ${strainOn}.`;
    case "strain": {
      const { id, useBy, serves } = batch;
      const [first, last] = [serves[0]?.day, serves.at(-1)?.day];
      const label = `On the label: ${capital(batchName(id))}, use by ${fullDate(useBy, amounts)}.`;
      if (first === undefined || last === undefined) return label;
      return first === last
        ? `${label} It is poured on ${dayIn(first)}.`
        : `${label} It is poured from ${dayIn(first)} to ${dayIn(last)}.`;
    }
  }
}

/** As a job on its day. */
export function keepShells(eggs: number): string {
  return `Keep every eggshell from now on: ${eggs} are needed`;
}

/** @param from absent where it is too late, or not needed, to begin saving */
export function keepShellsSummary(eggs: number, missing: number, from?: Day): string {
  const short = `${counted(missing, "eggshell")} short`;
  if (from === undefined) return `${short} for the stock`;
  const keep = `Keep every eggshell from now on: ${eggs} go into the stock`;
  return missing > 0 ? `${keep}; ${short}` : keep;
}

/** Among the lines of a season's plan. */
export function saveShells(eggs: number, from: Day, amounts: Amounts): string {
  return `save eggshells from ${shortDate(from, amounts)} on: ${counted(eggs, "shell")} in all`;
}

/** Among the lines of a report on batches. */
export function shellsInAll(eggs: number, from: Day | undefined, amounts: Amounts): string {
  const all = `${counted(eggs, "eggshell")} in all`;
  return from === undefined ? all : `${all}: keep every one from ${dayText(from, amounts)} on`;
}

/** `12 eggshells by Tue 8 Jun for batch 1 (1 L)` */
export function shellsForBatch(batch: PlannedBatch, amounts: Amounts): string {
  const { id, startOn, eggs, volumeMl } = batch;
  return `${counted(eggs, "eggshell")} by ${shortDay(startOn, amounts)} for ${batchName(id)} (${totalStockText(volumeMl, amounts)})`;
}
