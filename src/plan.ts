/** The program as a story: a garden becomes the plan of its season, one step after the other. */
import { lifeSpan, plantingLife } from "./stages/index.js";
import type { Crop, CropCatalogue } from "./crops/index.js";
import { within, type Day } from "./dates.js";
import type { Garden } from "./garden/index.js";
import type { Finding, Result } from "./problem.js";
import { allowedDays, chooseDays, feedingCourses, keepDays } from "./days/index.js";
import { asScheduled, futureRecords, givenFeedings, keepsLog, resumed } from "./log/index.js";
import {
  assembleRounds,
  canDemands,
  keepingGaps,
  otherFeedDays,
  otherFeedMixes,
  seasonStock,
} from "./cans/index.js";
import {
  wishesBeyondLimits,
  matchRules,
  sightingsOn,
  signLevel,
  signEffect,
  type FeedRule,
  type Sign,
} from "./rules/index.js";
import type { Published } from "./published/index.js";
import { type Plan, type PlannedPlanting, seasonTotals } from "./season/index.js";
import { signNote, strayNotes, usedDefaults, windowWarnings } from "./notes/index.js";
import type { StockTables } from "./stock/index.js";

export interface PlanTables extends StockTables {
  readonly catalogue: CropCatalogue;
  /** The grower's own rules before the built-in ones; see `mergeRules`. */
  readonly rules: readonly FeedRule[];
  readonly signs: readonly Sign[];
}

export interface PlanOptions {
  /** The day to plan from: stock can be made from it on, and logged gardens are planned anew from it. */
  readonly today: Day;
  /** Days of an earlier plan to keep where that costs nothing, or little. */
  readonly keep?: Published;
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
  { today, keep }: PlanOptions,
): Result<Plan, Finding> {
  const plantings = garden.beds.flatMap((bed) =>
    bed.plantings.map((planting) => {
      const crop = cropByKey(tables.catalogue, planting.crop);
      const life = plantingLife(planting, crop, garden);
      const match = matchRules(planting, crop, life, tables.rules);
      const rules = [...new Set(match.spans.map((span) => span.rule))];
      const sightings = sightingsOn(planting, crop, garden.signs, tables.signs);
      return { bed, planting, crop, life, match, rules, sightings };
    }),
  );
  const findings = [
    ...plantings.flatMap((p) => wishesBeyondLimits(p.planting, p.rules)),
    ...futureRecords(garden, today),
  ];
  if (findings.length > 0) return { ok: false, problems: findings };

  // Days: what the log holds is past, what it does not hold was not given.
  const isLogged = keepsLog(garden);
  const seasonDays = allowedDays(garden);
  const allowed = seasonDays.filter((day) => !isLogged || day >= today);
  const whole = plantings.flatMap((p) => feedingCourses(p.planting, p.match.spans, garden.season));
  const given = givenFeedings(garden, whole, today);
  const feedDays = otherFeedDays(garden, seasonDays, given, today);
  const courses = keepingGaps(resumed(whole, given), feedDays, allowed);
  const problem = { allowedDays: allowed, courses: courses.map((course) => course.course) };
  const schedule = chooseDays(keepDays(problem, courses, keep, today));

  // Amounts: what each bed needs, from which bottle, in which cans.
  const contexts = new Map(
    plantings.map(({ planting, crop, life, sightings }) => [
      planting.id,
      {
        crop,
        spans: life.spans,
        signLevel: (day: Day, rule: FeedRule) =>
          signLevel(sightings, planting, life.spans, day, rule),
      },
    ]),
  );
  const growing = new Map(plantings.map((p) => [p.planting.id, lifeSpan(p.life.spans)]));
  const isGrowing = (planting: string, day: Day): boolean => {
    const span = growing.get(planting);
    return span !== undefined && within(day, span);
  };
  const past = asScheduled(given, whole, isGrowing);
  const demands = canDemands(garden, [...past.feedings, ...schedule.feedings], whole, contexts);
  const ahead = demands.filter((demand) => demand.given === undefined);
  const stockSide = seasonStock(garden, ahead, tables, today);
  if (!stockSide.ok) return stockSide;
  const feeds = otherFeedMixes(garden, feedDays, ({ id, transplanted }, day) => {
    const isInBed = transplanted === undefined || transplanted <= day;
    return isInBed && isGrowing(id, day);
  });
  const { pouredFor, tapCalciumMgPerL } = stockSide.value;
  const rounds = assembleRounds(garden, demands, pouredFor, tapCalciumMgPerL, feeds);

  const fed = new Set(courses.map((course) => course.planting.id));
  const told = windowWarnings(schedule, courses, today);
  return {
    ok: true,
    value: {
      planVersion: 1,
      today,
      garden: gardenOf(garden),
      plantings: plantings.map(({ bed, planting, life, match, rules }): PlannedPlanting => ({
        id: planting.id,
        name: planting.name,
        bed: bed.id,
        bedName: bed.name,
        crop: planting.crop,
        cropName: planting.cropWord,
        stages: life.spans,
        fed: fed.has(planting.id),
        reason:
          match.spans.length > 0 && !fed.has(planting.id)
            ? "not fed: the stages in which it is fed fall outside the season"
            : match.reason,
        rules: rules.map((rule) => rule.id),
      })),
      rounds,
      rules: [...new Set(plantings.flatMap((p) => p.rules))],
      stock: stockSide.value.stock,
      warnings: [...told.warnings, ...stockSide.value.warnings],
      notes: [
        ...plantings.flatMap(({ sightings, planting, crop, life, match }) =>
          sightings.map((s) =>
            signNote(
              s,
              signEffect(s, sightings, planting, life.spans, match.spans),
              planting,
              crop,
            ),
          ),
        ),
        ...told.notes,
        ...strayNotes(past.strays, garden),
      ],
      assumptions: [
        ...garden.assumptions,
        ...plantings.flatMap((p) => p.life.assumptions),
        ...usedDefaults(garden, courses),
        ...stockSide.value.assumptions,
      ],
      totals: seasonTotals(rounds),
    },
  };
}

function cropByKey(catalogue: CropCatalogue, key: string): Crop {
  const crop = catalogue.crops.find((c) => c.key === key);
  if (crop === undefined) throw new Error(`no crop ${key}: was the garden validated?`);
  return crop;
}

function gardenOf(garden: Garden): Plan["garden"] {
  const { id, name, timezone, season, amounts, canL, sprayerL, feeding, calendar } = garden;
  const { timeOfDay, durationMin } = feeding;
  return {
    id,
    name,
    timezone,
    season,
    amounts,
    canL,
    sprayerL,
    ...(timeOfDay === undefined ? {} : { timeOfDay }),
    durationMin,
    calendar,
  };
}
