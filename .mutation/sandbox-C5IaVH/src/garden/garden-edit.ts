/** What can be written into a garden file, and taken back. */
// @ts-nocheck

import type { StageName } from "../crops/index.js";
import type { Day } from "../dates.js";
import type { Route } from "./garden.js";

/** One entry of `log` as it is to stand in the file, keys in this order. */
export interface NewLogEntry {
  readonly on: Day;
  readonly round?: Day;
  readonly planting?: string;
  readonly bed?: string;
  readonly missed?: true;
  /** With its unit. */
  readonly stock?: string;
  readonly batch?: string;
  readonly route?: Route;
  readonly feed?: string;
}

/** One entry of `signs`, keys in this order. */
export interface NewSign {
  readonly on: Day;
  readonly planting: string;
  readonly sign: string;
}

/** One entry of a planting's `seen`, keys in this order. */
export interface NewStageSeen {
  readonly stage: StageName;
  readonly on: Day;
}

/** Keys of a listed batch that hold the day of a step, in the order of the work. */
export const batchStepKeys = ["shells_out", "acid_in", "made", "thrown_away", "missed"] as const;
export type BatchStepKey = (typeof batchStepKeys)[number];

/** A batch as it is to be listed, keys in this order. */
export interface NewBatch extends Partial<Record<BatchStepKey, Day>> {
  readonly id: string;
  readonly planned?: string;
  /** With its unit. */
  readonly volume: string;
}

/** Something new at the end of a list. */
export type Adding =
  | { readonly kind: "add-to-log"; readonly entries: readonly NewLogEntry[] }
  | { readonly kind: "add-to-signs"; readonly signs: readonly NewSign[] }
  | { readonly kind: "add-to-seen"; readonly planting: string; readonly seen: NewStageSeen }
  | { readonly kind: "list-batch"; readonly batch: NewBatch };

export type GardenEdit =
  | Adding
  /** So many from the end. */
  | { readonly kind: "take-from-log"; readonly count: number }
  | { readonly kind: "unlist-batch"; readonly id: string }
  /** Exactly what was added, wherever it stands by then; refused where it stands there no more. */
  | { readonly kind: "take-out"; readonly added: Adding; readonly back?: PutBack }
  | SetInBatch;

/** Without a value the key is taken out. */
export interface SetInBatch {
  readonly kind: "set-in-batch";
  readonly id: string;
  readonly key: BatchStepKey | "volume";
  readonly value?: string;
  /** Refused where the key has another value by then; `null` for none. */
  readonly was?: string | null;
  readonly back?: PutBack;
}

/** How the text was before an edit: used where that leads to what the file is to say. */
export interface PutBack {
  /** Offset into the text. */
  readonly at: number;
  /** What stands there now. */
  readonly cut: string;
  /** What stood there. */
  readonly text: string;
}
