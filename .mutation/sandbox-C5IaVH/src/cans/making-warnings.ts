/** What the making plan has to warn of: rounds without stock, late bottles, strong acid. */
// @ts-nocheck

import {
  type Amounts,
  counted,
  decimal,
  type Garden,
  pouredText,
  shortDay,
} from "../garden/index.js";
import type { PlanWarning } from "../season/index.js";
import { type Chemistry, ledgerSum, type PlannedBatch, type Shortage } from "../stock/index.js";
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
      message: `too little stock on ${shortDay(day, amounts)}, ${lack} ${ml}: ${why}`,
      mend,
    };
  });
}

/** One line for all batches that are bottled on the day of their first feeding, where days between are wished for. */
export function strainDayWarnings(
  batches: readonly PlannedBatch[],
  readyBeforeDays: number,
  amounts: Amounts,
): PlanWarning[] {
  const onTheDay = batches.filter(
    ({ readyOn, serves }) => readyBeforeDays > 0 && serves[0]?.day === readyOn,
  );
  if (onTheDay.length === 0) return [];
  const days = onTheDay.map(({ readyOn }) => shortDay(readyOn, amounts));
  return [
    {
      code: "strained-on-feeding-day",
      message: `stock is bottled on the day it is first poured, on ${days.join(", ")}: an earlier day would take another batch, throw more away, or is past`,
      mend: "strain it before the round; where a batch is late, let the round wait for it",
    },
  ];
}

export function strongAcidWarnings(
  { stock: { acid, vinegarPercent } }: Garden,
  { kitchen }: Chemistry,
): PlanWarning[] {
  const most = kitchen.vinegarKitchenPercent.value;
  if (acid !== "vinegar" || vinegarPercent <= most) return [];
  return [
    {
      code: "strong-acid",
      message: `vinegar of ${decimal(vinegarPercent, 1)} % burns skin and eyes; above ${most} % it is not for kitchens`,
      mend: "buy it weaker, or work outdoors with gloves and goggles",
    },
  ];
}
