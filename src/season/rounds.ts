/** Rounds taken together: their mixes, their totals, and a plan with those of some days alone. */
import { addDays, type Day } from "../dates.js";
import { type Route, totalOf } from "../garden/index.js";
import type { CanMix, Plan, PlanTotals, PlanWarning, Round } from "./season-plan.js";

export function mixesOf(rounds: readonly Round[]): CanMix[] {
  return rounds.flatMap((round) => round.beds.flatMap((bed) => bed.mixes));
}

interface Fed {
  readonly day: Day;
  readonly route: Route;
  readonly given: boolean;
}

/** By planting: each one of a large garden asks. */
const fedIn = new WeakMap<readonly Round[], ReadonlyMap<string, readonly Fed[]>>();

/** The days on which a planting is fed, by one route or any; those that are given already left out or not. */
export function feedingDaysOf(
  rounds: readonly Round[],
  planting: string,
  route?: Route,
  which: "all" | "to-come" = "all",
): Day[] {
  const byPlanting = fedIn.get(rounds) ?? fedByPlanting(rounds);
  fedIn.set(rounds, byPlanting);
  const days = (byPlanting.get(planting) ?? [])
    .filter((fed) => route === undefined || fed.route === route)
    .filter((fed) => which === "all" || !fed.given)
    .map(({ day }) => day);
  return [...new Set(days)];
}

function fedByPlanting(rounds: readonly Round[]): ReadonlyMap<string, readonly Fed[]> {
  const byPlanting = new Map<string, Fed[]>();
  for (const { day, beds } of rounds)
    for (const { route, given = false, feedings } of beds.flatMap(({ mixes }) => mixes))
      for (const { planting } of feedings) {
        const fed = byPlanting.get(planting) ?? [];
        byPlanting.set(planting, fed);
        fed.push({ day, route, given });
      }
  return byPlanting;
}

export function seasonTotals(rounds: readonly Round[]): PlanTotals {
  const mixes = mixesOf(rounds);
  return {
    rounds: rounds.length,
    feedings: mixes.reduce((count, mix) => count + mix.feedings.length, 0),
    waterL: totalOf(mixes.map((mix) => mix.waterL)),
    stockMl: totalOf(mixes.map((mix) => mix.stockMl)),
  };
}

/** The day on which a warning is told; none where it is of the whole season. */
export function toldOn({ day, tellOn }: PlanWarning): Day | undefined {
  return tellOn ?? day;
}

/** Our choice: as far ahead as a grower arranges the days. The page's script has the same. */
export const soonDays = 14;

/** Whether a warning concerns the next two weeks. */
export function isSoon(warning: PlanWarning, today: Day): boolean {
  const day = toldOn(warning);
  return day !== undefined && day >= today && day <= addDays(today, soonDays);
}

/** In the log; what nobody wrote down is still to be ticked. */
export function isWrittenDown({
  given,
  asPublished,
}: Pick<Round, "given" | "asPublished">): boolean {
  return given === true && asPublished === undefined;
}

/** The plan with only the rounds, and the warnings, of some of its days; both ends count. */
export function planBetween(plan: Plan, from?: Day, to?: Day): Plan {
  const isWanted = (day: Day | undefined): boolean =>
    day === undefined || ((from === undefined || day >= from) && (to === undefined || day <= to));
  const rounds = plan.rounds.filter((round) => isWanted(round.day));
  return {
    ...plan,
    rounds,
    warnings: plan.warnings.filter((warning) => isWanted(warning.day)),
    totals: seasonTotals(rounds),
  };
}
