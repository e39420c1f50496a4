/** Feedings for which there will be no stock, told once a round. */
import { type Amounts, counted, stockText } from "../garden/index.js";
import type { PlanWarning } from "../season/index.js";
import { ledgerSum, type Shortage } from "../stock/index.js";
import { given, grouped } from "../values.js";
import type { CanDemand } from "./demands.js";

/** One for each round: how many beds, how many mL, why, and what helps. */
export function shortageWarnings(
  shortages: readonly Shortage[],
  demands: readonly CanDemand[],
  amounts: Amounts,
): PlanWarning[] {
  const bedOf = new Map(demands.map(({ id, bed }) => [id, bed]));
  return [...grouped(shortages, ({ day }) => day)].map(([day, ofDay]): PlanWarning => {
    // All feedings of a day lack stock for one reason: it turns on the day alone.
    const [{ reason, why, mend }] = ofDay;
    const beds = [...new Set(ofDay.map(({ need }) => bedOf.get(need)))];
    const ml = stockText(ledgerSum(ofDay.map((shortage) => shortage.ml)), amounts);
    const lack = beds.length === 1 ? "1 bed lacks" : `${counted(beds.length, "bed")} lack`;
    return {
      code: `stock-short-${reason}`,
      day,
      ...given({ bed: beds.length === 1 ? beds[0] : undefined }),
      message: `too little stock on ${day}, ${lack} ${ml}: ${why}`,
      mend,
    };
  });
}
