/** A tick: what a grower marks at the tap, with the state of the thing that the page showed. */
// @ts-nocheck

import type { StageName } from "../crops/index.js";
import type { Day } from "../dates.js";
import type { BatchStepKey, NewLogEntry } from "../garden/index.js";

/** A log entry whose days are those of the tick. */
export type TickedEntry = Omit<NewLogEntry, "on" | "round">;

export type Ticked =
  /** A round, or some of its beds; the entries are as the page showed them, none where it was missed. */
  | {
      readonly kind: "round";
      /** The day it was told for. */
      readonly day: Day;
      /** Ids of beds, or `feed:` and the name of another feed, which all its beds are given at once. */
      readonly beds: readonly string[];
      readonly missed?: true;
      /** Of other beds they are left out; `missed` those that were not given while others were. */
      readonly entries: readonly TickedEntry[];
    }
  | {
      readonly kind: "step";
      readonly batch: string;
      readonly step: BatchStepKey;
      /** With its unit. */
      readonly volume?: string;
    }
  | { readonly kind: "sign"; readonly planting: string; readonly sign: string }
  | { readonly kind: "stage"; readonly planting: string; readonly stage: StageName };

export interface Tick {
  /** Random, of its form: the same id is written once. */
  readonly id: string;
  /** The thing's {@link Standing} as the page showed it. */
  readonly seen: string;
  /** Ms since 1970 of the tap, where the form waited before it was sent. */
  readonly tappedMs?: number;
  /** The day that the grower named; else it is the garden's day at the tap. */
  readonly on?: Day;
  readonly what: Ticked;
}

/** What the garden file says of a thing now. */
export interface Standing {
  /** Short, the same for the same words in the file, and another where they changed; `-` for none. */
  readonly seen: string;
  /** For the grower: `given on Sat 12 Jun, 90 mL`; absent where the file says nothing of it. */
  readonly told?: string;
}

const feedMark = "feed:";

/** Another feed in the place of a bed: no id of a bed has a colon. */
export function feedAsBed(feed: string): string {
  return feedMark + feed;
}

/** The feed that stands in the place of a bed. */
export function feedOf(bed: string): string | undefined {
  return bed.startsWith(feedMark) ? bed.slice(feedMark.length) : undefined;
}
