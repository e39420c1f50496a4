/** Which feeding is poured from which bottle, and what becomes of every millilitre. */
// @ts-nocheck

import type { Day, DaySpan } from "../../dates.js";
import { byText, given } from "../../values.js";
import type {
  AccountLine,
  BottleChange,
  Discard,
  Dose,
  DoseRule,
  Draw,
  StockBottle,
  StockNeed,
} from "../making-problem.js";

/**
 * Nearest 0.01 mL, halves up: the ledger counts whole hundredths. Each sum and difference goes
 * through it, so that no dust of binary fractions gathers and the books close exactly.
 */
export function ledgerMl(ml: number): number {
  return Math.round(ml * 100 + 1e-6) / 100;
}

/** Amounts together, in whole hundredths. */
export function ledgerSum(amountsMl: readonly number[]): number {
  return ledgerMl(amountsMl.reduce((sum, ml) => sum + ml, 0));
}

/**
 * Stock that brings the calcium which other bottles have not brought, where no cans are known that
 * round it: whole mL, at least 1 from the first, with theirs at most the need's `mostMl`; 0 where no
 * calcium is needed. A bottle too weak for the target gives all that `mostMl` leaves.
 */
export function doseMl(
  need: StockNeed,
  strengthGPerL: number,
  before: readonly Dose[] = [],
): number {
  const openMl = before.reduce((ml, dose) => ml - dose.ml, need.mostMl);
  const openMg = before.reduce((mg, dose) => mg - dose.ml * dose.strengthGPerL, need.calciumMg);
  if (openMg <= 0 || openMl < 1) return 0;
  const wanted = strengthGPerL > 0 ? openMg / strengthGPerL : Infinity;
  return wanted >= openMl
    ? Math.floor(openMl)
    : Math.max(before.length === 0 ? 1 : 0, Math.round(wanted));
}

/** By day, then id, whatever order they came in. */
export function needsInOrder(needs: readonly StockNeed[]): StockNeed[] {
  return [...needs].sort(
    (a, b) =>
      byText(a.day, b.day) ||
      byText(a.id, b.id) ||
      a.calciumMg - b.calciumMg ||
      a.mostMl - b.mostMl,
  );
}

/** Earliest use-by first, ties by id. */
export function bottlesInOrder<B extends Pick<StockBottle, "id" | "useBy">>(
  bottles: readonly B[],
): B[] {
  return [...bottles].sort((a, b) => byText(a.useBy, b.useBy) || byText(a.id, b.id));
}

/** A need that bottles could not give all of, with what they gave. */
export interface OpenNeed {
  readonly need: StockNeed;
  readonly before: readonly Dose[];
}

/** Pours every need, in order, from the first bottle in order that is ready, in date and not empty. */
export function drawDown(
  bottles: readonly StockBottle[],
  needs: readonly StockNeed[],
  mlFor: DoseRule,
): { draws: Draw[]; open: OpenNeed[] } {
  const left = bottles.map(filled);
  const draws: Draw[] = [];
  const open: OpenNeed[] = [];
  for (const need of needs) {
    const before: Draw[] = [];
    let isServed = false;
    for (const [index, bottle] of bottles.entries()) {
      const leftMl = left[index] ?? 0;
      if (leftMl === 0 || need.day < bottle.readyOn || need.day > bottle.useBy) continue;
      const wantedMl = mlFor(need, bottle.strengthGPerL, before);
      const ml = Math.min(wantedMl, leftMl);
      if (ml > 0) before.push(drawOf(need, bottle, ml));
      left[index] = ledgerMl(leftMl - ml);
      isServed = ml === wantedMl;
      if (isServed) break;
    }
    draws.push(...before);
    if (!isServed) open.push({ need, before });
  }
  return { draws, open };
}

function drawOf(need: StockNeed, bottle: StockBottle, ml: number): Draw {
  return {
    need: need.id,
    day: need.day,
    batch: bottle.id,
    ml,
    strengthGPerL: bottle.strengthGPerL,
    calciumMg: ml * bottle.strengthGPerL,
  };
}

/**
 * Where the bottle poured from is another than just before.
 *
 * @param last the bottle poured from before the first draw
 */
export function bottleChanges(
  draws: readonly Draw[],
  last?: Pick<StockBottle, "id" | "strengthGPerL">,
): BottleChange[] {
  const changes: BottleChange[] = [];
  let [from, wasGPerL] = [last?.id, last?.strengthGPerL];
  for (const { day, need, batch: to, strengthGPerL } of draws) {
    if (to !== from) changes.push({ day, need, ...given({ from, wasGPerL }), to, strengthGPerL });
    [from, wasGPerL] = [to, strengthGPerL];
  }
  return changes;
}

/**
 * The books at the end of the season: what is left of a bottle on its use-by day is thrown away,
 * a bottle that keeps beyond the season stays.
 *
 * @param firstDayThere the first day from then on that the grower is there
 */
export function closeBooks(
  inHand: readonly StockBottle[],
  planned: readonly StockBottle[],
  draws: readonly Draw[],
  when: { readonly today: Day; readonly season: DaySpan },
  firstDayThere: (from: Day) => Day,
): { account: AccountLine[]; discards: Discard[] } {
  const given = new Map<string, number>();
  for (const d of draws) given.set(d.batch, ledgerSum([given.get(d.batch) ?? 0, d.ml]));
  const discards: Discard[] = [];
  const lineOf = (bottle: StockBottle, isPlanned: boolean): AccountLine => {
    const filledMl = filled(bottle);
    const givenMl = given.get(bottle.id) ?? 0;
    const leftMl = ledgerMl(filledMl - givenMl);
    const stays = bottle.useBy > when.season.to && bottle.useBy >= when.today;
    if (leftMl > 0 && !stays) {
      const { id: batch, useBy: useUpBy } = bottle;
      discards.push({ batch, useUpBy, doOn: firstDayThere(useUpBy), ml: leftMl });
    }
    return {
      batch: bottle.id,
      planned: isPlanned,
      openingMl: isPlanned ? 0 : filledMl,
      madeMl: isPlanned ? filledMl : 0,
      givenMl,
      thrownAwayMl: stays ? 0 : leftMl,
      closingMl: stays ? leftMl : 0,
    };
  };
  const account = [
    ...inHand.map((bottle) => lineOf(bottle, false)),
    ...planned.map((bottle) => lineOf(bottle, true)),
  ];
  discards.sort((a, b) => byText(a.useUpBy, b.useUpBy) || byText(a.batch, b.batch));
  return { account, discards };
}

function filled(bottle: StockBottle): number {
  return Math.max(0, ledgerMl(bottle.leftMl));
}
