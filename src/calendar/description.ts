import { type Amounts, type PourStyle, vesselOf } from "../garden/index.js";
import type { BedRound, CanMix, OtherFeedMix } from "../season/index.js";
import {
  calciumInLitre,
  cautionsFor,
  doubtLines,
  feedingInFull,
  fillInFull,
  fromBottles,
  missingStock,
  mixTitle,
  type NewBottle,
  newBottleInFull,
  openedOn,
  otherFeedCaution,
  otherFeedTitle,
  tripTotal,
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

/** The whole truth of a trip: plain text lines. */
export function descriptionOf(facts: TripFacts, words: TripWords): string[] {
  const { beds, feeds, newBottles, water, told, given } = facts;
  const mixes = beds.flatMap((bed) => bed.mixes);
  return [
    ...(given ? ["Given: the log holds it.", ""] : []),
    ...(newBottles.length > 0
      ? [...newBottles.map((bottle) => newBottleInFull(bottle, words.amounts)), ""]
      : []),
    ...beds.flatMap((bed) => [
      `${bed.bedName}:`,
      ...bed.mixes.flatMap((mix) => mixLines(mix, given, words)),
      ...waterLines(water?.get(bed.bed)),
      "",
    ]),
    ...(beds.length > 0 ? [tripTotal(mixes, words.amounts)] : []),
    ...(beds.length > 0 && feeds.length > 0 ? ["Other feeds, each in cans of its own:"] : []),
    ...feeds.flatMap((feed) => feedLines(feed, words)),
    ...told,
    ...(given ? [] : cautionsFor(mixes, words.pour)),
    ...(feeds.length > 0 ? [otherFeedCaution] : []),
  ];
}

function mixLines(mix: CanMix, given: boolean, { amounts, pour }: TripWords): string[] {
  const { pours = [], fills } = mix;
  // A single can poured from several bottles has told how much is from which.
  const isTold = fills.length === 1 && fills[0]?.count === 1 && fills[0].pours !== undefined;
  return [
    mixTitle(mix.route, mix.rateMlPerL, amounts),
    ...[
      ...fills.map((fill) => fillInFull(fill, vesselOf(mix.route))),
      ...(pours.length === 0 || isTold ? [] : [fromBottles(pours, amounts)]),
      ...(mix.shortMl === undefined ? [] : [missingStock(mix.shortMl, amounts)]),
      calciumInLitre(mix, pour, amounts),
      ...mix.feedings.map((feeding) => feedingInFull(feeding, given, amounts)),
      ...doubtLines(mix.feedings),
    ].map((line) => `- ${line}`),
  ];
}

function waterLines(water: string | undefined): string[] {
  return water === undefined ? [] : [`- ${water}`];
}

function feedLines(mix: OtherFeedMix, { nameOf, amounts }: TripWords): string[] {
  return [
    otherFeedTitle(mix, amounts),
    ...[
      ...mix.fills.map((fill) => fillInFull(fill, "can", mix.feed)),
      `for ${mix.plantings.map(nameOf).join(", ")}`,
      ...(mix.openedSince === undefined ? [] : [openedOn(mix.openedSince, amounts)]),
    ].map((line) => `- ${line}`),
  ];
}
