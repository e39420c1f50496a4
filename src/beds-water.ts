/** The water of beds: known by the week before any round, and the rounds come off it. */
import type { SeasonWaterL } from "./calcium/index.js";
import type { PlaceWeather } from "./climate/index.js";
import { type Day, type DaySpan, eachDay, earlier } from "./dates.js";
import type { Bed, Garden } from "./garden/index.js";
import type { PlantingNeed } from "./planting-needs.js";
import type { PlanWatering, Round } from "./season/index.js";
import { given, grouped } from "./values.js";
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
  const needsOf = byBed(needs);
  return garden.beds.flatMap((bed) =>
    bed.watering === undefined ? [] : [bedWatering(bed, bed.watering, needsOf(bed), place, tables)],
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
  const isWatered = wateredWeeks(garden);
  return pouredBy(waterings, ({ usualWeeks }) => sumOf(pouredIn(usualWeeks, isWatered)));
}

/** On each planting in this season: the week's water, or its rounds' where they bring more. */
export function pouredL(
  garden: Garden,
  waterings: readonly BedWatering[],
  rounds: readonly Round[],
): SeasonWaterL {
  const isWatered = wateredWeeks(garden);
  const drenched = drenchedByDay(rounds, ({ planting }) => planting);
  return pouredBy(waterings, ({ planting, weeks }) =>
    sumOf(pouredIn(lessRounds(weeks, drenched(planting)), isWatered)),
  );
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
function pouredIn(weeks: readonly WateringWeek[], isWatered: (week: DaySpan) => boolean): number[] {
  return weeks.map((week) => {
    const { waterL, roundL = 0 } = week;
    return isWatered(week) ? Math.max(waterL, roundL) : roundL;
  });
}

/** Whether anybody waters in a week: the beds have the same weeks. */
function wateredWeeks(garden: Garden): (week: DaySpan) => boolean {
  const known = new Map<Day, boolean>();
  return ({ from, to }) => {
    const isWatered =
      known.get(from) ?? [...eachDay({ from, to })].some((d) => isWateredOn(d, garden));
    known.set(from, isWatered);
    return isWatered;
  };
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
  const needsOf = byBed(needs);
  const drenched = drenchedByDay(rounds, ({ bed }) => bed);
  const wateringOf = new Map(waterings.map((one) => [one.bed, one]));
  return (bed, until) => {
    if (bed.watering === undefined) return undefined;
    const growing = growingSpans(needsOf(bed), garden.season)
      .map(({ from, to }) => ({ from, to: earlier(to, until ?? to) }))
      .filter(({ from, to }) => from <= to);
    const days = new Set([...drenched(bed.id)].flatMap(([d, l]) => (l > 0 ? [d] : [])));
    const watering = wateringOf.get(bed.id);
    const weeks = watering?.by === "weather" ? watering.weeks : [];
    const rained = weeks.filter(({ waterL }) => waterL === 0);
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
  const needsOf = byBed(needs);
  const drenched = drenchedByDay(rounds, ({ bed }) => bed);
  const wateringOf = new Map(waterings.map((one) => [one.bed, one]));
  return garden.beds.flatMap((bed): PlanWatering[] => {
    const watering = wateringOf.get(bed.id);
    if (watering === undefined) return [];
    const { bedName, by, usualWeeks, unknown, usualRainMm, shortfall } = watering;
    const usualL = new Map(usualWeeks.map(({ from, waterL }) => [from, waterL]));
    const weeks = lessRounds(watering.weeks, drenched(bed.id));
    const untold = new Set(unknown.map(({ planting }) => planting));
    // An amount is for all that grows there, also where the shares in it are not known.
    const grown = needsOf(bed).filter(
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

/** Litres of rounds onto the soil by their days, for each key; a spray waters nothing. */
function drenchedByDay(
  rounds: readonly Round[],
  keyOf: (feeding: Watered) => string,
): (key: string) => ReadonlyMap<Day, number> {
  const byKey = new Map<string, Map<Day, number>>();
  for (const { day, beds } of rounds)
    for (const { bed, mixes } of beds)
      for (const { planting, waterL } of mixes.flatMap(({ route, feedings }) =>
        route === "drench" ? feedings : [],
      )) {
        const key = keyOf({ bed, planting });
        const byDay = byKey.get(key) ?? new Map<Day, number>();
        byKey.set(key, byDay.set(day, (byDay.get(day) ?? 0) + waterL));
      }
  return (key) => byKey.get(key) ?? new Map<Day, number>();
}

function byBed(needs: readonly PlantingNeed[]): (bed: Bed) => readonly PlantingNeed[] {
  const groups = grouped(needs, ({ bed }) => bed.id);
  return ({ id }) => groups.get(id) ?? [];
}
