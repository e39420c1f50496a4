// @ts-nocheck
import type { Amounts, PourStyle } from "../garden/index.js";
import type { BedRound, CanMix, OtherFeedMix } from "../season/index.js";
import {
  bedInOneLine,
  calciumInLitre,
  cautionsInOneLine,
  doubtLines,
  feedingBehind,
  mixTitle,
  type NewBottle,
  newBottleInFull,
  otherFeedInOneLine,
  tripToFetch,
} from "../words/index.js";

/** What is done on one trip, or in one bed of it. */
export interface TripFacts {
  readonly beds: readonly BedRound[];
  readonly feeds: readonly OtherFeedMix[];
  /** Bottles poured from for the first time, another having been in use before. */
  readonly newBottles: readonly NewBottle[];
  /** What the cans are of the week's water, by bed; of beds whose watering is told. */
  readonly water?: ReadonlyMap<string, string>;
  /** Lines of warnings and notes. */
  readonly told: readonly string[];
  /** It has been done: the log holds it. */
  readonly given: boolean;
}

export interface TripWords {
  readonly amounts: Amounts;
  readonly nameOf: (planting: string) => string;
  /** How the garden pours its stock. */
  readonly pour?: PourStyle;
}

/** Plain text lines, what is needed first before the rest: what to fetch, each bed, cautions, why. */
export function descriptionOf(facts: TripFacts, words: TripWords): string[] {
  const { beds, feeds, newBottles, told, given } = facts;
  const { amounts, nameOf, pour } = words;
  const mixes = beds.flatMap((bed) => bed.mixes);
  const newBatches = new Set(newBottles.map(({ batch }) => batch));
  const batches = new Set(mixes.flatMap(({ pours = [] }) => pours.map(({ batch }) => batch)));
  const behind = behindIt(facts, words);
  return [
    tripToFetch({ mixes, feeds, newBatches, given }, amounts),
    ...beds.map((bed) => bedInOneLine(bed, amounts, batches.size > 1)),
    ...feeds.map((feed) => otherFeedInOneLine(feed, nameOf, amounts)),
    ...(given ? [] : [cautionsInOneLine(mixes, feeds.length > 0, pour)]),
    ...told,
    ...(behind.length > 0 ? ["", ...behind] : []),
  ];
}

/** Stages, and what a can carries; the same for several beds once. */
function behindIt(
  { beds, newBottles, water, given }: TripFacts,
  { amounts, pour }: TripWords,
): string[] {
  const mixes = beds.flatMap((bed) => bed.mixes);
  const feedings = mixes.flatMap((mix) => mix.feedings);
  const inCans = (mix: CanMix): string =>
    `${mixTitle(mix.route, mix.rateMlPerL, amounts)}; ${calciumInLitre(mix, pour, amounts)}`;
  return [
    ...feedings.map((feeding) => feedingBehind(feeding, given, amounts)),
    ...doubtLines(feedings),
    ...newBottles.map((bottle) => newBottleInFull(bottle, amounts)),
    ...new Set(mixes.map(inCans)),
    ...beds.flatMap(({ bed, bedName }) => {
      const told = water?.get(bed);
      return told === undefined ? [] : [`${bedName}, ${told}`];
    }),
  ];
}
