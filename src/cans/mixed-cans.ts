/** What the mixed can is like, for each bottle and rate of a season. */
import { decimal, type Garden } from "../garden/index.js";
import { rateFor, type CanDemand } from "./demands.js";
import type { MixedCan, PlanWarning } from "../season/index.js";
import { dilute, type Chemistry, type StockPlan, type WaterReport } from "../stock/index.js";
import type { Liquids } from "./garden-liquids.js";

export interface MixedCans {
  readonly can: (rateMlPerL: number, strengthGPerL: number) => MixedCan | undefined;
  readonly warnings: (
    making: StockPlan,
    demands: ReadonlyMap<string, CanDemand>,
  ) => readonly PlanWarning[];
}

/** The chemistry of the can, once for each rate and strength. */
export function mixedCans(
  chemistry: Chemistry,
  liquids: Liquids,
  garden: Garden,
  water: WaterReport | undefined,
): MixedCans {
  const known = new Map<string, MixedCan | undefined>();
  const outside = new Map<string, PlanWarning>();
  const can: MixedCans["can"] = (rateMlPerL, strengthGPerL) => {
    const key = `${rateMlPerL.toFixed(4)} ${strengthGPerL.toFixed(4)}`;
    if (water === undefined || known.has(key)) return known.get(key);
    const liquid = liquids.ofStrength(strengthGPerL);
    const mixed = dilute(chemistry, liquid, {
      stockMlPerL: rateMlPerL,
      pour: garden.stock.pour,
      water,
      temperatureC: liquids.temperatureC,
      air: "closed",
    });
    const found = mixed.ok
      ? {
          ph: mixed.value.ph,
          dissolvedCalciumMgPerL: mixed.value.calciumMgPerL,
          settlesMgPerL: mixed.value.settlesMgPerL,
        }
      : undefined;
    known.set(key, found);
    if (mixed.ok && mixed.value.phOutside !== undefined)
      outside.set(mixed.value.phOutside, phWarning(mixed.value, chemistry, garden));
    return found;
  };
  return {
    can,
    warnings: (making, demands) => {
      for (const draw of making.draws) {
        const demand = demands.get(draw.need);
        if (demand) can(rateFor(demand, draw.strengthGPerL), draw.strengthGPerL);
      }
      return [...outside.values()];
    },
  };
}

function phWarning(
  mixed: { ph: number; waterPh: number; phOutside: "low" | "high" | undefined },
  chemistry: Chemistry,
  garden: Garden,
): PlanWarning {
  const { canPhLow, canPhHigh } = chemistry.practice;
  const waterToo = mixed.waterPh < canPhLow.value || mixed.waterPh > canPhHigh.value;
  return {
    code: "can-ph",
    day: garden.season.from,
    message: `the mixed can is at pH ${decimal(mixed.ph, 1)}, outside ${canPhLow.value} to ${canPhHigh.value}${waterToo ? `; the water alone is at ${decimal(mixed.waterPh, 1)}` : ""}`,
    mend:
      mixed.phOutside === "low"
        ? "let the stock finish on more shell before it is used, or give less of it"
        : "check the figures of the source water; rain water helps",
  };
}
