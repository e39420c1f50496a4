/** The stock of a season: bottles in hand first, then the fewest batches, never stale, never empty. */
// @ts-nocheck

import { type Day, dayFromNumber, dayNumber } from "../../dates.js";
import { byText } from "../../values.js";
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
import { type BatchChoice, type BatchLimits, fewestBatches, slotFor } from "./batches-fewest.js";
import { bottleOf, nameBatches, plannedBatch, shortageOf } from "./batches-told.js";
import { publishedChoices } from "./kept-batches.js";
import { missingShells, shellPlan, type ShellUse, volumeByShells } from "./shells.js";

/**
 * Ledger, batches to make, shortages and shells for the problem as `making-problem.ts` states it.
 * The same answer whatever the order of needs and bottles.
 *
 * Throws RangeError when a need lies before today or an id repeats: the caller's bug.
 */
export function planStock(problem: MakingProblem): StockPlan {
  assertSound(problem);
  const { today, season, away, making, shells, underWay = [], toBegin = [] } = problem;
  const savedFrom = shells.keptFrom ?? today;
  const mlFor = problem.mlFor ?? doseMl;
  const needs = needsInOrder(problem.needs);
  const inHand = bottlesInOrder(problem.bottles);
  const onTheWay = bottlesInOrder(underWay.map((batch) => bottleOf(batch, making)));
  const fixed = [...inHand, ...onTheWay];
  const ofNewBatches = (open: readonly OpenNeed[]): { need: StockNeed; ml: number }[] =>
    open
      .map(({ need, before }) => ({ need, ml: mlFor(need, making.strengthGPerL, before) }))
      .filter(({ ml }) => ml > 0);

  const open = ofNewBatches(drawDown(fixed, needs, mlFor).open);
  const slots = batchSlots({ today, last: open.at(-1)?.need.day ?? today }, away, making);
  const inTime = open.filter(
    ({ need }) => slotFor(dayNumber(need.day), slots, making.shelfLifeDays) !== undefined,
  );
  const demands = inTime.map(({ need, ml }) => ({ day: dayNumber(need.day), ml }));
  const limits: BatchLimits = { ...making, stepMl: batchStepMl(making) };
  const wished = fewestBatches(demands, slots, limits);
  const volumeBy = (start: number): number =>
    volumeByShells(dayFromNumber(start), savedFrom, shells);
  const isShellsEnough = (choices: readonly BatchChoice[]): boolean =>
    missingShells(choices.map(useOf), savedFrom, shells) === 0;
  const fresh = isShellsEnough(wished)
    ? wished
    : fewestBatches(demands, slots, { ...limits, volumeBy });

  /** What becomes of the season with these batches. */
  const poured = (choices: readonly BatchChoice[]) => {
    const made = nameBatches(choices, problem);
    const planned = [...onTheWay, ...bottlesInOrder(made.map((batch) => bottleOf(batch, making)))];
    const { draws, open: lost } = drawDown([...inHand, ...planned], needs, mlFor);
    return { made, planned, draws, lost: ofNewBatches(lost) };
  };
  const anew = poured(fresh);
  const told = publishedChoices(toBegin, fresh, away, making, today);
  const kept = told !== undefined && isShellsEnough(told) ? poured(told) : anew;
  const isAsGood =
    lostMl(kept.lost) <= lostMl(anew.lost) &&
    kept.made.every(({ id }) => kept.draws.some(({ batch }) => batch === id));
  const { made, planned, draws, lost } = isAsGood ? kept : anew;

  const served = new Set(inTime.map(({ need }) => need.id));
  const batches = [...underWay, ...made].sort((a, b) => byText(a.readyOn, b.readyOn));
  const shortages = lost.map((l) => shortageOf(l, served.has(l.need.id), problem, batches));
  return {
    draws,
    batches: batches.map((batch) => plannedBatch(batch, draws, problem)),
    shortages,
    changes: bottleChanges(draws, problem.lastPoured),
    ...closeBooks(inHand, planned, draws, { today, season }, firstDayThere(away)),
    shells: shellPlan(wished.map(useOf), made, shortages, savedFrom, shells, problem.amounts),
  };
}

/** The first day on which new stock can be bottled: of a batch under way, else of the least one begun at once. */
export function soonestStock({
  today,
  season,
  away,
  making,
  shells,
  underWay = [],
}: MakingProblem): Day | undefined {
  const isShellsEnough = (start: Day): boolean =>
    shells.perWeek === undefined ||
    volumeByShells(start, shells.keptFrom ?? today, shells) >= making.smallestMl;
  const slot = batchSlots({ today, last: season.to }, away, making).find(({ start }) =>
    isShellsEnough(dayFromNumber(start)),
  );
  const days = underWay.map(({ readyOn }) => readyOn).filter((day) => day >= today);
  return [...days, ...(slot === undefined ? [] : [dayFromNumber(slot.ready)])].sort()[0];
}

function useOf({ slot, volumeMl }: BatchChoice): ShellUse {
  return { startOn: dayFromNumber(slot.start), volumeMl };
}

function lostMl(lost: readonly { readonly ml: number }[]): number {
  return lost.reduce((sum, { ml }) => sum + ml, 0);
}

function assertSound({ needs, bottles, today }: MakingProblem): void {
  const early = needs.find((n) => n.day < today);
  if (early) throw new RangeError(`need ${early.id} of ${early.day} lies before ${today}`);
  for (const list of [needs, bottles]) {
    const ids = list.map(({ id }) => id);
    if (new Set(ids).size < ids.length) throw new RangeError("ids repeat");
  }
}
