/** The program as a story: a garden becomes the plan of its season, one step after the other. */
import { plantingLife, type CropCatalogue } from "./crops/index.js";
import type { Garden } from "./garden/index.js";
import type { Finding, Result } from "./problem.js";
import {
  allowedDays,
  assembleRounds,
  chooseDays,
  feedingCourses,
  wishesBeyondLimits,
} from "./rounds/index.js";
import { matchRules, type FeedRule } from "./rules/index.js";
import type { Plan, PlannedPlanting } from "./season-plan.js";
import { seasonTotals, usedDefaults, windowWarnings } from "./told.js";

export interface PlanTables {
  readonly catalogue: CropCatalogue;
  /** The grower's own rules before the built-in ones; see `mergeRules`. */
  readonly rules: readonly FeedRule[];
  /** Calcium in the stock for which rates are written, g/L. */
  readonly referenceStockGPerL: number;
}

/**
 * Garden -> plan of the season.
 *
 * @returns findings where a planting wishes for more than a rule's limits allow
 */
export function planSeason(garden: Garden, tables: PlanTables): Result<Plan, Finding> {
  const plantings = garden.beds.flatMap((bed) =>
    bed.plantings.map((planting) => {
      const crop = cropByKey(tables.catalogue, planting.crop);
      const life = plantingLife(planting, crop, garden);
      const match = matchRules(planting, crop, life, tables.rules);
      const rules = [...new Set(match.spans.map((span) => span.rule))];
      return { bed, planting, crop, life, match, rules };
    }),
  );
  const findings = plantings.flatMap((p) => wishesBeyondLimits(p.planting, p.rules));
  if (findings.length > 0) return { ok: false, problems: findings };

  const courses = plantings.flatMap((p) =>
    feedingCourses(p.planting, p.match.spans, garden.season),
  );
  const schedule = chooseDays({
    allowedDays: allowedDays(garden),
    courses: courses.map((course) => course.course),
  });
  const contexts = new Map(
    plantings.map((p) => [p.planting.id, { crop: p.crop, spans: p.life.spans }]),
  );
  const rounds = assembleRounds(garden, schedule, courses, contexts, tables.referenceStockGPerL);
  const fed = new Set(courses.map((course) => course.planting.id));
  return {
    ok: true,
    value: {
      planVersion: 1,
      garden: gardenOf(garden),
      plantings: plantings.map(({ bed, planting, crop, life, match, rules }): PlannedPlanting => ({
        id: planting.id,
        name: planting.name,
        bed: bed.id,
        bedName: bed.name,
        crop: crop.key,
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
      warnings: windowWarnings(schedule, courses),
      assumptions: [
        ...garden.assumptions,
        ...plantings.flatMap((p) => p.life.assumptions),
        ...usedDefaults(garden, courses),
      ],
      totals: seasonTotals(rounds),
    },
  };
}

function cropByKey(catalogue: CropCatalogue, key: string): CropCatalogue["crops"][number] {
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
