/** An amount of stock so far beyond the plan that it is a slip of the unit sooner than meant. */
import { type Amounts, pouredText } from "../garden/index.js";
import { entriesOfDay, fedDays, type WhatOf } from "../log/index.js";
import type { Published } from "../published/index.js";
import type { Plan } from "../season/index.js";

/** Our choice: more than a strong feeding, less than litres for millilitres or spoons for drops. */
const mostTimes = 5;

/** What is odd about it, in words; undefined where nothing is, or no plan tells. */
export function farBeyond(
  ml: number | undefined,
  plannedMl: number,
  amounts: Amounts,
): string | undefined {
  if (ml === undefined || plannedMl <= 0 || ml <= mostTimes * plannedMl) return undefined;
  const [poured, planned] = [ml, plannedMl].map((one) => pouredText(one, amounts));
  return `${poured} is ${Math.round(ml / plannedMl)} times the ${planned} that the plan gives at most on a day`;
}

/**
 * The most that a plan gives on one of its days that nobody has written down, in mL.
 *
 * @param mlOf reads an amount as the garden has it
 */
export function mostPlannedMl(
  plan: Plan,
  of: WhatOf,
  mlOf: (stock: string) => number | undefined,
): number {
  return Math.max(
    0,
    ...fedDays(plan, of).map(({ day }) =>
      entriesOfDay(plan, day, of).reduce((sum, { stock = "" }) => sum + (mlOf(stock) ?? 0), 0),
    ),
  );
}

/** The most that a published round has poured for a bed, in mL. */
export function mostPublishedMl({ rounds }: Published, bed: string): number {
  return Math.max(
    0,
    ...rounds.map(({ mixes }) =>
      mixes
        .filter((mix) => mix.bed === bed)
        .flatMap(({ pours }) => pours)
        .reduce((sum, { ml }) => sum + ml, 0),
    ),
  );
}
