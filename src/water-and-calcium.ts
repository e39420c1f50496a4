/**
 * What the weather and the taps bring: water first, then what can be expected of a feed. Both are known
 * before any day is chosen; the rounds come off the water and into the sum of calcium afterwards.
 */
import {
  calciumSums,
  type CalciumTables,
  feedingVerdicts,
  feedWhen,
  type PlantingCalcium,
  type SeasonWaterL,
  type Verdicts,
} from "./calcium/index.js";
import type { PlaceWeather } from "./climate/index.js";
import type { Day } from "./dates.js";
import type { Bed, Garden } from "./garden/index.js";
import type { NeedTables, PlantingNeed } from "./planting-needs.js";
import { mixesOf, type PlanWatering, type Round } from "./season/index.js";
import { given, grouped } from "./values.js";
import {
  type BedWatering,
  bedWatering,
  type DryGap,
  growingSpans,
  lessRounds,
  longestDryGap,
  type WateringDay,
  wateringDays,
  type WateringTables,
} from "./watering/index.js";
import { verdictWords } from "./words/index.js";

export interface WaterAndCalciumTables extends WateringTables, NeedTables {
  readonly calcium: CalciumTables;
}

/** Before any round is known. */
export interface Expected {
  /** Of beds that wish for it. */
  readonly waterings: readonly BedWatering[];
  readonly verdicts: Verdicts;
}

export function expectedOf(
  garden: Garden,
  needs: readonly PlantingNeed[],
  weather: PlaceWeather | undefined,
  tables: WaterAndCalciumTables,
): Expected {
  const waterings = garden.beds.flatMap((bed) =>
    bed.watering === undefined
      ? []
      : [
          bedWatering(
            bed,
            bed.watering,
            needsOf(bed, needs),
            { weather, season: garden.season },
            tables,
          ),
        ],
  );
  const usualL = waterings.flatMap(({ plantings }) =>
    plantings.map(({ planting, usualWeeks }): [string, number] => [
      planting,
      usualWeeks.reduce((sum, { waterL }) => sum + waterL, 0),
    ]),
  );
  return { waterings, verdicts: feedingVerdicts(garden, needs, new Map(usualL), tables) };
}

/** What was taken as usual, in words for the grower. */
export function takenForWater(
  needs: readonly PlantingNeed[],
  { waterings }: Expected,
): readonly string[] {
  const watered = new Set(waterings.flatMap(({ plantings }) => plantings.map((p) => p.planting)));
  const bySpacing = needs
    .filter(({ planting, ground }) => ground?.isBySpacing === true && watered.has(planting.id))
    .map(({ planting }) => planting.id);
  const told = waterings.flatMap(({ assumptions }) => assumptions);
  return [
    ...(bySpacing.length === 0
      ? []
      : [
          `${bySpacing.join(", ")}: the ground of plants at usual spacing, as no \`area:\` of the planting is given`,
        ]),
    ...new Set(told),
  ];
}

/** The verdict takes feedings away where the garden wishes so. */
export function wantedOf(
  garden: Garden,
  needs: readonly PlantingNeed[],
  { verdicts }: Expected,
): PlantingNeed[] {
  return needs.map((need) => {
    const match = feedWhen(garden, need, verdicts, (verdict) =>
      verdictWords(verdict, garden.amounts),
    );
    return { ...need, match, rules: [...new Set(match.spans.map(({ rule }) => rule))] };
  });
}

/** The longest time without water in a bed that is watered, up to a day. */
export type DryGapOf = (bed: Bed, until?: Day) => DryGap | undefined;

export function dryGaps(
  garden: Garden,
  needs: readonly PlantingNeed[],
  rounds: readonly Round[],
  place: PlaceWeather | undefined,
  { wateringFactors: factors }: Pick<WateringTables, "wateringFactors">,
): DryGapOf {
  return (bed, until) => {
    if (bed.watering === undefined) return undefined;
    const growing = growingSpans(needsOf(bed, needs), garden.season).flatMap((span) => {
      const to = until !== undefined && until < span.to ? until : span.to;
      return span.from <= to ? [{ from: span.from, to }] : [];
    });
    const days = rounds
      .filter((round) => drenchedL(round, (one) => one === bed.id, anyOne) > 0)
      .map(({ day }) => day);
    return longestDryGap(growing, { garden, bed, rounds: days, place, factors });
  };
}

/** Days on which a bed is watered, and with how much. */
export type WateringDaysOf = (
  bed: Bed,
  watering: Pick<BedWatering, "by" | "unknown" | "weeks">,
) => WateringDay[];

export function wateringDaysIn(
  garden: Garden,
  needs: readonly PlantingNeed[],
  place: PlaceWeather | undefined,
  { wateringFactors: factors }: Pick<WateringTables, "wateringFactors">,
): WateringDaysOf {
  return (bed, { by, unknown, weeks }) => {
    const isUnknown = (id: string): boolean => unknown.some(({ planting }) => planting === id);
    // An amount is for all that grows there, also where the shares in it are not known.
    const grown = needsOf(bed, needs).filter(
      ({ planting }) => by === "amount" || !isUnknown(planting.id),
    );
    const growing = growingSpans(grown, garden.season);
    return wateringDays(weeks, growing, { garden, bed, place, factors });
  };
}

/** What the plan tells of water: the rounds' litres come off those of their weeks. */
export function plannedWatering(
  { beds }: Garden,
  { waterings }: Expected,
  rounds: readonly Round[],
  gapOf: DryGapOf,
  daysOf: WateringDaysOf,
): PlanWatering[] {
  return beds.flatMap((one): PlanWatering[] => {
    const watering = waterings.find(({ bed }) => bed === one.id);
    if (watering === undefined) return [];
    const { bed, bedName, by, usualWeeks, unknown } = watering;
    const usualL = new Map(usualWeeks.map(({ from, waterL }) => [from, waterL]));
    const roundL = new Map(
      rounds.map((round) => [round.day, drenchedL(round, (id) => id === bed, anyOne)]),
    );
    const weeks = lessRounds(watering.weeks, roundL);
    return [
      {
        ...{ bed, bedName, by, unknown },
        weeks: weeks.map((week) => ({ ...week, usualL: usualL.get(week.from) ?? 0 })),
        days: daysOf(one, { by, unknown, weeks }),
        ...given({ dryGap: gapOf(one) }),
      },
    ];
  });
}

export function plannedCalcium(
  garden: Garden,
  needs: readonly PlantingNeed[],
  { waterings, verdicts }: Expected,
  rounds: readonly Round[],
  tables: WaterAndCalciumTables,
): PlantingCalcium[] {
  return calciumSums(garden, needs, verdicts, pouredOn(waterings, rounds), feedG(rounds), tables);
}

/** Litres on each planting: the week's, or its rounds' where they are more. */
function pouredOn(waterings: readonly BedWatering[], rounds: readonly Round[]): SeasonWaterL {
  return new Map(
    waterings.flatMap(({ plantings }) =>
      plantings.map(({ planting, weeks }): [string, number] => {
        const ownL = new Map(
          rounds.map((round) => [round.day, drenchedL(round, anyOne, (one) => one === planting)]),
        );
        const poured = lessRounds(weeks, ownL);
        return [
          planting,
          poured.reduce((sum, { roundL = 0, leftL = 0 }) => sum + roundL + leftL, 0),
        ];
      }),
    ),
  );
}

const anyOne = (): boolean => true;

/** Onto the soil; a spray waters nothing. */
function drenchedL(
  { beds }: Round,
  isBed: (bed: string) => boolean,
  isPlanting: (planting: string) => boolean,
): number {
  return beds
    .filter(({ bed }) => isBed(bed))
    .flatMap(({ mixes }) => mixes.filter(({ route }) => route === "drench"))
    .flatMap(({ feedings }) => feedings.filter(({ planting }) => isPlanting(planting)))
    .reduce((sum, { waterL }) => sum + waterL, 0);
}

/** Calcium of the feed on each planting, g. */
function feedG(rounds: readonly Round[]): Map<string, number> {
  const fed = mixesOf(rounds).flatMap(({ calciumMgPerL, feedings }) =>
    feedings.map(({ planting, waterL }) => ({ planting, grams: (calciumMgPerL * waterL) / 1000 })),
  );
  return new Map(
    [...grouped(fed, ({ planting }) => planting)].map(([planting, those]) => [
      planting,
      those.reduce((sum, { grams }) => sum + grams, 0),
    ]),
  );
}

function needsOf(bed: Bed, needs: readonly PlantingNeed[]): PlantingNeed[] {
  return needs.filter((need) => need.bed.id === bed.id);
}
