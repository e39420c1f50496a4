/** Chosen days -> what each bed needs on each day, before a bottle is chosen. */
// @ts-nocheck

import type { Crop } from "../crops/index.js";
import type { Day } from "../dates.js";
import { type FeedingCourse, ruleOn, type ScheduledFeeding } from "../days/index.js";
import {
  feedingL,
  type Garden,
  type Planting,
  type Route,
  totalOf,
  vesselL,
  withoutDust,
} from "../garden/index.js";
import type { GivenStock, LoggedFeeding } from "../log/index.js";
import type { FeedRule } from "../rules/index.js";
import type { CanFill, Feeding, SignOfFeeding } from "../season/index.js";
import { stageNearest, type StageSpan } from "../stages/index.js";
import { type Dose, ledgerSum } from "../stock/index.js";
import { byText, given } from "../values.js";
import { canFills, fillsMl } from "./fills.js";

/** Plantings of one bed that share cans on one day: same route, same calcium or same fixed mL. */
export interface CanDemand {
  /** `day/bed/route/n`; sorts with the days. */
  readonly id: string;
  readonly day: Day;
  readonly bed: string;
  readonly route: Route;
  readonly waterL: number;
  readonly rate: DemandRate;
  readonly highestRateMlPerL: number;
  readonly feedings: readonly Feeding[];
  /** Given already, as the log has it. */
  readonly given?: GivenStock;
}

/** By strength: as many mL as bring the calcium. Fixed: the grower's own mL, whatever the strength. */
export type DemandRate =
  | { readonly kind: "by-strength"; readonly targetMgPerL: number }
  | { readonly kind: "fixed"; readonly mlPerL: number };

/** What a feeding needs to know of its planting. */
export interface PlantingContext {
  readonly crop: Crop;
  readonly spans: readonly StageSpan[];
  /** What signs multiply the rate by on a day; the rule's highest rate bounds it. */
  readonly signLevel: (day: Day, rule: FeedRule) => number;
  /** Signs seen on it that hold on a day, in order of their days. */
  readonly signsOn: (day: Day) => readonly SignOfFeeding[];
}

/** mL of stock per litre of water for a bottle of that strength, never above the rule's highest. */
export function rateFor(demand: CanDemand, strengthGPerL: number): number {
  const { rate, highestRateMlPerL } = demand;
  if (rate.kind === "fixed") return rate.mlPerL;
  return strengthGPerL > 0
    ? Math.min(rate.targetMgPerL / strengthGPerL, highestRateMlPerL)
    : highestRateMlPerL;
}

/**
 * mL of stock per litre of water where bottles of unlike strength are poured one after the other: the
 * last one brings what calcium the others have not, all of them together never above the rule's highest.
 */
export function rateAfter(demand: CanDemand, before: readonly Dose[], lastGPerL: number): number {
  const { waterL, rate, highestRateMlPerL } = demand;
  if (before.length === 0 || rate.kind === "fixed") return rateFor(demand, lastGPerL);
  const givenMl = totalOf(before.map(({ ml }) => ml));
  const broughtMg = totalOf(before.map(({ ml, strengthGPerL }) => ml * strengthGPerL));
  const openMg = Math.max(0, rate.targetMgPerL * waterL - broughtMg);
  const restMl = lastGPerL > 0 ? openMg / lastGPerL : Infinity;
  return Math.min((givenMl + restMl) / waterL, highestRateMlPerL);
}

/**
 * Its cans where the last bottle is poured after others: the ledger counts the same fills that the
 * round tells. Never less than is in the cans already: they are then filled to the next measure.
 */
export function fillsAfter(
  demand: CanDemand,
  before: readonly Dose[],
  lastGPerL: number,
  garden: Garden,
): CanFill[] {
  const givenMl = ledgerSum(before.map(({ ml }) => ml));
  let rateMlPerL = rateAfter(demand, before, lastGPerL);
  let fills = demandFills(demand, rateMlPerL, garden);
  while (givenMl > 0 && fillsMl(fills) <= givenMl) {
    rateMlPerL = Math.max(rateMlPerL, givenMl / demand.waterL) * 1.005;
    fills = demandFills(demand, rateMlPerL, garden);
  }
  return fills;
}

/** Its cans at a rate. */
export function demandFills(
  { route, waterL }: CanDemand,
  rateMlPerL: number,
  garden: Garden,
): CanFill[] {
  const { amounts } = garden;
  return canFills({ waterL, rateMlPerL, canL: vesselL(garden, route), amounts });
}

/**
 * In order of days; within a day in the order of the garden's beds, drenches first. What the log
 * holds keeps its own cans and its own millilitres.
 */
export function canDemands(
  garden: Garden,
  scheduled: readonly (ScheduledFeeding | LoggedFeeding)[],
  courses: readonly FeedingCourse[],
  contexts: ReadonlyMap<string, PlantingContext>,
): CanDemand[] {
  const byId = new Map(courses.map((course) => [course.course.id, course]));
  const numbers = new Map<string, number>();
  const groups = new Map<string, [Draft, ...Draft[]]>();
  for (const feeding of [...scheduled].sort((a, b) => byText(a.day, b.day))) {
    const course = byId.get(feeding.course);
    const context = course && contexts.get(course.planting.id);
    if (!course || !context) throw new Error(`no course ${feeding.course}`);
    const number = (numbers.get(feeding.course) ?? 0) + 1;
    numbers.set(feeding.course, number);
    const draft = draftOf(feeding, course, context, number);
    const { day, bed, route, rate, given } = draft;
    const logged = given && [given.stockMl === undefined, given.pours.map((pour) => pour.batch)];
    // Published cans stay together: shares of them have rates that differ by the last bits.
    const cans = given?.mix ?? rate;
    const key = JSON.stringify([day, bed, route, cans, logged, given?.asPublished]);
    const group = groups.get(key);
    if (group) group.push(draft);
    else groups.set(key, [draft]);
  }
  const bedOrder = new Map(garden.beds.map((bed, i) => [bed.id, i]));
  const order = (draft: Draft): number => bedOrder.get(draft.bed) ?? 0;
  // Within a bed the stronger mix first.
  const inOrderOfBeds = [...groups.values()].sort(
    ([a], [b]) =>
      byText(a.day, b.day) ||
      order(a) - order(b) ||
      byText(a.route, b.route) ||
      strengthOf(b.rate) - strengthOf(a.rate),
  );
  return numbered(inOrderOfBeds);
}

type Draft = Omit<CanDemand, "id" | "feedings"> & { readonly feeding: Feeding };

function draftOf(
  scheduled: ScheduledFeeding | LoggedFeeding,
  course: FeedingCourse,
  context: PlantingContext,
  number: number,
): Draft {
  const { day, window } = scheduled;
  const logged = "logged" in scheduled ? scheduled.logged : undefined;
  const { planting, route } = course;
  const rule = ruleOn(course, day);
  // A log may hold a feeding from before or after the life that is reckoned.
  const stage = stageNearest(context.spans, day);
  if (stage === undefined) throw new Error(`${planting.id} has no stage on ${day}`);
  const level = planting.level * context.signLevel(day, rule);
  const seen = context.signsOn(day);
  const waterL = logged?.waterL ?? feedingL(planting, route);
  const rate =
    logged?.stockMl === undefined || waterL === 0
      ? demandRate(planting, rule, level)
      : { kind: "fixed" as const, mlPerL: logged.stockMl / waterL };
  return {
    day,
    bed: planting.bed,
    route,
    waterL,
    rate,
    highestRateMlPerL: rule.highestRateMlPerL,
    ...given({ given: logged }),
    feeding: {
      planting: planting.id,
      name: planting.name,
      crop: context.crop.key,
      cropName: planting.cropWord,
      rule: rule.id,
      evidence: rule.evidence,
      disorder: rule.disorder,
      stage: stage.stage,
      stageOrigin: stage.origin,
      number,
      window,
      inWindow: window.earliest <= day && day <= window.latest,
      waterL,
      baseRateMlPerL: planting.rateMlPerL ?? rule.rateMlPerL,
      level,
      ...(seen.length === 0 ? {} : { signs: { seen, levelWithout: planting.level } }),
      ...(rate.kind === "by-strength" ? { targetMgPerL: rate.targetMgPerL } : {}),
    },
  };
}

function demandRate(planting: Planting, rule: FeedRule, level: number): DemandRate {
  return planting.rateMlPerL === undefined
    ? { kind: "by-strength", targetMgPerL: rule.calciumMgPerL * level }
    : { kind: "fixed", mlPerL: Math.min(planting.rateMlPerL * level, rule.highestRateMlPerL) };
}

function strengthOf(rate: DemandRate): number {
  return rate.kind === "fixed" ? rate.mlPerL : rate.targetMgPerL;
}

/** What several plantings got together. */
function givenTogether(parts: readonly GivenStock[]): GivenStock {
  const ml = new Map<string, number>();
  for (const { batch, ml: part } of parts.flatMap(({ pours }) => pours))
    ml.set(batch, (ml.get(batch) ?? 0) + part);
  const amounts = parts.flatMap(({ stockMl }) => stockMl ?? []);
  return {
    ...(amounts.length === 0 ? {} : { stockMl: totalOf(amounts) }),
    pours: [...ml].map(([batch, total]) => ({ batch, ml: withoutDust(total) })),
    ...given({ standsFor: parts.find(({ standsFor }) => standsFor !== undefined)?.standsFor }),
    ...(parts.every(({ asPublished }) => asPublished) ? { asPublished: true } : {}),
  };
}

function numbered(groups: readonly (readonly [Draft, ...Draft[]])[]): CanDemand[] {
  const counts = new Map<string, number>();
  return groups.map((drafts) => {
    const [{ day, bed, route, rate }] = drafts;
    const place = `${day}/${bed}/${route}`;
    const logged = drafts.flatMap((draft) => draft.given ?? []);
    const n = (counts.get(place) ?? 0) + 1;
    counts.set(place, n);
    return {
      id: `${place}/${n}`,
      day,
      bed,
      route,
      rate,
      ...(logged.length === 0 ? {} : { given: givenTogether(logged) }),
      highestRateMlPerL: Math.min(...drafts.map((draft) => draft.highestRateMlPerL)),
      waterL: totalOf(drafts.map((draft) => draft.waterL)),
      feedings: drafts.map((draft) => draft.feeding),
    };
  });
}
