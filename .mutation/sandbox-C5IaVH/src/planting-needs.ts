/** The first step of a plan: what each planting needs when. */
// @ts-nocheck

import {
  type ClimateConstants,
  type FrostEstimate,
  type PlaceWeather,
  type Warmer,
  warmthOf,
} from "./climate/index.js";
import { type Crop, type CropCatalogue, findCrop } from "./crops/index.js";
import { addDays, type Day } from "./dates.js";
import {
  type Bed,
  type Cover,
  type Garden,
  type Planting,
  standsOn,
  type Usual,
  warmerUnder,
} from "./garden/index.js";
import {
  type FeedRule,
  matchRules,
  type RuleMatch,
  type Sighting,
  sightingsOn,
  type Sign,
} from "./rules/index.js";
import type { FeedingSpan, PlannedPlanting } from "./season/index.js";
import { given } from "./values.js";
import {
  type Here,
  ofThisYear,
  type Place,
  plantingLife,
  type PlantingLife,
} from "./stages/index.js";

import { type Ground, groundsOf } from "./watering/index.js";

export interface NeedTables {
  readonly catalogue: CropCatalogue;
  readonly climate: ClimateConstants;
  readonly usual: Usual;
  /** The grower's own rules before the built-in ones; see `mergeRules`. */
  readonly rules: readonly FeedRule[];
  readonly signs: readonly Sign[];
}

/** What is known of the garden's place. */
export interface KnownPlace {
  readonly weather?: PlaceWeather;
  readonly frost?: FrostEstimate;
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
  /** Absent where it is not known. */
  readonly ground?: Ground;
  /** Key of the garden file that has stopped its feeding in the season; absent where none has. */
  readonly stoppedBy?: "feed" | "feed_when";
}

/**
 * Stages, and the rules that feed in them.
 *
 * @param known of the garden's place; without its weather stages stay on the calendar
 */
export function plantingNeeds(
  garden: Garden,
  tables: NeedTables,
  { weather, frost }: KnownPlace,
): PlantingNeed[] {
  const here = weather && hereOf(garden, tables, weather);
  return garden.beds.flatMap((bed) => {
    const place = placeOfBed(garden, bed, here, frost, tables.usual);
    const lives = bed.plantings.map((planting) => {
      const crop = tables.catalogue.crops.find(({ key }) => key === planting.crop);
      const { life, match } = crop
        ? stagesAndRules(planting, crop, place, tables.rules)
        : onlyListed(planting, garden);
      const rules = [...new Set(match.spans.map((span) => span.rule))];
      const sightings = sightingsOn(planting, crop, garden.signs, tables.signs);
      return { bed, planting, crop, life, match, rules, sightings };
    });
    const grounds = groundsOf(bed, lives, garden.season);
    return lives.map((one) => ({ ...one, ...given({ ground: grounds.get(one.planting.id) }) }));
  });
}

function hereOf(
  { warmth: wish, raisedAtC }: Garden,
  { catalogue, climate, usual }: NeedTables,
  weather: PlaceWeather,
): Here {
  return {
    climate: weather.climate,
    warmth: warmthOf(weather),
    wish,
    raisedAtC: raisedAtC ?? usual.raised_at_c,
    mostShiftDays: climate.most_shift_days,
    rowBandShare: climate.row_band_percent / 100,
    cover: [],
    cropOf: (key) => findCrop(key, catalogue),
  };
}

/** Under a cover it is warmer by its gain and, while it stands, no frost comes in. */
function placeOfBed(
  { amounts, hemisphere, season }: Garden,
  { cover }: Bed,
  here: Here | undefined,
  frost: FrostEstimate | undefined,
  usual: Usual,
): Place {
  const under = here && cover ? { ...here, cover: [warmer(cover, usual)] } : here;
  return {
    amounts,
    hemisphere,
    season,
    ...given({ here: under }),
    firstFrostAfter: (day) => {
      const first = firstFrostAfter(day, frost);
      return first !== undefined && cover && standsOn(cover, first) ? undefined : first;
    },
  };
}

function warmer(cover: Cover, usual: Usual): Warmer {
  const { from, to } = cover;
  return { byC: warmerUnder(cover, usual), ...given({ from, to }) };
}

/** The day that ends the life of tender plants, where frost is known well enough. */
function firstFrostAfter(day: Day, frost: FrostEstimate | undefined): Day | undefined {
  const halfYearOn = addDays(day, 183);
  const autumns = [day, halfYearOn].map((from) => frost?.around({ from, to: from }).firstAutumn);
  return autumns.find((autumn) => autumn !== undefined && autumn.endsPicking && autumn.day > day)
    ?.day;
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
  const match = matchRules(now.planting, crop, life, rules, place.amounts);
  return { life: { ...life, assumptions }, match };
}

/** A crop that is not known has no stages: none are invented. */
function onlyListed({ cropWord }: Planting, { season }: Garden): StagesAndRules {
  const reason = `not fed, as the garden file says (\`feed: false\`); \`${cropWord}\` is no crop that is known`;
  const last = { day: season.to, by: "season" as const };
  const life = { spans: [], harvestFrom: season.to, last, isByWarmth: false, assumptions: [] };
  return { life, match: { spans: [], reason } };
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
