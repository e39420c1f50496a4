/** How much calcium a can carries: from the stock, from the tap, and if it were poured clear. */
// @ts-nocheck

import {
  type Amounts,
  calciumIn,
  decimal,
  type PourStyle,
  rateMeasures,
  type Route,
  strengthText,
} from "../garden/index.js";
import { type CanMix, leavesSolid, type SeasonStock, type StrainedWhite } from "../season/index.js";
import { measured } from "./figures.js";

/** Less than this short of the shaken stock, the clear one is as good. */
const clearIsAsGood = 0.95;

const solidIn: Readonly<Record<Route, string>> = {
  drench: "fine solid settles: stir",
  foliar: "fine solid does not dissolve: it clogs the nozzle and leaves white spots",
};

/** In each litre of a mix, or each gallon. */
export function calciumInLitre(mix: CanMix, pour: PourStyle | undefined, amounts: Amounts): string {
  const mg = (mgPerL: number): string => `${measured(calciumIn(amounts, mgPerL))} mg`;
  const { calciumMgPerL, clearCalciumMgPerL, tapCalciumMgPerL, tapCalciumAtMost } = mix;
  const clear =
    pour !== "clear" &&
    clearCalciumMgPerL !== undefined &&
    clearCalciumMgPerL < clearIsAsGood * calciumMgPerL
      ? ` (poured clear only ${mg(clearCalciumMgPerL)})`
      : "";
  const tap =
    tapCalciumMgPerL === undefined
      ? ""
      : `, ${upTo(tapCalciumAtMost)}${mg(tapCalciumMgPerL)} from the tap`;
  return `calcium in each ${rateMeasures[amounts].waterWord}: ${mg(calciumMgPerL)} from the stock${clear}${tap}`;
}

/** Before what water of that hardness cannot bring more of. */
export function upTo(isAtMost: boolean | undefined): string {
  return isAtMost === true ? "up to " : "";
}

/** The same beside the arithmetic of a feeding, with what the mixed can is like. */
export function calciumAndCan(mix: CanMix, amounts: Amounts): string {
  const { tapCalciumMgPerL: tap, clearCalciumMgPerL: clear, can } = mix;
  const mg = (mgPerL: number, places = 0): string =>
    `${decimal(calciumIn(amounts, mgPerL), places)} mg`;
  const { waterWord, water } = rateMeasures[amounts];
  return [
    `${mg(mix.calciumMgPerL)} in a ${waterWord} of can water from the stock`,
    ...(tap === undefined ? [] : [`${upTo(mix.tapCalciumAtMost)}${mg(tap)} from the source water`]),
    ...(clear === undefined ? [] : [`${mg(clear, 1)} if the bottle were poured clear`]),
    ...(can === undefined ? [] : [`the mixed can is at pH ${decimal(can.ph, 1)}`]),
    ...(leavesSolid(can) ? [`${mg(can.settlesMgPerL)}/${water} of ${solidIn[mix.route]}`] : []),
  ].join("; ");
}

/** The same over all cans of a season. */
export function calciumOfSeason(
  mixes: readonly CanMix[],
  pour: PourStyle,
  amounts: Amounts,
): string {
  const span = (pick: (mix: CanMix) => number | undefined, places: number): string | undefined => {
    const values = mixes.flatMap((mix) => pick(mix) ?? []);
    if (values.length === 0) return undefined;
    const texts = [Math.min(...values), Math.max(...values)].map((v) =>
      decimal(calciumIn(amounts, v), places),
    );
    return [...new Set(texts)].join(" to ");
  };
  const stock = span((mix) => mix.calciumMgPerL, 0) ?? "0";
  const tap = span((mix) => mix.tapCalciumMgPerL, 0);
  const clear = pour !== "clear" ? span((mix) => mix.clearCalciumMgPerL, 1) : undefined;
  return [
    `a can carries ${stock} mg of calcium per ${rateMeasures[amounts].waterWord} from the stock`,
    ...(tap === undefined
      ? []
      : [`${upTo(mixes.some((mix) => mix.tapCalciumAtMost))}${tap} mg from the source water`]),
    ...(clear === undefined ? [] : [`poured clear the stock would bring ${clear} mg`]),
  ].join("; ");
}

export function newBottleHolds(
  { newStrengthGPerL, newPh, pour, newWhite }: SeasonStock,
  amounts: Amounts,
): string {
  const white = newWhite === undefined ? "" : `; ${whiteComesThrough(newWhite)}`;
  return `a new bottle holds ${strengthText(newStrengthGPerL, amounts)} as you pour it (${pour}), at pH ${decimal(newPh, 1)}${white}`;
}

/** The assumption that a strength rests on. */
export function whiteComesThrough({ strainer, passes, assumed }: StrainedWhite): string {
  const share = `about ${decimal(100 * passes, 0)} % of the white`;
  return assumed
    ? `taking it that it was strained through a ${strainer}, and that ${share} came through (common practice, no source)`
    : `taking it that ${share} comes through the ${strainer} (common practice, no source)`;
}

/** Where most of the calcium is lost to who pours clear. */
export function turnsWhite(stock: SeasonStock): string | undefined {
  return stock.pour !== "clear" && stock.newClearStrengthGPerL < stock.newStrengthGPerL / 2
    ? "a fresh bottle can be clear for a day or two and then turn white: that white is the calcium, so shake the bottle and stir the can"
    : undefined;
}
