/** Plantings of which the same is to be said: where their calcium comes from, and what a feed can do. */
// @ts-nocheck

import {
  type CalciumAmount,
  type FeedingVerdict,
  type PlantingCalcium,
  type Range,
  summed,
  widest,
} from "../calcium/index.js";
import { given, grouped } from "../values.js";

export interface CalciumGroup {
  readonly plantings: readonly [PlantingCalcium, ...PlantingCalcium[]];
  /** From the least to the most of them; absent where no figure of the crop was found. */
  readonly need?: CalciumAmount;
  /** Absent where it is not known. */
  readonly water?: CalciumAmount;
  readonly amendments: readonly CalciumAmount[];
  /** Absent where none is fed. */
  readonly feed?: CalciumAmount;
  /** The feed's share of what they take up, per cent. */
  readonly sharePercent?: Range;
  /** What feeds them, else what would. */
  readonly verdicts: readonly FeedingVerdict[];
  /** On which ground the parts can be compared; absent where they can't. */
  readonly basis?: Basis;
}

/** A scale of its own each. */
export const bases = ["perM2G", "perPlantG"] as const;
export type Basis = (typeof bases)[number];

/** In the order of the garden file; plantings of which there is nothing to say are in none. */
export function calciumGroups(sums: readonly PlantingCalcium[]): CalciumGroup[] {
  const told = sums.filter(({ need, verdicts }) => need !== undefined || verdicts.length > 0);
  return [...grouped(told, likeness).values()].map(groupOf);
}

/** Of two that are alike all parts are known in the same measures. */
function likeness(sum: PlantingCalcium): string {
  const { crop, need, soil, water, amendments, feed } = sum;
  const known = [need, water, feed, ...amendments.map(({ thisSeason }) => thisSeason)].map(
    (part) => part && bases.map((basis) => part[basis] !== undefined),
  );
  const materials = amendments.map(({ on, what }) => [on, what]);
  const judged = toldVerdicts(sum).map(({ route, judgement }) => [
    route,
    judgement.kind,
    "why" in judgement ? judgement.why : "",
    judgement.kind === "lime-first" ? judgement : "",
  ]);
  return JSON.stringify([crop, known, materials, judged, soil?.test, isFed(sum)]);
}

function groupOf(plantings: readonly [PlantingCalcium, ...PlantingCalcium[]]): CalciumGroup {
  const [first] = plantings;
  const over = (partOf: (sum: PlantingCalcium) => CalciumAmount | undefined) =>
    together(plantings.map(partOf));
  const [need, water] = [over((sum) => sum.need), over((sum) => sum.water)];
  const feed = isFed(first) ? over((sum) => sum.feed) : undefined;
  const amendments = first.amendments.flatMap(
    (_, i) => over((sum) => sum.amendments[i]?.thisSeason) ?? [],
  );
  const parts = [need, water, feed, ...amendments].flatMap((part) => part ?? []);
  const basis = bases.find((one) => parts.every((part) => part[one] !== undefined));
  const sharePercent = widest(plantings.flatMap((sum) => sum.sharePercent ?? []));
  return {
    plantings,
    amendments,
    verdicts: toldVerdicts(first),
    ...given({ need, water, feed, basis, sharePercent }),
  };
}

function isFed({ feed }: PlantingCalcium): boolean {
  return (feed.wholeG?.high ?? 0) > 0;
}

function toldVerdicts({ verdicts }: PlantingCalcium): readonly FeedingVerdict[] {
  const feeding = verdicts.filter(({ feeds }) => feeds);
  return feeding.length > 0 ? feeding : verdicts;
}

/** Undefined of none. */
function together(parts: readonly (CalciumAmount | undefined)[]): CalciumAmount | undefined {
  const known = parts.flatMap((part) => part ?? []);
  if (known.length === 0) return undefined;
  const wholes = known.flatMap(({ wholeG }) => wholeG ?? []);
  return given({
    wholeG: wholes.length === known.length ? summed(wholes) : undefined,
    perPlantG: widest(known.flatMap(({ perPlantG }) => perPlantG ?? [])),
    perM2G: widest(known.flatMap(({ perM2G }) => perM2G ?? [])),
  });
}
