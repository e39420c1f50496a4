/** The program as a story: a garden becomes the plan of its season, one step after the other. */
import {
  dryGaps,
  plannedWatering,
  pouredL,
  takenForWater,
  usualPouredL,
  weeklyWater,
} from "./beds-water.js";
import { feedingVerdicts, type Verdicts } from "./calcium/index.js";
import {
  type FrostEstimate,
  frostOf,
  type FrostRules,
  type PlaceWeather,
  toldOfSeason,
} from "./climate/index.js";
import type { Day, DaySpan } from "./dates.js";
import type { FeedingCourse } from "./days/index.js";
import { type HelpTables, plannedCalcium, wantedOf } from "./expected-help.js";
import { spansByRule, withFedBefore } from "./fed-before.js";
import { feedingDays, type FeedingDays } from "./feeding-days.js";
import type { Garden } from "./garden/index.js";
import { futureRecords, passedWithout, unknownBatches } from "./log/index.js";
import {
  emptiedNotes,
  feedingSpan,
  forecastWarnings,
  leftWithoutDay,
  missedOf,
  movedNotes,
  noLongerNeeded,
  outsideSeason,
  signNotes,
  strayNotes,
  takenAsGiven,
  takenAsMade,
  takenForRenamed,
  usedDefaults,
  waitsForStock,
  windowWarnings,
} from "./notes/index.js";
import {
  type KnownPlace,
  plannedPlanting,
  type PlantingNeed,
  plantingNeeds,
} from "./planting-needs.js";
import { onDaysWithStock, pouredAsFar, type PouredDays, type Told } from "./poured-rounds.js";
import type { Finding, Result } from "./problem.js";
import { type Published, withNewIds } from "./published/index.js";
import { wishesBeyondLimits } from "./rules/index.js";
import {
  type FeedingSpan,
  type Plan,
  type PlanClimate,
  type PlanFrost,
  publishedWith,
  seasonTotals,
} from "./season/index.js";
import { type Standing, standingBatches, type StockTables, timesOfMaking } from "./stock/index.js";
import { given, grouped } from "./values.js";
import type { BedWatering, WateringTables } from "./watering/index.js";

/** The tables that a plan is made from; `loadTables` has them. */
export interface PlanTables extends StockTables, WateringTables, HelpTables {
  readonly frost: FrostRules;
}

/** What a season is planned with beside garden and tables. */
export interface PlanOptions {
  /** The day to plan from: stock can be made from it on, and logged gardens are planned anew from it. */
  readonly today: Day;
  /**
   * What the garden's calendar has told: its past happened so, its days to come are kept where that
   * costs nothing. Without it nobody keeps a calendar of the garden, and the season is planned afresh.
   */
  readonly published?: Published;
  /** The climate of the garden's place and its weather; without it stages stay on the calendar. */
  readonly place?: PlaceWeather;
  /** Rounds above the fewest that may be spent on keeping published days; as the garden has it unless given. */
  readonly extraRounds?: number;
}

/**
 * Garden -> plan of the season.
 *
 * @returns findings where a planting wishes for more than a rule's limits allow, or where batches,
 *   log or water cannot be as written
 */
export function planSeason(
  garden: Garden,
  tables: PlanTables,
  { today, place, published: before, extraRounds = garden.feeding.extraRounds ?? 0 }: PlanOptions,
): Result<Plan, Finding> {
  const frost = frostOf(place?.climate, garden.frost, tables.frost);
  const known = given({ weather: place, frost });
  const ruled = plantingNeeds(garden, tables, known);
  const waterings = weeklyWater(garden, ruled, place, tables);
  const verdicts = feedingVerdicts(garden, ruled, usualPouredL(garden, waterings), tables);
  const wanted = wantedOf(garden, ruled, verdicts);
  const findings = [
    ...wanted.flatMap(({ planting, rules }) => wishesBeyondLimits(planting, rules, garden.amounts)),
    ...futureRecords(garden, today),
  ];
  if (findings.length > 0) return { ok: false, problems: findings };

  const { published, renamed } = before
    ? withNewIds(before, garden, today)
    : { published: before, renamed: [] };
  const byRule = new Map(
    ruled.map((need) => [need.planting.id, spansByRule(need, tables.rules)] as const),
  );
  const needs = withFedBefore(garden, wanted, { published, byRule }, today);
  const told = { published, renamed, standing: standingOf(garden, published, tables, today) };
  const poured = onDaysWithStock((dryDays) => {
    const known = { ...told, place, extraRounds, tables, dryDays };
    const chosen = feedingDays(garden, needs, known, today);
    return pouredAsFar(garden, needs, chosen, told, tables, today);
  }, today);
  if (!poured.ok) return poured;
  const { days, ...rest } = poured.value;
  return {
    ok: true,
    value: planOf(
      garden,
      needs,
      days,
      rest,
      told,
      { ...known, waterings, verdicts },
      tables,
      today,
    ),
  };
}

/** Of place and soil, before any day is chosen. */
interface Known extends KnownPlace {
  readonly waterings: readonly BedWatering[];
  readonly verdicts: Verdicts;
}

function standingOf(
  garden: Garden,
  published: Published | undefined,
  tables: PlanTables,
  today: Day,
): Standing {
  return standingBatches(garden, published, timesOfMaking(garden.stock, tables.making), today);
}

/** Fourth step: all of it as one plain value, with what is to be told. */
function planOf(
  garden: Garden,
  needs: readonly PlantingNeed[],
  { courses, ahead, couldFeed, past, schedule, moves, threatened }: FeedingDays,
  { rounds, stockSide, strays, waitsUntil }: Omit<PouredDays, "days">,
  { published, renamed, standing }: Told,
  known: Known,
  tables: PlanTables,
  today: Day,
): Plan {
  const isPassed = passedWithout(past, published, garden.season, today);
  const coursesOf = byPlanting(courses);
  const aheadOf = byPlanting(ahead);
  const spanOf = (need: PlantingNeed): FeedingSpan | undefined =>
    feedingSpan(need, coursesOf(need), aheadOf(need), rounds, garden);
  const { weather: place, waterings, verdicts } = known;
  const gapOf = dryGaps(garden, needs, waterings, rounds, place, tables);
  const watering = plannedWatering(garden, needs, waterings, rounds, { place, gapOf }, tables);
  const poured = pouredL(garden, waterings, rounds);
  const { early } = past;
  const toTell = publishedWith(published, rounds, stockSide.stock.making, { early, moves }, today);
  const stopped = new Set(needs.flatMap((n) => (n.stoppedBy === undefined ? [] : n.planting.id)));
  const wanted = ahead.filter(({ planting }) => !stopped.has(planting.id));
  const wantedIds = new Set(wanted.map(({ planting }) => planting.id));
  const told = windowWarnings(schedule, wanted, couldFeed, garden, isPassed);
  return {
    planVersion: 1,
    today,
    garden: gardenOf(garden, known),
    plantings: needs.map((need) => {
      const span = spanOf(need);
      const isFed = span !== undefined || wantedIds.has(need.planting.id);
      return plannedPlanting(need, isFed, span);
    }),
    rounds,
    rules: [...new Set(needs.flatMap(({ rules }) => rules))],
    stock: stockSide.stock,
    ...(watering.length > 0 ? { watering } : {}),
    calcium: plannedCalcium(garden, needs, verdicts, poured, rounds, tables),
    warnings: [
      ...told.warnings,
      ...forecastWarnings(threatened, garden),
      ...waitsForStock(rounds, waitsUntil, garden.amounts, today),
      ...stockSide.warnings,
      ...unknownBatches(garden, published),
      ...noLongerNeeded(stockSide.stock.making, garden.amounts),
      ...leftWithoutDay(garden.stock.batches, past.taken),
      ...outsideSeason(garden, needs, stockSide.stock.inHand ?? [], today),
    ],
    notes: [
      ...needs.flatMap((need) =>
        signNotes(need, garden, coursesOf(need), rounds, {
          dryGapUntil: (day) => gapOf(need.bed, day),
          verdicts: verdicts.get(need.planting.id) ?? [],
        }),
      ),
      ...told.notes,
      ...movedNotes(toTell, garden.amounts, today),
      ...strayNotes(strays, garden),
      ...emptiedNotes(stockSide.emptied, garden),
    ],
    ...missedOf(past.notGiven, garden),
    published: toTell,
    assumptions: [
      ...garden.assumptions,
      ...needs.flatMap(({ life }) => life.assumptions),
      ...takenForWater(needs, waterings),
      ...usedDefaults(garden, ahead),
      ...takenAsGiven(past.silentDays, garden.amounts),
      ...takenForRenamed(renamed),
      ...takenAsMade(standing, stockSide.stock.making, garden.amounts),
      ...stockSide.assumptions,
    ],
    totals: seasonTotals(rounds),
  };
}

function byPlanting(
  courses: readonly FeedingCourse[],
): (need: PlantingNeed) => readonly FeedingCourse[] {
  const groups = grouped(courses, ({ planting }) => planting.id);
  return ({ planting }) => groups.get(planting.id) ?? [];
}

function gardenOf(garden: Garden, { weather, frost }: KnownPlace): Plan["garden"] {
  const { id, name, timezone, season, amounts, canL, sprayerL, feeding, calendar } = garden;
  const { inCalendar, timeOfDay: wateredAt, remindersMinBefore } = garden.watering;
  const { timeOfDay, durationMin } = feeding;
  return {
    id,
    name,
    timezone,
    season,
    amounts,
    canL,
    sprayerL,
    ...given({ timeOfDay }),
    durationMin,
    calendar,
    ...given({
      watering: inCalendar ? { ...given({ timeOfDay: wateredAt }), remindersMinBefore } : undefined,
      climate: weather && climateFact(weather, season),
      frost: frost && frostFact(frost, season),
    }),
  };
}

function climateFact({ climate, days }: PlaceWeather, season: DaySpan): PlanClimate {
  const { origin, point, errorC } = climate;
  return { origin, errorC, ...given({ point, weather: toldOfSeason(days.keys(), season) }) };
}

function frostFact({ allYear, around }: FrostEstimate, season: DaySpan): PlanFrost {
  return { ...around(season), ...(allYear ? { allYear } : {}) };
}
