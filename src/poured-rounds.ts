/** The third step of a plan: what each bed needs, from which bottle, in which cans. */
import {
  assembleRounds,
  canDemands,
  otherFeedMixes,
  seasonStock,
  type StockSide,
} from "./cans/index.js";
import { type Day, within } from "./dates.js";
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

export interface PouredRounds {
  readonly rounds: readonly Round[];
  readonly stockSide: StockSide;
  /** Log entries that fit no course. */
  readonly strays: readonly GivenFeeding[];
}

interface PouredDays extends PouredRounds {
  readonly days: FeedingDays;
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

/** More batches, or more that no bottle gives. */
function takesMore(one: PouredRounds, other: PouredRounds): boolean {
  const missingMl = ({ rounds }: PouredRounds): number =>
    rounds.reduce((sum, { shortMl = 0 }) => sum + shortMl, 0);
  const batches = ({ stockSide: { stock } }: PouredRounds): number => stock.making.batches.length;
  return missingMl(one) > missingMl(other) || batches(one) > batches(other);
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
