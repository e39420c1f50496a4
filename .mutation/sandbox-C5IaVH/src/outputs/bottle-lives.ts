/** Bottles and batches through the season, and how much stock there is on each day. */
// @ts-nocheck

import { addDays, type Day, later } from "../dates.js";
import type { Plan, SeasonStock, StrainedWhite } from "../season/index.js";
import type { PlannedBatch } from "../stock/index.js";
import { byText, given } from "../values.js";

/** In hand first, then in the order they will be ready. */
export interface BottleLife {
  readonly id: string;
  readonly planned: boolean;
  /** For batches to make. */
  readonly batch?: PlannedBatch;
  /** Shells set out to dry; for batches to make. */
  readonly startOn?: Day;
  /** Strained; absent where it is not known. */
  readonly readyOn?: Day;
  /** Absent for a bottle in hand of which only the amount is known. */
  readonly useBy?: Day;
  readonly volumeMl: number;
  readonly strengthGPerL?: number;
  /** What the strength rests on. */
  readonly white?: StrainedWhite;
}

export function bottleLives({ making, inHand = [], newWhite }: SeasonStock): readonly BottleLife[] {
  const old = making.account
    .filter(({ planned }) => !planned)
    .map(({ batch, openingMl }): BottleLife => {
      const bottle = inHand.find(({ id }) => id === batch);
      return {
        id: batch,
        planned: false,
        volumeMl: openingMl,
        ...(bottle && {
          readyOn: bottle.madeOn,
          useBy: bottle.useBy,
          strengthGPerL: bottle.strengthGPerL,
          ...given({ white: bottle.white }),
        }),
      };
    });
  const white = given({ white: newWhite });
  return [...old, ...making.batches.map((batch) => ({ ...batch, planned: true, batch, ...white }))];
}

/** Whether there is, or will be, any stock at all. */
export function hasBottles({ stock }: Plan): boolean {
  return stock !== undefined && stock.making.account.length > 0;
}

/** So much stock from this day on, until the next step. */
export interface StockStep {
  readonly from: Day;
  readonly ml: number;
}

/**
 * Stock on hand at the end of each day on which it changes, beginning with the first day: made,
 * given, and no longer to be used the day after its last. Of the past it knows what left a bottle
 * by a round, so that a bottle held no less than is shown.
 */
export function stockSteps(plan: Plan, first: Day): readonly StockStep[] {
  if (plan.stock === undefined) return [{ from: first, ml: 0 }];
  const { making, inHand = [] } = plan.stock;
  const changes = new Map<Day, number>([[first, 0]]);
  const change = (on: Day, ml: number) => {
    const day = later(on, first);
    changes.set(day, (changes.get(day) ?? 0) + ml);
  };
  const madeOn = new Map(inHand.map((bottle) => [bottle.id, bottle.madeOn]));
  for (const { batch, openingMl } of making.account) change(madeOn.get(batch) ?? first, openingMl);
  for (const { day, beds } of plan.rounds)
    for (const { given: isPast, pours = [] } of beds.flatMap(({ mixes }) => mixes))
      for (const { batch, ml } of isPast === true ? pours : []) {
        const made = madeOn.get(batch);
        if (made === undefined) continue;
        change(made, ml);
        change(day, -ml);
      }
  for (const batch of making.batches) change(batch.readyOn, batch.volumeMl);
  for (const draw of making.draws) change(draw.day, -draw.ml);
  for (const discard of making.discards) change(addDays(discard.useUpBy, 1), -discard.ml);
  let ml = 0;
  return [...changes]
    .sort(([a], [b]) => byText(a, b))
    .map(([from, by]) => {
      ml += by;
      return { from, ml: Math.max(0, ml) };
    });
}
