/** The log entries that write down a planned round as given. */
// @ts-nocheck

import type { Day } from "../dates.js";
import {
  type Amounts,
  decimal,
  mlPerTeaspoon,
  type NewLogEntry,
  type Route,
  totalOf,
} from "../garden/index.js";
import type { PublishedRound } from "../published/index.js";
import { type CanMix, mixesOf, type Plan } from "../season/index.js";
import { ledgerMl } from "../stock/index.js";
import { given } from "../values.js";

/** Written amounts are in the coarsest of these steps in which shares add up to what the cans pour. */
const coarseMl = 0.1;
const fineMl = 0.01;

/**
 * One entry for each planting that the plan feeds on a day and that the log does not hold yet, with
 * its share of the stock by water, and one more where it is poured from a second bottle. Without a
 * batch where the plan has no bottle for it.
 *
 * @param of only a planting, or the plantings of a bed
 */
export function entriesOfDay(
  plan: Plan,
  day: Day,
  of: { readonly planting?: string; readonly bed?: string } = {},
): NewLogEntry[] {
  const beds = plan.rounds.find((round) => round.day === day)?.beds ?? [];
  const bothWays = fedBothWays(plan);
  return beds
    .filter(({ bed }) => of.bed === undefined || bed === of.bed)
    .flatMap(({ mixes }) => mixes.filter(isOpen))
    .flatMap((mix) => shares(mix).map((share) => ({ ...share, route: mix.route })))
    .filter(({ planting }) => of.planting === undefined || planting === of.planting)
    .map((share) => entryOf(share, day, plan, bothWays));
}

/** The same of a published round, which no plan holds any more. */
export function entriesOfPublished(
  plan: Plan,
  { day, mixes }: PublishedRound,
  bed: string,
): NewLogEntry[] {
  const bothWays = fedBothWays(plan);
  return mixes
    .filter((mix) => mix.bed === bed)
    .flatMap(({ fed, pours, route }) => {
      const stockMl = totalOf(pours.map(({ ml }) => ml));
      const known = pours.flatMap(({ batch, ml }) => (batch === undefined ? [] : [{ batch, ml }]));
      return shares({ stockMl, pours: known, feedings: fed }).map((share) => ({ ...share, route }));
    })
    .map((share) => entryOf(share, day, plan, bothWays));
}

function entryOf(
  { planting, ml, batch, route }: Share & { readonly route: Route },
  on: Day,
  { garden }: Plan,
  bothWays: ReadonlySet<string>,
): NewLogEntry {
  const stock = written(ml, garden.amounts);
  return { on, planting, stock, ...given({ batch }), ...(bothWays.has(planting) ? { route } : {}) };
}

/** In the garden's own measures, in as few figures as the ledger reads the same mL from. */
function written(ml: number, amounts: Amounts): string {
  if (amounts !== "us") return `${decimal(ml, 2)} mL`;
  const figures = [2, 3].map((places) => decimal(ml / mlPerTeaspoon, places));
  const [short = "", exact] = figures;
  return `${ledgerMl(Number(short) * mlPerTeaspoon) === ledgerMl(ml) ? short : exact} tsp`;
}

/** Nobody has written it down. */
export function isOpen({
  given: isGiven,
  asPublished,
}: Pick<CanMix, "given" | "asPublished">): boolean {
  return isGiven === undefined || asPublished === true;
}

interface Share {
  readonly planting: string;
  readonly ml: number;
  readonly batch?: string;
}

type Poured = Pick<CanMix, "stockMl"> & {
  readonly pours?: readonly { readonly batch: string; readonly ml: number }[];
  readonly feedings: readonly { readonly planting: string; readonly waterL: number }[];
};

/** Who got how much from which bottle: bottles are poured in their order, plantings served in theirs. */
function shares(mix: Poured): Share[] {
  const pours = mix.pours ?? [];
  const stepMl = coarsestStep([mix.stockMl, ...pours.map(({ ml }) => ml)]);
  const total = Math.round(mix.stockMl / stepMl);
  const parts = apportioned(
    total,
    mix.feedings.map(({ waterL }) => waterL),
  );
  const bottles = pours.map(({ batch, ml }) => ({ batch, steps: Math.round(ml / stepMl) }));
  return mix.feedings.flatMap(({ planting }, i): Share[] => {
    const taken: Share[] = [];
    for (let left = parts[i] ?? 0; left > 0;) {
      const bottle = bottles.find(({ steps }) => steps > 0);
      const steps = Math.min(left, bottle?.steps ?? left);
      if (bottle !== undefined) bottle.steps -= steps;
      left -= steps;
      const batch = bottle === undefined ? {} : { batch: bottle.batch };
      taken.push({ planting, ml: steps * stepMl, ...batch });
    }
    return taken;
  });
}

function coarsestStep(amountsMl: readonly number[]): number {
  const isWhole = (steps: number): boolean => Math.abs(steps - Math.round(steps)) < 1e-6;
  return amountsMl.every((ml) => isWhole(ml / coarseMl)) ? coarseMl : fineMl;
}

/** Whole parts in proportion to the weights that add up to the total: largest remainders go up. */
function apportioned(total: number, weights: readonly number[]): number[] {
  const sum = weights.reduce((a, b) => a + b, 0);
  const exact = weights.map((w) => (sum === 0 ? total / weights.length : (total * w) / sum));
  const parts = exact.map(Math.floor);
  const missing = total - parts.reduce((a, b) => a + b, 0);
  const byRemainder = exact
    .map((e, i) => ({ i, rest: e - Math.floor(e) }))
    .sort((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of byRemainder.slice(0, missing)) parts[i] = (parts[i] ?? 0) + 1;
  return parts;
}

/** Plantings fed by more than one route, whose entries name theirs. */
function fedBothWays(plan: Plan): ReadonlySet<string> {
  const routeOf = new Map<string, Route>();
  const both = new Set<string>();
  for (const { route, feedings } of mixesOf(plan.rounds))
    for (const { planting } of feedings) {
      if ((routeOf.get(planting) ?? route) !== route) both.add(planting);
      routeOf.set(planting, route);
    }
  return both;
}
