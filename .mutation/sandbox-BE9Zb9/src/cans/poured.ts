/** What is poured for a demand: how much to the litre, from which bottles, what the can then carries. */
// @ts-nocheck

import { type Garden, pouredText } from "../garden/index.js";
import type { CanFill, FillPour, MixedCan, Pour } from "../season/index.js";
import type { CanPart, StockLiquid, StockPlan } from "../stock/index.js";
import { given, grouped } from "../values.js";
import { type CanDemand, demandFills, fillsAfter, rateAfter, rateFor } from "./demands.js";
import { fillsMl } from "./fills.js";
import type { Liquids } from "./garden-liquids.js";

export interface Poured {
  readonly rateMlPerL: number;
  readonly fills: readonly CanFill[];
  /** What no bottle gives; absent where there is stock for all. */
  readonly shortMl?: number;
  /** Bottles it is poured from; empty where none is named (the past, or a shortage). */
  readonly pours: readonly Pour[];
  /** Brought by the stock, mg per litre of can water; and by the same mL poured clear. */
  readonly calciumMgPerL: number;
  readonly clearCalciumMgPerL: number;
  readonly can?: MixedCan;
}

/**
 * A demand's stock by the draws of the making plan, or as the log has it. What no bottle gives is
 * reckoned as of a new batch.
 */
export function pouring(
  garden: Garden,
  liquids: Liquids,
  making: StockPlan,
  canOf: (parts: readonly CanPart[]) => MixedCan | undefined,
): (demand: CanDemand) => Poured {
  const drawn = grouped(making.draws, ({ need }) => need);
  const short = new Map(making.shortages.map(({ need, ml }) => [need, ml]));

  const pouredFrom = (
    fills: readonly CanFill[],
    pours: readonly Pour[],
    rateMlPerL: number,
    parts: readonly CanPart[],
  ): Poured => {
    const can = canOf(parts);
    const broughtBy = ({ stock, stockMlPerL }: CanPart): number =>
      stockMlPerL * liquids.poured(stock);
    return {
      rateMlPerL,
      fills: fills.map((fill) =>
        pours.length < 2 || fill.jug ? fill : { ...fill, pours: sharesOf(fill) },
      ),
      pours,
      calciumMgPerL: sum(parts.map(broughtBy)),
      clearCalciumMgPerL: sum(parts.map((part) => broughtBy(part) * clearShare(part.stock))),
      ...given({ can }),
    };

    /** Each can gets of each bottle by its share of the stock. */
    function sharesOf(fill: CanFill): FillPour[] {
      return pours.map((pour) => {
        const ml = (pour.ml * fill.stockMl) / fillsMl(fills);
        return { batch: pour.batch, ml, stockText: pouredText(ml, garden.amounts) };
      });
    }
  };

  const planned = (demand: CanDemand): Poured => {
    const pours = (drawn.get(demand.id) ?? []).map(({ batch, ml, strengthGPerL }): Pour => {
      return { batch, ml, strengthGPerL };
    });
    const last = short.has(demand.id) ? undefined : pours.at(-1);
    const before = last === undefined ? pours : pours.slice(0, -1);
    const lastLiquid = last === undefined ? liquids.usual.stock : liquids.of(last.batch);
    const lastGPerL = liquids.poured(lastLiquid);
    const rateMlPerL = rateAfter(demand, before, lastGPerL);
    const parts = before.map(({ batch, ml }): CanPart => ({
      stock: liquids.of(batch),
      stockMlPerL: ml / demand.waterL,
    }));
    const restMlPerL = Math.max(
      0,
      parts.reduce((rest, part) => rest - part.stockMlPerL, rateMlPerL),
    );
    parts.push({ stock: lastLiquid, stockMlPerL: restMlPerL });
    const fills = fillsAfter(demand, before, lastGPerL, garden);
    const shortMl = short.get(demand.id);
    return { ...pouredFrom(fills, pours, rateMlPerL, parts), ...given({ shortMl }) };
  };

  /** The mean of the bottles that the log names, or a new batch where it names none. */
  const logged = (demand: CanDemand, given: NonNullable<CanDemand["given"]>): Poured => {
    const pours = given.pours.map((pour) => ({
      ...pour,
      strengthGPerL: liquids.poured(liquids.of(pour.batch)),
    }));
    const ml = sum(pours.map((pour) => pour.ml));
    const meanGPerL = sum(pours.map((pour) => (pour.ml / ml) * pour.strengthGPerL));
    const rateMlPerL = rateFor(demand, ml > 0 ? meanGPerL : liquids.poured(liquids.usual.stock));
    const parts =
      ml > 0
        ? pours.map((pour) => ({
            stock: liquids.of(pour.batch),
            stockMlPerL: (pour.ml / ml) * rateMlPerL,
          }))
        : [{ stock: liquids.usual.stock, stockMlPerL: rateMlPerL }];
    return pouredFrom(demandFills(demand, rateMlPerL, garden), pours, rateMlPerL, parts);
  };

  function clearShare(liquid: StockLiquid): number {
    return Math.min(1, liquid.clearGPerL / liquids.poured(liquid));
  }

  return (demand) => (demand.given === undefined ? planned(demand) : logged(demand, demand.given));
}

function sum(amounts: readonly number[]): number {
  return amounts.reduce((total, amount) => total + amount, 0);
}
