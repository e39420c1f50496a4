/** Small random making problems and an independent judge of plans, for the tests of the making plan. */
// @ts-nocheck

import fc from "fast-check";
import type { BatchSlot } from "../../../src/stock/making/batches-days.js";
import type { BatchChoice, BatchLimits, Demand } from "../../../src/stock/making/batches-fewest.js";

/** A grower's usual way, for problems that do not turn on it. */
export const usualMaking = {
  dryDays: 2,
  reactionDays: 2,
  longestStandDays: 14,
  shelfLifeDays: 14,
  readyBeforeDays: 0,
  largestMl: 1000,
  smallestMl: 250,
  stepMl: 10,
  stepShare: 0.01,
  bottleMl: 500,
  strengthGPerL: 20,
};

export interface Case {
  readonly demands: readonly Demand[];
  readonly slots: readonly BatchSlot[];
  readonly limits: BatchLimits;
}

/** Slots of a grower who is there on some days only; demands on days that a slot can serve. */
export function caseOf(size: {
  days: number;
  slots: number;
  demands: number;
  mostMl: number;
  largestMl: number;
  shells: boolean;
}): fc.Arbitrary<Case> {
  return fc
    .record({
      ready: fc.uniqueArray(fc.integer({ min: 4, max: size.days }), {
        minLength: 1,
        maxLength: size.slots,
      }),
      waits: fc.array(fc.integer({ min: 0, max: 3 }), {
        minLength: size.slots,
        maxLength: size.slots,
      }),
      demands: fc.array(
        fc.record({
          day: fc.integer({ min: 4, max: size.days }),
          ml: fc.integer({ min: 1, max: 4 * size.mostMl }).map((quarters) => quarters / 4),
        }),
        { maxLength: size.demands },
      ),
      shelfLifeDays: fc.integer({ min: 1, max: 8 }),
      largestMl: fc.integer({ min: 10, max: size.largestMl }),
      readyBeforeDays: fc.integer({ min: 0, max: 5 }),
      smallestMl: fc.integer({ min: 1, max: 20 }),
      perDayMl: fc.integer({ min: 1, max: 12 }),
    })
    .map(({ ready, waits, demands, largestMl, smallestMl, perDayMl, ...kept }) => {
      const { shelfLifeDays } = kept;
      const days = [...ready].sort((a, b) => a - b);
      const slots: BatchSlot[] = [];
      for (const [i, r] of days.entries()) {
        const start = Math.max(slots.at(-1)?.start ?? 0, r - 1 - (waits[i] ?? 0));
        slots.push({ start, acid: start, ready: r });
      }
      const volumeBy = (start: number): number => (start + 2) * perDayMl;
      return {
        slots,
        demands: demands
          .filter(({ day }) => slots.some((s) => s.ready <= day && day <= s.ready + shelfLifeDays))
          .sort((a, b) => a.day - b.day),
        limits: {
          ...kept,
          largestMl,
          smallestMl: Math.min(smallestMl, largestMl),
          stepMl: 10,
          ...(size.shells ? { volumeBy } : {}),
        },
      };
    });
}

/** How many mL from the first on these batches cover, poured earliest use-by first; stops at the first loss. */
export function coveredMl(batches: readonly BatchChoice[], c: Case): number {
  return pour(batches, c).covered;
}

/** Days missing of those wished before the first demand of each batch, those ready together in order. */
export function missingDaysOf(batches: readonly BatchChoice[], c: Case): number {
  return pour(batches, c).missingDays;
}

/**
 * Days missing of those wished before the first demand of each batch, and how often a demand is poured
 * from one batch and then another: the least, batches ready together being poured in any order.
 */
export function pouringOf(
  batches: readonly BatchChoice[],
  c: Case,
): { missingDays: number; splits: number } {
  const ways = everyOrder(batches).map((order) => pour(order, c));
  ways.sort((a, b) => a.missingDays - b.missingDays || a.splits - b.splits);
  const { missingDays = 0, splits = 0 } = ways[0] ?? {};
  return { missingDays, splits };
}

function everyOrder(batches: readonly BatchChoice[]): BatchChoice[][] {
  if (batches.length === 0) return [[]];
  return batches.flatMap((first, i) =>
    everyOrder(batches.filter((_, j) => j !== i)).map((rest) => [first, ...rest]),
  );
}

function pour(
  batches: readonly BatchChoice[],
  c: Case,
): { covered: number; splits: number; missingDays: number } {
  const left = [...batches]
    .sort((a, b) => a.slot.ready - b.slot.ready)
    .map((b) => ({ ready: b.slot.ready, ml: b.volumeMl, isOpen: false }));
  let covered = 0;
  let splits = 0;
  let missingDays = 0;
  for (const demand of c.demands) {
    let wanted = demand.ml;
    let pourings = 0;
    for (const b of left) {
      if (b.ready > demand.day || demand.day > b.ready + c.limits.shelfLifeDays) continue;
      const taken = Math.min(wanted, b.ml);
      b.ml -= taken;
      wanted -= taken;
      covered += taken;
      if (taken === 0) continue;
      pourings++;
      if (!b.isOpen) missingDays += Math.max(0, c.limits.readyBeforeDays - (demand.day - b.ready));
      b.isOpen = true;
    }
    splits += Math.max(0, pourings - 1);
    if (wanted > 0) break;
  }
  return { covered, splits, missingDays };
}

export function keepsToShells(batches: readonly BatchChoice[], c: Case): boolean {
  const { volumeBy } = c.limits;
  if (volumeBy === undefined) return true;
  return batches.every(({ slot }) => {
    const until = batches.filter((b) => b.slot.start <= slot.start);
    return sumMl(until) <= volumeBy(slot.start);
  });
}

export function sumMl(batches: readonly BatchChoice[]): number {
  return batches.reduce((sum, b) => sum + b.volumeMl, 0);
}

export function demandedMl(c: Case): number {
  return c.demands.reduce((sum, d) => sum + d.ml, 0);
}

/** Start (or ready) days, first to last, as one text that sorts as they do. */
export function daysText(batches: readonly BatchChoice[], visit: "start" | "ready"): string {
  return batches
    .map((b) => b.slot[visit])
    .sort((a, b) => a - b)
    .map((n) => String(n).padStart(4, "0"))
    .join(" ");
}
