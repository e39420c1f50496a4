/** The first step of a plan: what each planting needs when. */
import type { Crop, CropCatalogue } from "./crops/index.js";
import type { Bed, Garden, Planting } from "./garden/index.js";
import {
  type FeedRule,
  matchRules,
  type RuleMatch,
  type Sighting,
  sightingsOn,
  type Sign,
} from "./rules/index.js";
import type { FeedingSpan, PlannedPlanting } from "./season/index.js";
import { ofThisYear, plantingLife, type PlantingLife } from "./stages/index.js";
import { given } from "./values.js";

export interface NeedTables {
  readonly catalogue: CropCatalogue;
  /** The grower's own rules before the built-in ones; see `mergeRules`. */
  readonly rules: readonly FeedRule[];
  readonly signs: readonly Sign[];
}

/** A planting, its life, what feeds it when, and what was seen on it. */
export interface PlantingNeed {
  readonly bed: Bed;
  readonly planting: Planting;
  /** Absent where the planting is only listed; then it has no stages and no rules. */
  readonly crop: Crop | undefined;
  readonly life: PlantingLife;
  readonly match: RuleMatch;
  readonly rules: readonly FeedRule[];
  readonly sightings: readonly Sighting[];
}

/** Stages, and the rules that feed in them. */
export function plantingNeeds(garden: Garden, tables: NeedTables): PlantingNeed[] {
  return garden.beds.flatMap((bed) =>
    bed.plantings.map((planting) => {
      const crop = tables.catalogue.crops.find(({ key }) => key === planting.crop);
      const { life, match } = crop
        ? stagesAndRules(planting, crop, garden, tables.rules)
        : onlyListed(planting, garden);
      const rules = [...new Set(match.spans.map((span) => span.rule))];
      const sightings = sightingsOn(planting, crop, garden.signs, tables.signs);
      return { bed, planting, crop, life, match, rules, sightings };
    }),
  );
}

type StagesAndRules = Pick<PlantingNeed, "life" | "match">;

function stagesAndRules(
  planting: Planting,
  crop: Crop,
  garden: Garden,
  rules: readonly FeedRule[],
): StagesAndRules {
  const now = ofThisYear(planting, crop, garden);
  const life = plantingLife(now.planting, crop, garden);
  const assumptions = [...now.assumptions, ...life.assumptions];
  return { life: { ...life, assumptions }, match: matchRules(now.planting, crop, life, rules) };
}

/** A crop that is not known has no stages: none are invented. */
function onlyListed({ cropWord }: Planting, { season }: Garden): StagesAndRules {
  const reason = `not fed, as the garden file says (\`feed: false\`); \`${cropWord}\` is no crop that is known`;
  const life = { spans: [], harvestFrom: season.to, assumptions: [] };
  return { life, match: { spans: [], reason } };
}

/** Whether warmth moves any of its stages. */
export function followsWarmth({ life }: PlantingNeed): boolean {
  return life.spans.some(({ warmth }) => warmth?.isFollowed === true);
}

/** As the plan tells it. */
export function plannedPlanting(
  { bed, planting, life, match, rules }: PlantingNeed,
  fed: boolean,
  feeding: FeedingSpan | undefined,
): PlannedPlanting {
  return {
    id: planting.id,
    name: planting.name,
    bed: bed.id,
    bedName: bed.name,
    crop: planting.crop,
    cropName: planting.cropWord,
    stages: life.spans,
    fed,
    reason:
      match.spans.length > 0 && !fed
        ? "not fed: the stages in which it is fed fall outside the season"
        : match.reason,
    rules: rules.map((rule) => rule.id),
    ...given({ feeding }),
  };
}
