/** The third step of a plan: what each bed needs, from which bottle, in which cans. */
// @ts-nocheck

import {
  assembleRounds,
  canDemands,
  otherFeedMixes,
  seasonStock,
  type StockSide,
} from "./cans/index.js";
import { addDays, type Day, eachDay, within } from "./dates.js";
import type { FeedingDays } from "./feeding-days.js";
import type { Garden } from "./garden/index.js";
import { asScheduled, type GivenFeeding } from "./log/index.js";
import type { PlantingNeed } from "./planting-needs.js";
import type { Finding, Result } from "./problem.js";
import type { Published, Renamed } from "./published/index.js";
import { type FeedRule, signLevel, signsHolding } from "./rules/index.js";
import type { Round, SignOfFeeding } from "./season/index.js";
import { lifeSpan } from "./stages/index.js";
import type { Standing, StockTables } from "./stock/index.js";

/** What was told before, and how the batches stand that were told. */
export interface Told {
  readonly published: Published | undefined;
  readonly renamed: readonly Renamed[];
  readonly standing: Standing;
}

interface PouredRounds {
  readonly rounds: readonly Round[];
  readonly stockSide: StockSide;
  /** Log entries that fit no course. */
  readonly strays: readonly GivenFeeding[];
}

export interface PouredDays extends PouredRounds {
  readonly days: FeedingDays;
  /** Rounds wait for stock until then. */
  readonly waitsUntil?: Day;
}

/** Rounds stay where they were chosen if the bottles don't reach as far as the days they are moved to. */
export function pouredAsFar(
  garden: Garden,
  needs: readonly PlantingNeed[],
  days: FeedingDays,
  told: Told,
  tables: StockTables,
  today: Day,
): Result<PouredDays, Finding> {
  const poured = pouredRounds(garden, needs, days, told, tables, today);
  if (!poured.ok) return poured;
  const { stayed } = days;
  if (stayed !== undefined) {
    const before = pouredRounds(garden, needs, stayed, told, tables, today);
    if (before.ok && takesMore(poured.value, before.value))
      return { ok: true, value: { ...before.value, days: stayed } };
  }
  return { ok: true, value: { ...poured.value, days } };
}

/**
 * A bottle broke, or is empty too soon: rounds wait for the next one where their windows let them,
 * and come late where they don't. Today's round stays as it was told.
 *
 * @param planned the rounds, without feedings on days on which there is nothing to pour
 */
export function onDaysWithStock(
  planned: (dryDays: readonly Day[]) => Result<PouredDays, Finding>,
  today: Day,
): Result<PouredDays, Finding> {
  const poured = planned([]);
  const waitsUntil = poured.ok ? nothingUntil(poured.value.stockSide, today) : undefined;
  if (waitsUntil === undefined) return poured;
  const dryDays = [...eachDay({ from: addDays(today, 1), to: addDays(waitsUntil, -1) })];
  const waiting = planned(dryDays);
  return waiting.ok ? { ok: true, value: { ...waiting.value, waitsUntil } } : waiting;
}

/** Less is as good as nothing. Our choice. */
const scrapMl = 10;

/** It turns on the bottles alone, not on the rounds, so that a plan made again is the same. */
function nothingUntil({ stock, soonest }: StockSide, today: Day): Day | undefined {
  const left = (stock.inHand ?? []).filter(({ useBy }) => useBy >= today);
  return left.some(({ leftMl }) => leftMl >= scrapMl) ? undefined : soonest;
}

/** More batches, or more that no bottle gives. */
function takesMore(one: PouredRounds, other: PouredRounds): boolean {
  const batches = ({ stockSide: { stock } }: PouredRounds): number => stock.making.batches.length;
  return missingMl(one) > missingMl(other) || batches(one) > batches(other);
}

/** In all rounds, what no bottle gives. */
function missingMl({ rounds }: PouredRounds): number {
  return rounds.reduce((sum, { shortMl = 0 }) => sum + shortMl, 0);
}

function pouredRounds(
  garden: Garden,
  needs: readonly PlantingNeed[],
  { courses, past, schedule, otherFeeds }: FeedingDays,
  { published, standing }: Told,
  tables: StockTables,
  today: Day,
): Result<PouredRounds, Finding> {
  const growing = new Map(needs.map(({ planting, life }) => [planting.id, lifeSpan(life.spans)]));
  const isGrowing = (planting: string, day: Day): boolean => {
    const span = growing.get(planting);
    return span !== undefined && within(day, span);
  };
  const contexts = new Map(
    needs.flatMap(({ planting, crop, life: { spans }, sightings }) => {
      if (crop === undefined) return [];
      const level = (day: Day, rule: FeedRule): number =>
        signLevel(sightings, planting, spans, day, rule);
      const seen = (day: Day): SignOfFeeding[] =>
        signsHolding(sightings, day).map(({ sign, seen: { on } }) => ({ name: sign.name, on }));
      return [[planting.id, { crop, spans, signLevel: level, signsOn: seen }] as const];
    }),
  );
  const { feedings, strays } = asScheduled(past.given, courses, isGrowing);
  const demands = canDemands(garden, [...feedings, ...schedule.feedings], courses, contexts);
  const toCome = demands.filter((demand) => demand.given === undefined);
  const stockSide = seasonStock(garden, toCome, past.taken, published, standing, tables, today);
  if (!stockSide.ok) return stockSide;
  const { pouredFor, tapCalcium } = stockSide.value;
  const feeds = otherFeedMixes(garden, otherFeeds, ({ id, transplanted }, day) => {
    const isInBed = transplanted === undefined || transplanted <= day;
    return isInBed && isGrowing(id, day);
  });
  const rounds = assembleRounds(garden, demands, pouredFor, tapCalcium, feeds);
  return { ok: true, value: { rounds, stockSide: stockSide.value, strays } };
}
