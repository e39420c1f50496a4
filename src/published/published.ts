/**
 * What a garden's calendar has told its readers: where the next plan goes on from. A round or a step
 * of making whose day is past happened as it stands here, until the garden file says otherwise.
 */
import type { Day } from "../dates.js";
import type { Route } from "../garden/index.js";

/** What a calendar has told: give a plan its `published` when you plan anew, so that its past stays. */
export interface Published {
  /** By day. */
  readonly rounds: readonly PublishedRound[];
  /** Days of other feeds. */
  readonly feeds: readonly PublishedFeed[];
  /** All there ever were: their numbers are not used again. */
  readonly batches: readonly PublishedBatch[];
  /** Shells are kept from that day on. */
  readonly shells?: FirstTold;
}

export const nothingPublished: Published = { rounds: [], feeds: [], batches: [] };

interface FirstTold {
  readonly day: Day;
  /** The day on which it was first published: what was published after its day did not happen by it. */
  readonly first: Day;
}

export interface PublishedRound extends FirstTold {
  /** Empty where only the day is known, from a calendar without a record. */
  readonly mixes: readonly PublishedMix[];
  /** Where a forecast moved it: no forecast moves it again. */
  readonly moved?: Moved;
}

/** How a round came to a day that it was moved to. */
export interface Moved {
  readonly from: Day;
  readonly harm: ForecastHarm;
  /** Only some of its feedings came from there. */
  readonly part?: true;
}

/** What a forecast has against feeding on a day. */
export type ForecastHarm =
  /** mm of that day or the day after, whichever has more. */
  | { readonly kind: "rain"; readonly on: Day; readonly mm: number }
  /** The day's highest temperature where the plants stand, and the highest at which they are sprayed. */
  | { readonly kind: "heat"; readonly on: Day; readonly maxC: number; readonly limitC: number };

/** Plantings of one bed that share cans. */
export interface PublishedMix {
  readonly bed: string;
  readonly route: Route;
  readonly fed: readonly PublishedFeeding[];
  readonly pours: readonly PublishedPour[];
}

export interface PublishedFeeding {
  readonly planting: string;
  readonly crop: string;
  readonly waterL: number;
}

/** Stock from one bottle; without its name where nobody knows which. */
export interface PublishedPour {
  readonly batch?: string;
  readonly ml: number;
  /** No bottle held it: there was none to pour. */
  readonly missing?: true;
}

export interface PublishedFeed extends FirstTold {
  readonly feed: string;
}

export interface PublishedBatch {
  readonly id: string;
  /** Drawn once: what people call it. */
  readonly number: number;
  readonly first: Day;
  readonly volumeMl: number;
  readonly shellsOut: Day;
  readonly acidIn: Day;
  readonly made: Day;
  /** No longer planned, never begun; its number and id are not drawn again. */
  readonly withdrawn?: true;
}
