/** Stock for cans that would get less than can be measured: stirred once, and shared out. */
// @ts-nocheck

import {
  type Amounts,
  litersPerUsGallon,
  mlPerCup,
  mlPerTeaspoon,
  stockText,
  totalStockText,
  volumeText,
  withoutDust,
} from "../garden/index.js";
import type { CanFill } from "../season/index.js";
import { ledgerMl } from "../stock/index.js";
import { isNear, leastStockMl, measureStepsMl, toStep } from "./measuring.js";

export interface CanRequest {
  readonly waterL: number;
  readonly rateMlPerL: number;
  readonly canL: number;
  readonly amounts: Amounts;
}

/** So many full cans, and at most one in part. */
export interface CansOfWater {
  readonly full: number;
  /** 0 where there is none. */
  readonly partL: number;
}

/** What a full can takes of a jug. */
const shareL: Readonly<Record<Amounts, number>> = {
  metric: 0.1,
  imperial: 0.1,
  us: mlPerCup / 2000,
};

/**
 * All stock of the mix stirred in a jug, of which each can takes its share and is filled up. Less
 * than can be measured makes a jug of more than is needed, given as it is.
 */
export function jugFills(
  { waterL, rateMlPerL, canL, amounts }: CanRequest,
  { full, partL }: CansOfWater,
): CanFill[] {
  const exactMl = rateMlPerL * waterL;
  const carriedL = full * canL + partL;
  const leastMl = leastStockMl[amounts];
  const isEnough = exactMl >= leastMl;
  const jugMl = isEnough ? measuredMl(exactMl, amounts) : leastMl;
  const fullShareL = isEnough ? Math.min(shareL[amounts], canL) : canL;
  const sharesL = (fullShareL / canL) * carriedL;
  const jugL = isEnough ? sharesL : readableL((leastMl * carriedL) / exactMl, amounts);
  return carried({ full, partL }, canL, amounts, (liters) => {
    const takeL = (fullShareL / canL) * liters;
    return {
      stockMl: withoutDust((jugMl * takeL) / jugL),
      jug: {
        stockMl: jugMl,
        waterL: jugL,
        takeL,
        stockText: stockText(jugMl, amounts),
        waterText: jugText(jugL, amounts),
        takeText: jugText(takeL, amounts),
      },
    };
  });
}

/**
 * The full cans, then the one in part.
 *
 * @param stockIn what a can of so much water gets
 */
export function carried(
  { full, partL }: CansOfWater,
  canL: number,
  amounts: Amounts,
  stockIn: (waterL: number, isFull: boolean) => Pick<CanFill, "stockMl" | "jug">,
): CanFill[] {
  const fill = (count: number, isFull: boolean, waterL: number): CanFill => {
    const { stockMl, ...more } = stockIn(waterL, isFull);
    return {
      count,
      full: isFull,
      waterL,
      stockMl,
      waterText: volumeText(waterL, amounts),
      stockText: stockText(stockMl, amounts),
      ...more,
    };
  };
  return [
    ...(full > 0 ? [fill(full, true, canL)] : []),
    ...(partL > 0 ? [fill(1, false, partL)] : []),
  ];
}

function measuredMl(exactMl: number, amounts: Amounts): number {
  const measured = measureStepsMl[amounts].flat().map((stepMl) => toStep(exactMl, stepMl));
  return measured.find((ml) => isNear(ml, exactMl)) ?? ledgerMl(exactMl);
}

const usStepsL = [litersPerUsGallon / 4, mlPerCup / 4000, mlPerTeaspoon / 1000];

/** Two figures, or what a measuring jug has lines for. */
function readableL(liters: number, amounts: Amounts): number {
  if (amounts !== "us") return Number(liters.toPrecision(2));
  const measured = usStepsL.map((stepL) => Math.round(liters / stepL) * stepL);
  // The stock of a litre is to be near, so the jug is the measure.
  return measured.find((near) => isNear(liters, near)) ?? liters;
}

function jugText(liters: number, amounts: Amounts): string {
  return amounts === "us" ? totalStockText(liters * 1000, amounts) : volumeText(liters, "metric");
}
