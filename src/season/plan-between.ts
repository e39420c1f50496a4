import type { Day } from "../dates.js";
import type { Plan } from "./season-plan.js";
import { seasonTotals } from "./totals.js";

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
