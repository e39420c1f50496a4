/** Verdicts of all plantings, before anything is fed. */
// @ts-nocheck

import type { Crop, CropCatalogue } from "../crops/index.js";
import type { Bed, Garden, Planting, Route } from "../garden/index.js";
import { type FeedRule, matchRules, type LifeToFeed, type RuleMatch } from "../rules/index.js";
import { given } from "../values.js";
import type { Ground } from "../watering/index.js";
import { judgement } from "./deciding-fact.js";
import { amendedCalcium, limedSince } from "./amended.js";
import { extentOf, togetherG } from "./extent.js";
import type { CalciumFacts, Judgement } from "./judgement.js";
import { publishedNeed } from "./need.js";
import type { CalciumTables } from "./tables.js";

type VerdictGarden = Pick<Garden, "season" | "sourceWater">;

/** A planting with what feeds it when. */
export interface FedPlanting {
  readonly bed: Bed;
  readonly planting: Planting;
  /** Absent where it is only listed; then nothing is known of it. */
  readonly crop: Crop | undefined;
  readonly life: LifeToFeed;
  readonly match: RuleMatch;
  /** Absent where it is not known. */
  readonly ground?: Ground;
}

/** What can be expected of a rule for a planting. */
export interface FeedingVerdict {
  readonly rule: string;
  readonly route: Route;
  readonly disorder: string;
  /** It feeds the planting; others would, were they asked for. */
  readonly feeds: boolean;
  readonly judgement: Judgement;
}

/** Of planting ids. */
export type Verdicts = ReadonlyMap<string, readonly FeedingVerdict[]>;

/** Litres poured on a planting in its season, by its id; without those that nobody knows. */
export type SeasonWaterL = ReadonlyMap<string, number>;

export interface VerdictTables {
  readonly calcium: CalciumTables;
  readonly catalogue: CropCatalogue;
  readonly rules: readonly FeedRule[];
}

/**
 * For each planting the rules that feed it, then those that would.
 *
 * @param usualWaterL of a usual year, so that no verdict flips with the weather
 */
export function feedingVerdicts(
  garden: VerdictGarden,
  needs: readonly FedPlanting[],
  usualWaterL: SeasonWaterL,
  tables: VerdictTables,
): Verdicts {
  return new Map(
    needs.map((need) => {
      const { planting, crop } = need;
      if (crop === undefined) return [planting.id, []];
      const facts = factsOf(garden, need, crop, usualWaterL.get(planting.id), tables);
      const feeding = new Set(need.match.spans.map(({ rule }) => rule));
      return [
        planting.id,
        [...new Set([...feeding, ...wouldFeed(need, crop, tables.rules)])].map((rule) => ({
          rule: rule.id,
          route: rule.route,
          disorder: rule.disorder,
          feeds: feeding.has(rule),
          judgement: judgement(rule, facts, tables.calcium),
        })),
      ];
    }),
  );
}

/** Were it asked for by both routes. */
function wouldFeed(
  { planting, life }: FedPlanting,
  crop: Crop,
  rules: readonly FeedRule[],
): FeedRule[] {
  const asked = matchRules({ ...planting, feed: "both" }, crop, life, rules);
  return asked.spans.map(({ rule }) => rule);
}

function factsOf(
  { sourceWater, season }: VerdictGarden,
  { bed, planting, life, ground }: FedPlanting,
  crop: Crop,
  usualWaterL: number | undefined,
  { calcium, catalogue }: VerdictTables,
): CalciumFacts {
  const extent = extentOf(planting, ground);
  const dugIn = amendedCalcium(bed, extent, season, life, calcium);
  const sour = bed.plantings
    .flatMap((one) => catalogue.crops.find(({ key }) => key === one.crop) ?? [])
    .filter(({ acidSoil }) => acidSoil === true)
    .map(({ name }) => name);
  return {
    acidSoil: crop.acidSoil === true,
    soil: bed.soil ?? {},
    water: sourceWater ?? {},
    ...given({
      areaM2: extent.areaM2,
      usualWaterL,
      needG: publishedNeed(crop, extent, calcium, catalogue)?.wholeG,
      dugInG: togetherG(dugIn.map(({ thisSeason }) => thisSeason)),
      limedOn: limedSince(bed, calcium.amendments),
      besideSour: sour.length > 0 ? [...new Set(sour)] : undefined,
    }),
  };
}
