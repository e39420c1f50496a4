/** Chosen days and courses -> rounds with beds, cans and amounts. */
import { stageOn, type Crop, type StageSpan } from "../crops/index.js";
import { weekdayOf, eachDay, within, type Day } from "../dates.js";
import type { Garden } from "../garden/index.js";
import type { BedRound, CanMix, Feeding, Round } from "../season-plan.js";
import { canFills } from "./cans.js";
import { ruleOn, type FeedingCourse } from "./courses.js";
import type { Schedule, ScheduledFeeding } from "./schedule-problem.js";

/** What a feeding needs to know of its planting. */
export interface PlantingContext {
  readonly crop: Crop;
  readonly spans: readonly StageSpan[];
}

/** The days of the season on which the grower feeds and is there. */
export function allowedDays(garden: Garden): Day[] {
  return [...eachDay(garden.season)].filter(
    (day) =>
      garden.feeding.days.includes(weekdayOf(day)) &&
      !garden.feeding.away.some((span) => within(day, span)),
  );
}

export function assembleRounds(
  garden: Garden,
  schedule: Schedule,
  courses: readonly FeedingCourse[],
  contexts: ReadonlyMap<string, PlantingContext>,
  stockGPerL: number,
): Round[] {
  const byId = new Map(courses.map((course) => [course.course.id, course]));
  const numbers = new Map<string, number>();
  const byDay = new Map<Day, DosedFeeding[]>();
  for (const scheduled of schedule.feedings) {
    const course = byId.get(scheduled.course);
    const context = course && contexts.get(course.planting.id);
    if (!course || !context) throw new Error(`no course ${scheduled.course}`);
    const number = (numbers.get(scheduled.course) ?? 0) + 1;
    numbers.set(scheduled.course, number);
    const onDay = byDay.get(scheduled.day) ?? [];
    onDay.push(dosedFeeding(scheduled, course, context, number));
    byDay.set(scheduled.day, onDay);
  }
  return [...byDay]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([day, feedings]) => roundOf(day, feedings, garden, stockGPerL));
}

interface DosedFeeding {
  readonly bed: string;
  readonly route: CanMix["route"];
  readonly rateMlPerL: number;
  readonly feeding: Feeding;
}

function dosedFeeding(
  { day, window }: ScheduledFeeding,
  course: FeedingCourse,
  { crop, spans }: PlantingContext,
  number: number,
): DosedFeeding {
  const { planting, route } = course;
  const rule = ruleOn(course, day);
  const stage = stageOn(spans, day);
  if (stage === undefined) throw new Error(`${planting.id} has no stage on ${day}`);
  const baseRateMlPerL = planting.rateMlPerL ?? rule.rateMlPerL;
  return {
    bed: planting.bed,
    route,
    rateMlPerL: baseRateMlPerL * planting.level,
    feeding: {
      planting: planting.id,
      name: planting.name,
      crop: crop.key,
      cropName: planting.cropWord,
      rule: rule.id,
      evidence: rule.evidence,
      disorder: rule.disorder,
      stage: stage.stage,
      stageOrigin: stage.origin,
      number,
      window,
      inWindow: window.earliest <= day && day <= window.latest,
      waterL: route === "drench" ? planting.waterL : planting.sprayL,
      baseRateMlPerL,
      level: planting.level,
    },
  };
}

function roundOf(
  day: Day,
  feedings: readonly DosedFeeding[],
  garden: Garden,
  stockGPerL: number,
): Round {
  const beds = garden.beds.flatMap((bed): BedRound[] => {
    const here = feedings.filter((f) => f.bed === bed.id);
    return here.length === 0
      ? []
      : [{ bed: bed.id, bedName: bed.name, mixes: mixesOf(here, garden, stockGPerL) }];
  });
  const mixes = beds.flatMap((bed) => bed.mixes);
  return {
    day,
    ...(garden.feeding.timeOfDay === undefined ? {} : { timeOfDay: garden.feeding.timeOfDay }),
    beds,
    waterL: sum(mixes.map((mix) => mix.waterL)),
    stockMl: sum(mixes.map((mix) => mix.stockMl)),
  };
}

/** Drenches first; within a route the stronger mix first. */
function mixesOf(feedings: readonly DosedFeeding[], garden: Garden, stockGPerL: number): CanMix[] {
  const groups = new Map<string, DosedFeeding[]>();
  for (const feeding of feedings) {
    const key = `${feeding.route} ${feeding.rateMlPerL}`;
    groups.set(key, [...(groups.get(key) ?? []), feeding]);
  }
  return [...groups.values()]
    .flatMap((group): CanMix[] => {
      const first = group[0];
      if (first === undefined) return [];
      const { route, rateMlPerL } = first;
      const waterL = sum(group.map((f) => f.feeding.waterL));
      const canL = route === "drench" ? garden.canL : garden.sprayerL;
      const fills = canFills({ waterL, rateMlPerL, canL, amounts: garden.amounts });
      return [
        {
          route,
          rateMlPerL,
          feedings: group.map((f) => f.feeding),
          waterL,
          exactStockMl: rateMlPerL * waterL,
          stockMl: sum(fills.map((fill) => fill.count * fill.stockMl)),
          calciumMgPerL: rateMlPerL * stockGPerL,
          fills,
        },
      ];
    })
    .sort((a, b) => compare(a.route, b.route) || b.rateMlPerL - a.rateMlPerL);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Sums of measured amounts, free of the dust of binary fractions. */
function sum(values: readonly number[]): number {
  return Number(values.reduce((total, value) => total + value, 0).toFixed(6));
}
