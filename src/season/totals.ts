import { totalOf } from "../garden/index.js";
import type { PlanTotals, Round } from "./season-plan.js";

export function seasonTotals(rounds: readonly Round[]): PlanTotals {
  const mixes = rounds.flatMap((round) => round.beds.flatMap((bed) => bed.mixes));
  return {
    rounds: rounds.length,
    feedings: mixes.reduce((count, mix) => count + mix.feedings.length, 0),
    waterL: totalOf(mixes.map((mix) => mix.waterL)),
    stockMl: totalOf(mixes.map((mix) => mix.stockMl)),
  };
}
