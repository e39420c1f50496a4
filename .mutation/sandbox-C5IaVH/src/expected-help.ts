/** What can be expected of the feed: judged before any day is chosen, and summed up after the rounds. */
// @ts-nocheck

import {
  calciumSums,
  type CalciumTables,
  feedWhen,
  type PlantingCalcium,
  type SeasonWaterL,
  type Verdicts,
} from "./calcium/index.js";
import type { Garden } from "./garden/index.js";
import type { NeedTables, PlantingNeed } from "./planting-needs.js";
import { mixesOf, type Round } from "./season/index.js";
import { verdictWords } from "./words/index.js";

export interface HelpTables extends NeedTables {
  readonly calcium: CalciumTables;
}

/** The verdict takes feedings away where the garden wishes so. */
export function wantedOf(
  garden: Garden,
  needs: readonly PlantingNeed[],
  verdicts: Verdicts,
): PlantingNeed[] {
  return needs.map((need) => {
    const match = feedWhen(garden, need, verdicts, (verdict) =>
      verdictWords(verdict, garden.amounts),
    );
    return { ...need, match, rules: [...new Set(match.spans.map(({ rule }) => rule))] };
  });
}

export function plannedCalcium(
  garden: Garden,
  needs: readonly PlantingNeed[],
  verdicts: Verdicts,
  pouredL: SeasonWaterL,
  rounds: readonly Round[],
  tables: HelpTables,
): PlantingCalcium[] {
  return calciumSums(garden, needs, verdicts, pouredL, feedG(rounds), tables);
}

/** Calcium of the feed on each planting, g. */
function feedG(rounds: readonly Round[]): ReadonlyMap<string, number> {
  const grams = new Map<string, number>();
  for (const { calciumMgPerL, feedings } of mixesOf(rounds))
    for (const { planting, waterL } of feedings)
      grams.set(planting, (grams.get(planting) ?? 0) + (calciumMgPerL * waterL) / 1000);
  return grams;
}
