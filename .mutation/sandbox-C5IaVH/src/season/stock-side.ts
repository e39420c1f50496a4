/** The stock side of a plan: bottles, batches and how they are made. */
// @ts-nocheck

import type { Day } from "../dates.js";
import type { Acid, KeptIn, PourStyle, Strainer } from "../garden/index.js";
import type { MakingStep, RecipeStep, StockPlan } from "../stock/index.js";

/** Stock from one bottle. */
export interface Pour {
  /** Id of a batch in hand or to be made. */
  readonly batch: string;
  readonly ml: number;
  readonly strengthGPerL: number;
}

/** A bottle that is there already. */
export interface InHand {
  readonly id: string;
  readonly madeOn: Day;
  /** The last day it may be used. */
  readonly useBy: Day;
  readonly leftMl: number;
  /** Calcium as poured, g/L. */
  readonly strengthGPerL: number;
  /** Absent where the strength was measured, or does not hang on the white. */
  readonly white?: StrainedWhite;
}

/** How much of the white came into a bottle: a stated assumption that its strength rests on. */
export interface StrainedWhite {
  readonly strainer: Strainer;
  /** 0 to 1. */
  readonly passes: number;
  /** The garden file does not say what it was strained through. */
  readonly assumed?: true;
}

/** The stock side of the plan. */
export interface SeasonStock {
  /** Draws, batches to make, shortages, changes of bottle, days to use up or throw away, shells. */
  readonly making: StockPlan;
  /** How each of `making.batches` is made, in the same order. */
  readonly recipes: readonly BatchRecipe[];
  /** Bottles of the garden file as they stand today. */
  readonly inHand?: readonly InHand[];
  /** Work of each visit to a batch, minutes. */
  readonly visitMinutes: Readonly<Record<MakingStep, number>>;
  readonly acid: Acid;
  readonly keep: KeptIn;
  readonly pour: PourStyle;
  readonly bottleMl: number;
  /** Calcium in a new batch as poured, and as it would be if poured clear, g/L. */
  readonly newStrengthGPerL: number;
  readonly newClearStrengthGPerL: number;
  /** pH of a new batch when it is done. */
  readonly newPh: number;
  /** Of a new batch; absent where its strength does not hang on the white. */
  readonly newWhite?: StrainedWhite;
}

/** Amounts of one batch, and what to do; shells and volume stand in the batch itself. */
export interface BatchRecipe {
  readonly batch: string;
  /** Crystals to weigh; absent for vinegar. */
  readonly acidG?: number;
  /** Absent for citric acid. */
  readonly vinegarMl?: number;
  /** Water to add; 0 with vinegar. */
  readonly waterMl: number;
  /** Smallest open vessel that keeps the foam in. */
  readonly vesselL: number;
  readonly steps: readonly RecipeStep[];
}
