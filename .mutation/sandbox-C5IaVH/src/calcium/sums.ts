/** Where the calcium of each planting comes from in a season, beside what it takes up. */
// @ts-nocheck

import type { Garden } from "../garden/index.js";
import { given } from "../values.js";
import { type AmendedCalcium, amendedCalcium } from "./amended.js";
import { type CalciumAmount, type Extent, extentOf, spread, togetherG } from "./extent.js";
import { type PublishedNeed, publishedNeed } from "./need.js";
import { exactly, percentOf, type Range } from "./range.js";
import { type SoilCalcium, soilCalcium } from "./soil.js";
import type {
  FedPlanting,
  FeedingVerdict,
  SeasonWaterL,
  Verdicts,
  VerdictTables,
} from "./verdicts.js";
import { type WaterCalcium, waterCalcium } from "./water.js";

/** Each part absent where it is not known. */
export interface PlantingCalcium extends Extent {
  readonly planting: string;
  readonly name: string;
  readonly bed: string;
  readonly bedName: string;
  readonly crop: string;
  readonly cropName: string;
  /** Absent where no figure of the crop, or of a near kin, was found. */
  readonly need?: PublishedNeed;
  /** What is there already, of which the crop takes up a small part; counted in no sum. */
  readonly soil?: SoilCalcium;
  readonly water?: WaterCalcium;
  readonly amendments: readonly AmendedCalcium[];
  readonly feed: CalciumAmount;
  /** Water, amendments and feed of this season together; absent where one of them is not known. */
  readonly brought?: CalciumAmount;
  /** The feed's share of the need, in per cent; no condition of any verdict. */
  readonly sharePercent?: Range;
  readonly verdicts: readonly FeedingVerdict[];
}

/**
 * @param needs as they are fed in the end, be it by verdict
 * @param seasonWaterL poured in this season, as far as weather and plan know
 * @param feedG calcium of the plan's cans, by planting id; nothing where absent
 */
export function calciumSums(
  garden: Pick<Garden, "season" | "sourceWater">,
  needs: readonly FedPlanting[],
  verdicts: Verdicts,
  seasonWaterL: SeasonWaterL,
  feedG: ReadonlyMap<string, number>,
  { calcium, catalogue }: Omit<VerdictTables, "rules">,
): PlantingCalcium[] {
  return needs.flatMap((need): PlantingCalcium[] => {
    const { bed, planting, crop, life } = need;
    if (crop === undefined) return [];
    const { id } = planting;
    const { season, sourceWater } = garden;
    const extent = extentOf(planting, need.ground);
    const published = publishedNeed(crop, extent, calcium, catalogue);
    const feed = spread(exactly(feedG.get(id) ?? 0), extent);
    const water = waterCalcium(seasonWaterL.get(id), sourceWater, extent, calcium.limits);
    const amendments = amendedCalcium(bed, extent, season, life, calcium);
    const brought = togetherG([water, feed, ...amendments.map(({ thisSeason }) => thisSeason)]);
    return [
      {
        planting: id,
        name: planting.name,
        bed: bed.id,
        bedName: bed.name,
        crop: crop.key,
        cropName: crop.name,
        ...extent,
        ...given({
          need: published,
          soil: soilCalcium(bed.soil, extent, published, season.from, calcium),
          water,
          brought: brought && spread(brought, extent),
          sharePercent:
            feed.wholeG && published?.wholeG && percentOf(feed.wholeG, published.wholeG),
        }),
        amendments,
        feed,
        verdicts: (verdicts.get(id) ?? []).map((verdict) => ({
          ...verdict,
          feeds: need.match.spans.some(({ rule }) => rule.id === verdict.rule),
        })),
      },
    ];
  });
}
