/** What of a garden can be ticked, as the page shows it: made of its file and its plan, plain data. */
import type { StageName } from "../crops/index.js";
import type { Day } from "../dates.js";
import type { BatchStepKey, NewLogEntry } from "../garden/index.js";
import type { Standing } from "./tick.js";

export interface TickSheet {
  /** By day: what is past and not written down, and what comes; and what was written down lately. */
  readonly rounds: readonly RoundToTick[];
  readonly steps: readonly StepToTick[];
  /** Bottles that a round may have been poured from, by id. */
  readonly bottles: readonly { readonly id: string; readonly name: string }[];
  readonly plantings: readonly PlantingToTick[];
  readonly signs: readonly { readonly sign: string; readonly name: string }[];
}

export interface RoundToTick extends Standing {
  readonly day: Day;
  readonly state: "open" | "given" | "missed" | "in part";
  readonly beds: readonly BedToTick[];
}

export interface BedToTick {
  readonly bed: string;
  readonly name: string;
  /** Written down already: not to be ticked again. */
  readonly isDone: boolean;
  /** What the plan asks for there, a line each: `2 cans of 9 L: 30 mL in each`. */
  readonly lines: readonly string[];
  /** As planned, one for each planting and bottle. */
  readonly entries: readonly Omit<NewLogEntry, "on" | "round">[];
}

export interface StepToTick extends Standing {
  readonly batch: string;
  readonly batchName: string;
  readonly step: BatchStepKey;
  /** The day planned for it. */
  readonly day: Day;
  /** What there is to do, in a line. */
  readonly line: string;
  /** Of bottling: what the plan expects, with its unit. */
  readonly volume?: string;
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
