/** The water of beds: known by the week before any round, and the rounds come off it. */
// @ts-nocheck

import type { SeasonWaterL } from "./calcium/index.js";
import type { PlaceWeather } from "./climate/index.js";
import { type Day, eachDay, earlier } from "./dates.js";
import type { Bed, Garden } from "./garden/index.js";
import type { PlantingNeed } from "./planting-needs.js";
import type { PlanWatering, Round } from "./season/index.js";
import { given } from "./values.js";
import {
  type BedWatering,
  bedWatering,
  type DryGap,
  growingSpans,
  isWateredOn,
  lessRounds,
  longestDryGap,
  wateringDays,
  type WateringTables,
  type WateringWeek,
} from "./watering/index.js";

/** Of beds whose watering the garden file tells, before any round is known. */
export function weeklyWater(
  garden: Garden,
  needs: readonly PlantingNeed[],
  weather: PlaceWeather | undefined,
  tables: WateringTables,
): BedWatering[] {
  const place = { weather, season: garden.season };
  return garden.beds.flatMap((bed) =>
    bed.watering === undefined
      ? []
      : [bedWatering(bed, bed.watering, needsOf(bed, needs), place, tables)],
  );
}

/** What was taken as usual, in words for the grower. */
export function takenForWater(
  needs: readonly PlantingNeed[],
  waterings: readonly BedWatering[],
): readonly string[] {
  const watered = new Set(waterings.flatMap(({ plantings }) => plantings.map((p) => p.planting)));
  const bySpacing = needs
    .filter(({ planting, ground }) => ground?.isBySpacing === true && watered.has(planting.id))
    .map(({ planting }) => planting.id);
  return [
    ...(bySpacing.length === 0
      ? []
      : [
          `${bySpacing.join(", ")}: the ground of plants at usual spacing, as no \`area:\` of the planting is given`,
        ]),
    ...new Set(waterings.flatMap(({ assumptions }) => assumptions)),
  ];
}

/** On each planting in a usual year, by monthly means alone: so that nothing flips with the weather. */
export function usualPouredL(garden: Garden, waterings: readonly BedWatering[]): SeasonWaterL {
  return pouredBy(waterings, ({ usualWeeks }) => sumOf(pouredIn(usualWeeks, garden)));
}

/** On each planting in this season: the week's water, or its rounds' where they bring more. */
export function pouredL(
  garden: Garden,
  waterings: readonly BedWatering[],
  rounds: readonly Round[],
): SeasonWaterL {
  return pouredBy(waterings, ({ planting, weeks }) => {
    const own = drenchedByDay(rounds, (feeding) => feeding.planting === planting);
    return sumOf(pouredIn(lessRounds(weeks, own), garden));
  });
}

type PlantingWater = BedWatering["plantings"][number];

function pouredBy(
  waterings: readonly BedWatering[],
  litersOf: (planting: PlantingWater) => number,
): SeasonWaterL {
  const all = waterings.flatMap(({ plantings }) => plantings);
  return new Map(all.map((one) => [one.planting, litersOf(one)]));
}

/** In a week in which nobody is there to water only its rounds are poured. */
function pouredIn(weeks: readonly WateringWeek[], garden: Garden): number[] {
  return weeks.map(({ from, to, waterL, roundL = 0 }) =>
    [...eachDay({ from, to })].some((d) => isWateredOn(d, garden))
      ? Math.max(waterL, roundL)
      : roundL,
  );
}

function sumOf(liters: readonly number[]): number {
  return liters.reduce((sum, one) => sum + one, 0);
}

/** The longest time without water in a bed that is watered, up to a day. */
export type DryGapOf = (bed: Bed, until?: Day) => DryGap | undefined;

export function dryGaps(
  garden: Garden,
  needs: readonly PlantingNeed[],
  waterings: readonly BedWatering[],
  rounds: readonly Round[],
  place: PlaceWeather | undefined,
  { wateringFactors: factors }: Pick<WateringTables, "wateringFactors">,
): DryGapOf {
  return (bed, until) => {
    if (bed.watering === undefined) return undefined;
    const growing = growingSpans(needsOf(bed, needs), garden.season)
      .map(({ from, to }) => ({ from, to: earlier(to, until ?? to) }))
      .filter(({ from, to }) => from <= to);
    const days = [...drenchedByDay(rounds, isIn(bed.id))].flatMap(([d, l]) => (l > 0 ? [d] : []));
    const rained = waterings
      .filter((one) => one.bed === bed.id && one.by === "weather")
      .flatMap(({ weeks }) => weeks.filter(({ waterL }) => waterL === 0));
    return longestDryGap(growing, { garden, bed, rounds: days, rained, place, factors });
  };
}

/** What the plan tells of water: the rounds' litres come off those of their weeks. */
export function plannedWatering(
  garden: Garden,
  needs: readonly PlantingNeed[],
  waterings: readonly BedWatering[],
  rounds: readonly Round[],
  { place, gapOf }: { readonly place: PlaceWeather | undefined; readonly gapOf: DryGapOf },
  { wateringFactors: factors }: Pick<WateringTables, "wateringFactors">,
): PlanWatering[] {
  return garden.beds.flatMap((bed): PlanWatering[] => {
    const watering = waterings.find((one) => one.bed === bed.id);
    if (watering === undefined) return [];
    const { bedName, by, usualWeeks, unknown, usualRainMm, shortfall } = watering;
    const usualL = new Map(usualWeeks.map(({ from, waterL }) => [from, waterL]));
    const weeks = lessRounds(watering.weeks, drenchedByDay(rounds, isIn(bed.id)));
    const untold = new Set(unknown.map(({ planting }) => planting));
    // An amount is for all that grows there, also where the shares in it are not known.
    const grown = needsOf(bed, needs).filter(
      ({ planting }) => by === "amount" || !untold.has(planting.id),
    );
    const growing = growingSpans(grown, garden.season);
    return [
      {
        ...{ bed: bed.id, bedName, by, unknown },
        weeks: weeks.map((week) => ({ ...week, usualL: usualL.get(week.from) ?? 0 })),
        days: wateringDays({ by, weeks }, growing, { garden, bed, place, factors }),
        ...given({ dryGap: gapOf(bed), usualRainMm, shortfall }),
      },
    ];
  });
}

interface Watered {
  readonly bed: string;
  readonly planting: string;
}

function isIn(id: string): (feeding: Watered) => boolean {
  return ({ bed }) => bed === id;
}

/** Litres of rounds onto the soil; a spray waters nothing. */
function drenchedByDay(
  rounds: readonly Round[],
  counts: (feeding: Watered) => boolean,
): ReadonlyMap<Day, number> {
  return new Map(
    rounds.map(({ day, beds }) => {
      const drenched = beds.flatMap(({ bed, mixes }) =>
        mixes
          .filter(({ route }) => route === "drench")
          .flatMap(({ feedings }) => feedings.map((feeding) => ({ ...feeding, bed }))),
      );
      return [day, sumOf(drenched.filter(counts).map(({ waterL }) => waterL))];
    }),
  );
}

function needsOf(bed: Bed, needs: readonly PlantingNeed[]): PlantingNeed[] {
  return needs.filter((need) => need.bed.id === bed.id);
}
