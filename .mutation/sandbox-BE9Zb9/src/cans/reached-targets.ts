/** Whether the bottles carry the calcium that is aimed at; told once a bottle, not once a round. */
// @ts-nocheck

import type { Day } from "../dates.js";
import {
  type Amounts,
  calciumIn,
  counted,
  decimal,
  rateMeasures,
  strengthText,
} from "../garden/index.js";
import type { PlanWarning, Pour } from "../season/index.js";
import { batchName, type Chemistry, type PlannedBatch } from "../stock/index.js";
import { grouped } from "../values.js";
import type { CanDemand } from "./demands.js";
import type { Liquids } from "./garden-liquids.js";
import type { Poured } from "./poured.js";

interface Cause {
  /** The weakest of the can; absent for batches to make. */
  readonly bottle?: string;
  /** Poured clear, and most of the calcium stays behind in the white. */
  readonly lacksWhite: boolean;
}

interface Missed {
  readonly day: Day;
  readonly cause: Cause;
  readonly targetMgPerL: number;
  readonly carriesMgPerL: number;
}

/**
 * Without a day: they are of a season, and would move through its calendar as it goes.
 *
 * @param demands those to come
 */
export function targetWarnings(
  demands: readonly CanDemand[],
  pouredFor: (demand: CanDemand) => Poured,
  toMake: readonly PlannedBatch[],
  liquids: Liquids,
  amounts: Amounts,
  { practice }: Chemistry,
): PlanWarning[] {
  const missed = demands.flatMap((demand): Missed[] => {
    const targetMgPerL = reachableMgPerL(demand);
    const { calciumMgPerL: carriesMgPerL, pours } = pouredFor(demand);
    if (carriesMgPerL >= practice.targetReachedShare.value * targetMgPerL) return [];
    return [
      { day: demand.day, cause: causeOf(pours, toMake, liquids), targetMgPerL, carriesMgPerL },
    ];
  });
  // Poured clear, every bottle falls short for the same cause.
  const byCause = grouped(missed, ({ cause: { lacksWhite, bottle } }) => lacksWhite || bottle);
  return [...byCause.values()].map((group): PlanWarning => {
    const [{ cause }] = group;
    const rounds = counted(new Set(group.map((one) => one.day)).size, "round");
    const carries = span(group.map((one) => calciumIn(amounts, one.carriesMgPerL)));
    const target = span(group.map((one) => calciumIn(amounts, one.targetMgPerL)));
    return {
      code: "target-not-reached",
      message: `${subject(cause, liquids, amounts)}: in ${rounds} a can carries ${carries} of the ${target} mg of calcium per ${rateMeasures[amounts].waterWord} aimed at, at the rule's highest rate`,
      mend: mend(cause, liquids),
    };
  });
}

function causeOf(pours: readonly Pour[], toMake: readonly PlannedBatch[], liquids: Liquids): Cause {
  const [weakest] = [...pours].sort((a, b) => a.strengthGPerL - b.strengthGPerL);
  const batch = weakest?.batch;
  const stock = batch === undefined ? liquids.usual.stock : liquids.of(batch);
  const lacksWhite = liquids.poured(stock) < stock.shakenGPerL / 2;
  const isToMake = batch === undefined || toMake.some(({ id }) => id === batch);
  return isToMake ? { lacksWhite } : { bottle: batch, lacksWhite };
}

/** What the rule's own stock would bring within its highest rate; nought where the grower fixed the mL. */
function reachableMgPerL({ rate, highestRateMlPerL, feedings }: CanDemand): number {
  if (rate.kind === "fixed") return 0;
  const wishedMlPerL = Math.max(...feedings.map((f) => f.baseRateMlPerL * f.level));
  return rate.targetMgPerL * Math.min(1, highestRateMlPerL / wishedMlPerL);
}

function subject({ bottle, lacksWhite }: Cause, liquids: Liquids, amounts: Amounts): string {
  const stock = bottle === undefined ? liquids.usual.stock : liquids.of(bottle);
  const holds = `holds ${strengthText(liquids.poured(stock), amounts)}`;
  if (lacksWhite) return `poured clear, the stock ${holds}`;
  return bottle === undefined ? `a new batch ${holds}` : `${batchName(bottle)} ${holds}`;
}

function mend({ bottle, lacksWhite }: Cause, liquids: Liquids): string {
  if (lacksWhite)
    return "shake the bottle and pour the white along (`stock: { pour: shaken }`), for it holds nearly all the calcium; or make the stock with vinegar, which keeps its calcium dissolved";
  if (bottle === undefined) return "make it with stronger vinegar, or with citric acid";
  return liquids.whiteOf(bottle)?.strainer === "cloth"
    ? "the cloth kept the white back: make a new batch, strained through a mesh, and throw this one away (`thrown_away`)"
    : "make a new batch, or measure this one again (`strength`)";
}

function span(values: readonly number[]): string {
  const texts = [Math.min(...values), Math.max(...values)].map((v) => decimal(v, 0));
  return [...new Set(texts)].join(" to ");
}
