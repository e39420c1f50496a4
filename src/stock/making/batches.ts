/** The stock of a season: bottles in hand first, then the fewest batches, never stale, never empty. */
import { dayFromNumber, dayNumber } from "../../dates.js";
import {
  bottleChanges,
  bottlesInOrder,
  closeBooks,
  doseMl,
  drawDown,
  needsInOrder,
  type OpenNeed,
} from "../ledger/index.js";
import type { MakingProblem, StockNeed, StockPlan } from "../making-problem.js";
import { batchStepMl } from "../making-rules.js";
import { batchSlots, firstDayThere } from "./batches-days.js";
import { type BatchLimits, fewestBatches, slotFor } from "./batches-fewest.js";
import { bottleOf, nameBatches, plannedBatch, shortageOf } from "./batches-told.js";
import { missingShells, shellPlan, volumeByShells } from "./shells.js";

/**
 * Ledger, batches to make, shortages and shells for the problem as `making-problem.ts` states it.
 * The same answer whatever the order of needs and bottles.
 *
 * Throws RangeError when a need lies before today or an id repeats: the caller's bug.
 */
export function planStock(problem: MakingProblem): StockPlan {
  assertSound(problem);
  const { today, season, making, shells } = problem;
  const mlFor = problem.mlFor ?? doseMl;
  const needs = needsInOrder(problem.needs);
  const inHand = bottlesInOrder(problem.bottles);
  const ofNewBatches = (open: readonly OpenNeed[]): { need: StockNeed; ml: number }[] =>
    open
      .map(({ need, before }) => ({ need, ml: mlFor(need, making.strengthGPerL, before) }))
      .filter(({ ml }) => ml > 0);

  const open = ofNewBatches(drawDown(inHand, needs, mlFor).open);
  const slots = batchSlots({ today, last: open.at(-1)?.need.day ?? today }, problem.away, making);
  const inTime = open.filter(
    ({ need }) => slotFor(dayNumber(need.day), slots, making.shelfLifeDays) !== undefined,
  );
  const demands = inTime.map(({ need, ml }) => ({ day: dayNumber(need.day), ml }));
  const neededMl = demands.reduce((sum, d) => sum + d.ml, 0);
  const limits: BatchLimits = { ...making, stepMl: batchStepMl(making, neededMl) };
  const wished = nameBatches(fewestBatches(demands, slots, limits), inHand);
  const volumeBy = (start: number): number => volumeByShells(dayFromNumber(start), today, shells);
  const made =
    missingShells(wished, today, shells) === 0
      ? wished
      : nameBatches(fewestBatches(demands, slots, { ...limits, volumeBy }), inHand);

  const planned = made.map((batch) => bottleOf(batch, making));
  const bottles = [...inHand, ...bottlesInOrder(planned)];
  const { draws, open: lost } = drawDown(bottles, needs, mlFor);
  const served = new Set(inTime.map(({ need }) => need.id));
  const shortages = ofNewBatches(lost).map((l) => shortageOf(l, served.has(l.need.id), problem));
  return {
    draws,
    batches: made.map((batch) => plannedBatch(batch, draws, problem)),
    shortages,
    changes: bottleChanges(draws),
    ...closeBooks(inHand, planned, draws, { today, season }, firstDayThere(problem.away)),
    shells: shellPlan(wished, made, shortages, today, shells, problem.amounts),
  };
}

function assertSound({ needs, bottles, today }: MakingProblem): void {
  const early = needs.find((n) => n.day < today);
  if (early) throw new RangeError(`need ${early.id} of ${early.day} lies before ${today}`);
  for (const list of [needs, bottles]) {
    const ids = list.map(({ id }) => id);
    if (new Set(ids).size < ids.length) throw new RangeError("ids repeat");
  }
}
