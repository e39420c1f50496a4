/** What the mixed can is like, for each mixture of a season. */
// @ts-nocheck

import { decimal, type Garden } from "../garden/index.js";
import type { MixedCan, PlanWarning } from "../season/index.js";
import {
  type CanLiquid,
  type CanPart,
  type Chemistry,
  diluteTogether,
  type StockLiquid,
  type WaterReport,
} from "../stock/index.js";
import type { Liquids } from "./garden-liquids.js";

export interface MixedCans {
  /** Undefined where the source water is not known. */
  readonly of: (parts: readonly CanPart[]) => MixedCan | undefined;
  /** What the cans asked for so far have to be warned of. */
  readonly warnings: () => readonly PlanWarning[];
}

/** The chemistry of the can, once for each mixture. */
export function mixedCans(
  chemistry: Chemistry,
  liquids: Liquids,
  garden: Garden,
  water: WaterReport | undefined,
): MixedCans {
  const known = new Map<string, MixedCan>();
  const outside = new Map<string, PlanWarning>();
  const numbers = new Map<StockLiquid, number>();
  const numberOf = (liquid: StockLiquid): number => {
    const number = numbers.get(liquid) ?? numbers.size;
    numbers.set(liquid, number);
    return number;
  };
  const of: MixedCans["of"] = (parts) => {
    if (water === undefined) return undefined;
    const key = parts.map((p) => `${numberOf(p.stock)} ${p.stockMlPerL.toFixed(4)}`).join("/");
    const before = known.get(key);
    if (before) return before;
    const mixed = diluteTogether(chemistry, parts, {
      pour: garden.stock.pour,
      water,
      temperatureC: liquids.temperatureC,
      air: "closed",
    });
    if (!mixed.ok) return undefined;
    const { ph, calciumMgPerL, settlesMgPerL, phOutside } = mixed.value;
    const found = { ph, dissolvedCalciumMgPerL: calciumMgPerL, settlesMgPerL };
    known.set(key, found);
    if (phOutside !== undefined) outside.set(phOutside, phWarning(mixed.value, chemistry, garden));
    return found;
  };
  return { of, warnings: () => [...outside.values()] };
}

function phWarning(
  mixed: Pick<CanLiquid, "ph" | "waterPh" | "phOutside">,
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
        : garden.sourceWater?.alkalinityMgPerL === undefined
          ? "give the water's `alkalinity:`, which is taken to be as high as its hardness; rain water helps"
          : "check the figures of the source water; rain water helps",
  };
}
