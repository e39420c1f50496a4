/** A season's water beside a season's feed: what each brings of calcium. */
// @ts-nocheck

import { type PlantingCalcium, type Range, summed } from "../calcium/index.js";

/** Of the plantings that are fed. */
export interface SeasonWater {
  /** Ids of those of which it is known how much water they get, and what is in it. */
  readonly known: readonly string[];
  /** Of the others. */
  readonly unknown: readonly string[];
  /** Of those that are known, g. */
  readonly waterG: Range;
  readonly feedG: number;
}

export function seasonWater(calcium: readonly PlantingCalcium[]): SeasonWater {
  const fed = calcium.filter(({ feed }) => (feed.wholeG?.low ?? 0) > 0);
  const known = fed.filter(({ water }) => water?.wholeG !== undefined);
  const ids = (those: readonly PlantingCalcium[]): string[] => those.map((one) => one.planting);
  return {
    known: ids(known),
    unknown: ids(fed.filter((one) => !known.includes(one))),
    waterG: summed(known.flatMap(({ water }) => water?.wholeG ?? [])),
    feedG: summed(known.flatMap(({ feed }) => feed.wholeG ?? [])).low,
  };
}
