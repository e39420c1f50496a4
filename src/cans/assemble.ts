/** Demands and the bottles they are poured from -> rounds with beds, cans and amounts. */
import type { Day } from "../dates.js";
import { totalOf, type Garden } from "../garden/index.js";
import type { BedRound, CanMix, MixedCan, OtherFeedMix, Pour, Round } from "../season/index.js";
import { demandFills, rateFor, type CanDemand } from "./demands.js";

/** What the stock side knows of one demand. */
export interface DemandStock {
  /** Bottles it is poured from; empty where none is named (the past, or a shortage). */
  readonly pours: readonly Pour[];
  /** Calcium in what has no bottle: a new batch, g/L. */
  readonly otherwiseGPerL: number;
  readonly tapCalciumMgPerL?: number;
  readonly can?: (rateMlPerL: number, strengthGPerL: number) => MixedCan | undefined;
  readonly clearShare: (strengthGPerL: number) => number;
}

export function assembleRounds(
  garden: Garden,
  demands: readonly CanDemand[],
  stockFor: (demand: CanDemand) => DemandStock,
  feeds: ReadonlyMap<Day, readonly OtherFeedMix[]>,
): Round[] {
  const days = new Set([...demands.map((demand) => demand.day), ...feeds.keys()]);
  return [...days].sort().map((day): Round => {
    const here = demands.filter((demand) => demand.day === day);
    const beds = garden.beds.flatMap((bed): BedRound[] => {
      const mixes = here.filter((d) => d.bed === bed.id).map((d) => mixOf(d, stockFor(d), garden));
      return mixes.length === 0 ? [] : [{ bed: bed.id, bedName: bed.name, mixes }];
    });
    const mixes = beds.flatMap((bed) => bed.mixes);
    const { timeOfDay } = garden.feeding;
    const others = feeds.get(day) ?? [];
    const isGiven = [...mixes, ...others].every((mix) => mix.given);
    return {
      day,
      ...(timeOfDay === undefined ? {} : { timeOfDay }),
      ...(isGiven ? { given: true as const } : {}),
      beds,
      ...(others.length === 0 ? {} : { feeds: others }),
      waterL: totalOf(mixes.map((mix) => mix.waterL)),
      stockMl: totalOf(mixes.map((mix) => mix.stockMl)),
    };
  });
}

function mixOf(demand: CanDemand, stock: DemandStock, garden: Garden): CanMix {
  const { route, waterL, feedings } = demand;
  const strengthGPerL = meanStrength(stock);
  const rateMlPerL = rateFor(demand, strengthGPerL);
  const fills = demandFills(demand, rateMlPerL, garden);
  const calciumMgPerL = rateMlPerL * strengthGPerL;
  const can = stock.can?.(rateMlPerL, strengthGPerL);
  return {
    route,
    rateMlPerL,
    feedings,
    waterL,
    exactStockMl: rateMlPerL * waterL,
    stockMl: demand.given?.stockMl ?? totalOf(fills.map((fill) => fill.count * fill.stockMl)),
    ...(demand.given === undefined ? {} : { given: true as const }),
    calciumMgPerL,
    ...(stock.tapCalciumMgPerL === undefined ? {} : { tapCalciumMgPerL: stock.tapCalciumMgPerL }),
    clearCalciumMgPerL: calciumMgPerL * stock.clearShare(strengthGPerL),
    ...(can === undefined ? {} : { can }),
    ...(stock.pours.length === 0 ? {} : { pours: stock.pours }),
    fills,
  };
}

/** A can poured from two bottles has the strength between them. */
function meanStrength({ pours, otherwiseGPerL }: DemandStock): number {
  const [first, ...others] = pours;
  if (first === undefined) return otherwiseGPerL;
  if (others.length === 0) return first.strengthGPerL;
  const ml = pours.reduce((total, pour) => total + pour.ml, 0);
  return pours.reduce((total, pour) => total + pour.ml * pour.strengthGPerL, 0) / ml;
}
