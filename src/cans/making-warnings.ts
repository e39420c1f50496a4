/** What the making plan has to warn of: rounds without stock, bottles filled on the day they are poured. */
import { type Amounts, counted, pouredText } from "../garden/index.js";
import type { PlanWarning } from "../season/index.js";
import { ledgerSum, type PlannedBatch, type Shortage } from "../stock/index.js";
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
    const ml = pouredText(ledgerSum(ofDay.map((shortage) => shortage.ml)), amounts);
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

/** Batches that are bottled on the day of their first feeding, where the grower wishes for days between. */
export function strainDayWarnings(
  batches: readonly PlannedBatch[],
  readyBeforeDays: number,
): PlanWarning[] {
  return batches
    .filter(({ readyOn, serves }) => readyBeforeDays > 0 && serves[0]?.day === readyOn)
    .map(({ id, readyOn }) => ({
      code: "strained-on-feeding-day",
      day: readyOn,
      message: `${id} is bottled on ${readyOn}, the day it is first poured: no earlier day does without another batch, more stock thrown away, or days that are past`,
      mend: "strain it before the round; if the batch is late, the round waits for it",
    }));
}
