/** The log entries that write down a planned round as given. */
import type { Day } from "../dates.js";
import { type Amounts, decimal, mlPerTeaspoon, type NewLogEntry } from "../garden/index.js";
import type { CanMix, Plan, Pour } from "../season/index.js";
import { given } from "../values.js";

/** How an amount is written, and in which steps, so that shares of a can add up to it. */
interface Written {
  readonly stepMl: number;
  readonly text: (ml: number) => string;
}

const inMl: Written = { stepMl: 0.1, text: (ml) => `${decimal(ml, 1)} mL` };
const written: Readonly<Record<Amounts, Written>> = {
  metric: inMl,
  imperial: inMl,
  us: { stepMl: mlPerTeaspoon / 100, text: (ml) => `${decimal(ml / mlPerTeaspoon, 2)} tsp` },
};

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
  const { stepMl, text } = written[plan.garden.amounts];
  const beds = plan.rounds.find((round) => round.day === day)?.beds ?? [];
  return beds
    .filter(({ bed }) => of.bed === undefined || bed === of.bed)
    .flatMap(({ mixes }) => mixes.filter((mix) => !mix.given))
    .flatMap((mix) => shares(mix, stepMl).map((share) => ({ ...share, route: mix.route })))
    .filter(({ planting }) => of.planting === undefined || planting === of.planting)
    .map(({ planting, ml, batch, route }) => ({
      on: day,
      planting,
      stock: text(ml),
      ...given({ batch }),
      ...(isFedBothWays(plan, planting) ? { route } : {}),
    }));
}

interface Share {
  readonly planting: string;
  readonly ml: number;
  readonly batch?: string;
}

/** Who got how much from which bottle: bottles are poured in their order, plantings served in theirs. */
function shares(mix: CanMix, stepMl: number): Share[] {
  const total = Math.round(mix.stockMl / stepMl);
  const parts = apportioned(
    total,
    mix.feedings.map(({ waterL }) => waterL),
  );
  const bottles = bottleSteps(mix.pours ?? [], total, stepMl);
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

/** What each bottle gives, in steps; pours that differ from the cans by rounding alone are made to fit. */
function bottleSteps(
  pours: readonly Pour[],
  total: number,
  stepMl: number,
): { readonly batch: string; steps: number }[] {
  const pouredMl = pours.reduce((sum, { ml }) => sum + ml, 0);
  const isAll = Math.abs(pouredMl - total * stepMl) <= 1;
  const steps = isAll
    ? apportioned(
        total,
        pours.map(({ ml }) => ml),
      )
    : pours.map(({ ml }) => Math.round(ml / stepMl));
  return pours.map(({ batch }, i) => ({ batch, steps: steps[i] ?? 0 }));
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

function isFedBothWays(plan: Plan, planting: string): boolean {
  const routes = plan.rounds
    .flatMap((round) => round.beds.flatMap((bed) => bed.mixes))
    .filter((mix) => mix.feedings.some((feeding) => feeding.planting === planting))
    .map((mix) => mix.route);
  return new Set(routes).size > 1;
}
