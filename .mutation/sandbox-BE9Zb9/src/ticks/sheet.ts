/** What of a garden can be ticked, as the page shows it: made of its file and its plan, plain data. */
// @ts-nocheck

import type { StageName } from "../crops/index.js";
import type { Day } from "../dates.js";
import type { Amounts, BatchStepKey } from "../garden/index.js";
import type { Standing, TickedEntry } from "./tick.js";

export interface TickSheet {
  /** Measures of the garden: bare amounts that are typed are mL, in a US garden teaspoons. */
  readonly amounts: Amounts;
  /** By day: what is past and not written down, and what comes; and what was written down lately. */
  readonly rounds: readonly RoundToTick[];
  /** By day; those with `told` are written down. */
  readonly steps: readonly StepToTick[];
  /** Bottles that a round may have been poured from, by id. */
  readonly bottles: readonly { readonly id: string; readonly name: string }[];
  readonly plantings: readonly PlantingToTick[];
  readonly signs: readonly { readonly sign: string; readonly name: string }[];
}

export interface RoundToTick extends Standing {
  /** The day it was told for; given on another, `told` says so. */
  readonly day: Day;
  readonly state: "open" | "given" | "missed" | "in part";
  readonly beds: readonly BedToTick[];
}

export interface BedToTick {
  /** Its id, or `feed:` and the name of another feed, which all its beds are given at once. */
  readonly bed: string;
  readonly name: string;
  /** Written down already: not to be ticked again. */
  readonly isDone: boolean;
  /** What the plan asks for there, a line each: `2 cans of 9 L: 30 mL each, for toms`. */
  readonly lines: readonly string[];
  /** As planned, one for each planting and bottle. */
  readonly entries: readonly TickedEntry[];
}

export interface StepToTick extends Standing {
  readonly batch: string;
  /** Within a sentence: `batch 2`. */
  readonly batchName: string;
  readonly step: BatchStepKey;
  /** The day planned for it, or on which it was done. */
  readonly day: Day;
  /** What there is to do, or was done, in a line. */
  readonly line: string;
  /** Of bottling: what the plan expects, with its unit. */
  readonly volume?: string;
  /** Nothing asks for it on that day: it may be done on any. */
  readonly isAnyDay?: true;
}

export interface PlantingToTick {
  readonly id: string;
  readonly name: string;
  readonly bedName: string;
  /** Stages that it may be seen to enter, in their order, with its {@link Standing} for each. */
  readonly stages: readonly (Standing & { readonly stage: StageName; readonly name: string })[];
  /** Signs that its crop may show. */
  readonly signs: readonly (Standing & { readonly sign: string })[];
}
