/** The first step of a plan: what each planting needs when. */
import {
  type ClimateConstants,
  type FrostEstimate,
  frostOf,
  type FrostRules,
  type PlaceWeather,
  warmthOf,
} from "./climate/index.js";
import { type Crop, type CropCatalogue, findCrop } from "./crops/index.js";
import { addDays, type Day } from "./dates.js";
import type { Bed, Garden, Planting, Usual } from "./garden/index.js";
import {
  type FeedRule,
  matchRules,
  type RuleMatch,
  type Sighting,
  sightingsOn,
  type Sign,
} from "./rules/index.js";
import type { PlannedPlanting } from "./season/index.js";
import { given } from "./values.js";
import {
  type Here,
  ofThisYear,
  type Place,
  plantingLife,
  type PlantingLife,
} from "./stages/index.js";

export interface NeedTables {
  readonly catalogue: CropCatalogue;
  readonly climate: ClimateConstants;
  readonly frost: FrostRules;
  readonly usual: Usual;
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
  readonly life: Pick<PlantingLife, "spans" | "assumptions">;
  readonly match: RuleMatch;
  readonly rules: readonly FeedRule[];
  readonly sightings: readonly Sighting[];
}

/**
 * Stages, and the rules that feed in them.
 *
 * @param weather of the garden's place; without it stages stay on the calendar
 */
export function plantingNeeds(
  garden: Garden,
  tables: NeedTables,
  weather: PlaceWeather | undefined,
): PlantingNeed[] {
  const outdoors = weather && hereOf(garden, tables, weather);
  return garden.beds.flatMap((bed) => {
    const place = {
      ...garden,
      ...given({ here: outdoors && underCover(outdoors, bed, tables.usual) }),
    };
    return bed.plantings.map((planting) => {
      const crop = tables.catalogue.crops.find(({ key }) => key === planting.crop);
      const { life, match } = crop
        ? stagesAndRules(planting, crop, place, tables.rules)
        : onlyListed(planting);
      const rules = [...new Set(match.spans.map((span) => span.rule))];
      const sightings = sightingsOn(planting, crop, garden.signs, tables.signs);
      return { bed, planting, crop, life, match, rules, sightings };
    });
  });
}

function hereOf(
  { warmth: wish, raisedAtC, frost: ownFrost }: Garden,
  { catalogue, climate, frost: frostRules, usual }: NeedTables,
  weather: PlaceWeather,
): Here {
  const frost = frostOf(weather.climate, ownFrost, frostRules);
  return {
    climate: weather.climate,
    warmth: warmthOf(weather),
    wish,
    raisedAtC: raisedAtC ?? usual.raised_at_c,
    mostShiftDays: climate.most_shift_days,
    cover: [],
    firstFrostAfter: (day) => firstFrostAfter(day, frost),
    cropOf: (key) => findCrop(key, catalogue),
  };
}

/** The day that ends the life of tender plants, where frost is known well enough. */
function firstFrostAfter(day: Day, frost: FrostEstimate | undefined): Day | undefined {
  const halfYearOn = addDays(day, 183);
  const autumns = [day, halfYearOn].map((from) => frost?.around({ from, to: from }).firstAutumn);
  return autumns.find((autumn) => autumn !== undefined && autumn.endsPicking && autumn.day > day)
    ?.day;
}

/** Warmer by the cover's gain, and no frost comes in. */
function underCover(outdoors: Here, { cover }: Bed, usual: Usual): Here {
  if (cover === undefined) return outdoors;
  const { kind, from, to, warmerC = usual[`cover_${kind}_warmer_c`] } = cover;
  return {
    ...outdoors,
    cover: [{ byC: warmerC, ...given({ from, to }) }],
    firstFrostAfter: () => undefined,
  };
}

type StagesAndRules = Pick<PlantingNeed, "life" | "match">;

function stagesAndRules(
  planting: Planting,
  crop: Crop,
  place: Place,
  rules: readonly FeedRule[],
): StagesAndRules {
  const now = ofThisYear(planting, crop, place);
  const life = plantingLife(now.planting, crop, place);
  const assumptions = [...now.assumptions, ...life.assumptions];
  return { life: { ...life, assumptions }, match: matchRules(now.planting, crop, life, rules) };
}

/** A crop that is not known has no stages: none are invented. */
function onlyListed({ cropWord }: Planting): StagesAndRules {
  const reason = `not fed, as the garden file says (\`feed: false\`); \`${cropWord}\` is no crop that is known`;
  return { life: { spans: [], assumptions: [] }, match: { spans: [], reason } };
}

/** As the plan tells it. */
export function plannedPlanting(
  { bed, planting, life, match, rules }: PlantingNeed,
  fed: boolean,
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
  };
}
