/**
 * The problem of never running out and never going stale, stated once, free of crops and chemistry.
 *
 * Given: the calcium each feeding needs and when, the bottles in hand, the days on which the grower
 * is there, how stock is made and how long it keeps, and the shells the household saves.
 *
 * Wanted: a ledger and batches to make, so that
 * - bottles in hand are used before new batches, each kind earliest use-by first, ties by id; none
 *   before it is ready, none after its use-by day, none below zero; a feeding may be poured from
 *   two bottles;
 * - of the feedings that bottles in hand leave open, all that can be covered are covered;
 * and, in this order,
 * 1. batches are fewest;
 * 2. stock made but never given is least (mL, counted in whole hundredths);
 * 3. days of missing slack are fewest: each batch is wished to be bottled `readyBeforeDays` before the
 *    first feeding poured from it, and each day less counts one;
 * 4. start days are latest: the first batch's, then the second's, and so on;
 * 5. ready days are latest, likewise;
 * 6. feedings poured from one new batch and then another are fewest.
 * Where all six are equal, earlier batches are the larger ones, so that the answer is unique.
 *
 * A batch takes three visits: shells set out to dry, acid added, strained and bottled. Each is on a
 * day the grower is there; drying and reacting go on between. It may be used from the day it is
 * strained. Its volume is rounded up to a full step (`batchStepMl`), is at least `smallestMl`, and never
 * more than `largestMl`; several may be made at a time.
 *
 * A batch under way is given: it keeps its days and volume, and serves like a bottle that is not ready
 * yet. Published batches that are not begun are kept where they cover as much as new ones would, are
 * as few, and hold little more.
 *
 * When shells are too few, feedings are covered in date order as far as the shells go, and what is
 * lost is named; the aims then hold for each stretch between losses.
 */
// @ts-nocheck

import type { Day, DaySpan } from "../dates.js";
import type { Amounts } from "../garden/index.js";
import type { PublishedBatch } from "../published/index.js";
import type { WayOfMaking } from "./making-rules.js";

export interface MakingProblem {
  readonly today: Day;
  readonly season: DaySpan;
  /** Measures in which amounts and days are told; metric when not given. */
  readonly amounts?: Amounts;
  readonly away: readonly DaySpan[];
  /** None before `today`. Any order. */
  readonly needs: readonly StockNeed[];
  /** As they stand today. Any order; ids unique. */
  readonly bottles: readonly StockBottle[];
  /** Begun already: they keep their days and volumes. */
  readonly underWay?: readonly UnderWay[];
  /** Published batches that are not begun: kept where they are as good, else their names are. */
  readonly toBegin?: readonly PublishedBatch[];
  /** All that ever were published: their numbers and ids are not drawn again. */
  readonly told?: readonly PublishedBatch[];
  /** The bottle poured from last, before today. */
  readonly lastPoured?: Pick<StockBottle, "id" | "strengthGPerL">;
  readonly making: WayOfMaking;
  readonly shells: ShellSupply;
  /** mL of a stock of that strength that a need takes; {@link doseMl} when not given. */
  readonly mlFor?: DoseRule;
}

/** A batch that has its days. */
export interface UnderWay {
  readonly id: string;
  /** Drawn once: what people call it. */
  readonly number: number;
  readonly startOn: Day;
  readonly acidOn: Day;
  readonly readyOn: Day;
  readonly volumeMl: number;
}

/** One feeding's stock. */
export interface StockNeed {
  /** Unique. */
  readonly id: string;
  readonly day: Day;
  readonly calciumMg: number;
  /** The rule's highest rate times the water: never more than this, however weak the bottle. */
  readonly mostMl: number;
}

/**
 * mL, in whole hundredths, that a need still takes from a bottle of that strength, after what other
 * bottles have given it; none when that is all it wants.
 */
export type DoseRule = (need: StockNeed, strengthGPerL: number, before: readonly Dose[]) => number;

export interface Dose {
  readonly ml: number;
  readonly strengthGPerL: number;
}

export interface StockBottle {
  readonly id: string;
  /** The first day it may be used. */
  readonly readyOn: Day;
  /** The last day it may be used. */
  readonly useBy: Day;
  readonly leftMl: number;
  /** Calcium as poured, g/L (the same as mg/mL). */
  readonly strengthGPerL: number;
}

export interface ShellSupply {
  /** Eggs' shells kept in a week; absent when shells are not counted. */
  readonly perWeek?: number;
  /** Shells already kept when the count begins. */
  readonly inHand: number;
  /** Every shell is kept from that day on; today unless given. */
  readonly keptFrom?: Day;
  readonly gPerShell: number;
  /** Dry shell that a litre of stock takes. */
  readonly gPerL: number;
}

export interface StockPlan {
  /** By day, then need, then the order of pouring. */
  readonly draws: readonly Draw[];
  /** By ready day. */
  readonly batches: readonly PlannedBatch[];
  readonly shortages: readonly Shortage[];
  /** Where a feeding is poured from another bottle than the one before it. */
  readonly changes: readonly BottleChange[];
  /** What is left at its use-by day, within the season. */
  readonly discards: readonly Discard[];
  /** One for each bottle and batch: opening + made = given + thrown away + closing. */
  readonly account: readonly AccountLine[];
  readonly shells: ShellPlan;
}

/** Stock poured from one bottle for one feeding, in whole hundredths of a mL. */
export interface Draw {
  readonly need: string;
  readonly day: Day;
  readonly batch: string;
  readonly ml: number;
  readonly strengthGPerL: number;
  readonly calciumMg: number;
}

/** Visits to a batch, in their order. */
export const makingSteps = ["dry-shells", "add-acid", "strain"] as const;
export type MakingStep = (typeof makingSteps)[number];

export interface PlannedBatch {
  /** `batch-2`, drawn with its number; the grower's own where a listed one stands for it. */
  readonly id: string;
  /** Drawn once: what people call it. */
  readonly number: number;
  /** Shells are out already, or the day for it is today. */
  readonly underWay?: true;
  /** Shells are set out to dry. */
  readonly startOn: Day;
  /** Strained and bottled; it may be used from this day on. */
  readonly readyOn: Day;
  readonly useBy: Day;
  readonly steps: readonly { readonly step: MakingStep; readonly day: Day }[];
  readonly volumeMl: number;
  readonly bottles: number;
  readonly eggs: number;
  readonly shellG: number;
  readonly strengthGPerL: number;
  readonly serves: readonly { readonly need: string; readonly day: Day; readonly ml: number }[];
}

export type ShortageReason = "too-soon" | "away" | "shells";

/** A feeding, or part of one, for which there will be no stock. */
export interface Shortage {
  readonly need: string;
  readonly day: Day;
  /** Of a new batch. */
  readonly ml: number;
  /** The same for all feedings of a day. */
  readonly reason: ShortageReason;
  /** The reason in words, and what helps. */
  readonly why: string;
  readonly mend: string;
}

export interface BottleChange {
  readonly day: Day;
  readonly need: string;
  /** Absent for the first bottle of the season. */
  readonly from?: string;
  readonly to: string;
  /** Of the bottle changed to. */
  readonly strengthGPerL: number;
  /** Of the bottle before. */
  readonly wasGPerL?: number;
}

export interface Discard {
  readonly batch: string;
  /** The last day on which what is left may be used up; before today for a bottle already past it. */
  readonly useUpBy: Day;
  /** The first day from then on that the grower is there. */
  readonly doOn: Day;
  readonly ml: number;
}

export interface AccountLine {
  readonly batch: string;
  readonly planned: boolean;
  readonly openingMl: number;
  readonly madeMl: number;
  readonly givenMl: number;
  readonly thrownAwayMl: number;
  /** In the bottle at the end of the season. */
  readonly closingMl: number;
}

export interface ShellPlan {
  /** For all batches to make. */
  readonly eggs: number;
  readonly shellG: number;
  /** Keeping every shell from this day on is early enough for every batch; absent when shells in hand are enough or shells are not counted. */
  readonly saveFrom?: Day;
  readonly shortage?: ShellShortage;
}

export interface ShellShortage {
  /** When saving had to begin for every feeding to be covered. Absent when no shells are kept. */
  readonly neededFrom?: Day;
  /** Shells missing for every feeding to be covered, if they came by the day they are missed. */
  readonly missingShells: number;
  readonly lostMl: number;
  /** Needs that lose all or part of their stock; empty when other batches cover them all. */
  readonly needs: readonly string[];
  readonly message: string;
  readonly mend: string;
}
