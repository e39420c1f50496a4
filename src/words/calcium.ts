/** How much calcium a can carries: from the stock, from the tap, and if it were poured clear. */
import { decimal, type PourStyle } from "../garden/index.js";
import type { CanMix, SeasonStock, StrainedWhite } from "../season/index.js";
import { measured } from "./figures.js";

/** Less than this short of the shaken stock, the clear one is as good. */
const clearIsAsGood = 0.95;

/** In each litre of a mix. */
export function calciumInLitre(mix: CanMix, pour: PourStyle | undefined): string {
  const { calciumMgPerL, clearCalciumMgPerL, tapCalciumMgPerL } = mix;
  const clear =
    pour !== "clear" &&
    clearCalciumMgPerL !== undefined &&
    clearCalciumMgPerL < clearIsAsGood * calciumMgPerL
      ? ` (poured clear only ${measured(clearCalciumMgPerL)} mg)`
      : "";
  const tap =
    tapCalciumMgPerL === undefined ? "" : `, ${measured(tapCalciumMgPerL)} mg from the tap`;
  return `calcium in each litre: ${measured(calciumMgPerL)} mg from the stock${clear}${tap}`;
}

/** The same beside the arithmetic of a feeding, with what the mixed can is like. */
export function calciumAndCan(mix: CanMix): string {
  const { tapCalciumMgPerL: tap, clearCalciumMgPerL: clear, can } = mix;
  return [
    `${decimal(mix.calciumMgPerL, 0)} mg in a litre of can water from the stock`,
    ...(tap === undefined ? [] : [`${decimal(tap, 0)} mg from the source water`]),
    ...(clear === undefined ? [] : [`${decimal(clear, 1)} mg if the bottle were poured clear`]),
    ...(can === undefined ? [] : [`the mixed can is at pH ${decimal(can.ph, 1)}`]),
    ...(can === undefined || can.settlesMgPerL < 1
      ? []
      : [`${decimal(can.settlesMgPerL, 0)} mg/L of fine solid settles: stir`]),
  ].join("; ");
}

/** The same over all cans of a season. */
export function calciumOfSeason(mixes: readonly CanMix[], pour: PourStyle): string {
  const span = (pick: (mix: CanMix) => number | undefined, places: number): string | undefined => {
    const values = mixes.flatMap((mix) => pick(mix) ?? []);
    if (values.length === 0) return undefined;
    const texts = [Math.min(...values), Math.max(...values)].map((v) => decimal(v, places));
    return [...new Set(texts)].join(" to ");
  };
  const stock = span((mix) => mix.calciumMgPerL, 0) ?? "0";
  const tap = span((mix) => mix.tapCalciumMgPerL, 0);
  const clear = pour !== "clear" ? span((mix) => mix.clearCalciumMgPerL, 1) : undefined;
  return [
    `a can carries ${stock} mg of calcium per litre from the stock`,
    ...(tap === undefined ? [] : [`${tap} mg from the source water`]),
    ...(clear === undefined ? [] : [`poured clear the stock would bring ${clear} mg`]),
  ].join("; ");
}

export function newBottleHolds({ newStrengthGPerL, newPh, pour, newWhite }: SeasonStock): string {
  const white = newWhite === undefined ? "" : `; ${whiteComesThrough(newWhite)}`;
  return `a new bottle holds ${decimal(newStrengthGPerL, 1)} g of calcium per litre as you pour it (${pour}), at pH ${decimal(newPh, 1)}${white}`;
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
