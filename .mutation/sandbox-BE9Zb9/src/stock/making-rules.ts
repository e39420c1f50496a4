/** `making.yaml` as it is written, and what the making plan takes from it. */
// @ts-nocheck

import { addDays, type Day } from "../dates.js";
import type { Acid, KeptIn, StockSettings } from "../garden/index.js";
import type { Chemistry } from "./chemistry/index.js";

/** The data files of stock, read. */
export interface StockTables {
  readonly chemistry: Chemistry;
  readonly making: MakingRules;
}

type Sourced<Unit extends string> = Readonly<
  Record<Unit, number> & Record<"about" | "source", string>
>;

/**
 * The file, as `schemas/making.schema.json` has it. Its keys are named one by one, so that an acid
 * without a row is found.
 */
export interface MakingRules {
  readonly shelf_life: { readonly shelf: Sourced<"days">; readonly fridge: Sourced<"days"> };
  readonly dry_shells: Sourced<"days">;
  readonly reaction: Readonly<Record<Acid, Sourced<"days">>>;
  readonly longest_stand: Sourced<"days">;
  readonly ready_before: Sourced<"days">;
  readonly work: Readonly<Record<"dry_shells" | "add_acid" | "strain", Sourced<"minutes">>>;
  readonly smallest_batch: Sourced<"ml">;
  readonly batch_step: Sourced<"ml">;
  readonly batch_step_share: Sourced<"percent">;
}

/** How the grower makes stock: times in days, amounts in whole mL. */
export interface WayOfMaking {
  /** From setting shells out to dry to adding the acid, at the least. */
  readonly dryDays: number;
  /** From adding the acid to straining, at the least. */
  readonly reactionDays: number;
  /** From adding the acid to straining, at the most. */
  readonly longestStandDays: number;
  /** Use-by is this long after straining, and still a good day. */
  readonly shelfLifeDays: number;
  /** A batch is wished to be bottled this long before it is first poured. */
  readonly readyBeforeDays: number;
  readonly largestMl: number;
  readonly smallestMl: number;
  /** Batches are rounded up to a multiple of this, or of more of it: see {@link batchStepMl}. */
  readonly stepMl: number;
  readonly stepShare: number;
  readonly bottleMl: number;
  /** Calcium in a new batch as it is poured, g/L. */
  readonly strengthGPerL: number;
}

/**
 * @param strengthGPerL calcium in a new batch as poured (shaken or clear), g/L
 */
export function wayOfMaking(
  settings: Pick<
    StockSettings,
    "acid" | "keep" | "bottleMl" | "largestBatchMl" | "readyBeforeDays"
  >,
  rules: MakingRules,
  strengthGPerL: number,
): WayOfMaking {
  const largestMl = Math.floor(settings.largestBatchMl);
  const { dryDays, reactionDays } = timesOfMaking(settings, rules);
  return {
    dryDays,
    reactionDays,
    longestStandDays: Math.max(reactionDays, rules.longest_stand.days),
    shelfLifeDays: rules.shelf_life[settings.keep].days,
    readyBeforeDays: settings.readyBeforeDays ?? rules.ready_before.days,
    largestMl,
    smallestMl: Math.min(rules.smallest_batch.ml, largestMl),
    stepMl: rules.batch_step.ml,
    stepShare: rules.batch_step_share.percent / 100,
    bottleMl: settings.bottleMl,
    strengthGPerL,
  };
}

/** How long shells dry and acid works, at the least. */
export function timesOfMaking(
  { acid }: Pick<StockSettings, "acid">,
  rules: MakingRules,
): Pick<WayOfMaking, "dryDays" | "reactionDays"> {
  return { dryDays: rules.dry_shells.days, reactionDays: rules.reaction[acid].days };
}

/**
 * What batches are rounded up to: a multiple of `stepMl`, near `stepShare` of the largest batch. It
 * turns on the way of making alone: were it to turn on what the season still needs, a batch would
 * change its volume from day to day.
 */
export function batchStepMl({ largestMl, stepMl, stepShare }: WayOfMaking): number {
  return stepMl * Math.max(1, Math.round((largestMl * stepShare) / stepMl));
}

/** The last day on which a batch may be used: the grower's own, or the usual keeping time. */
export function useByOf(
  batch: { readonly made: Day; readonly keep: KeptIn; readonly useBy?: Day },
  rules: MakingRules,
): Day {
  return batch.useBy ?? addDays(batch.made, rules.shelf_life[batch.keep].days);
}
