/** Cans and sprayers, how full they are, and what goes in each. */
import {
  type Amounts,
  decimal,
  litersPerImperialGallon,
  litersPerUsGallon,
  type Route,
  stockText,
  type Vessel,
} from "../garden/index.js";
import type { CanFill } from "../season/index.js";
import { fromBottle } from "./bottles.js";
import { measured } from "./figures.js";
import { routeNames, vesselCount, vesselWords } from "./routes.js";
import { plain, type Say } from "./say.js";

/** `2 full cans`, `1 part sprayer` */
export function fillWords({ count, full }: CanFill, vessel: Vessel): string {
  return `${count} ${full ? "full" : "part"} ${vesselWords(vessel, count)}`;
}

/** `2 cans of 9 L`, `1 part can of 4 L` */
export function fillOfWater(fill: CanFill, vessel: Vessel): string {
  return fill.full
    ? `${vesselCount(fill.count, vessel)} of ${fill.waterText}`
    : `1 part ${vessel} of ${fill.waterText}`;
}

/** `2 cans × 23 mL`, `1 part sprayer × 4 mL (2 L)` */
export function fillInShort(fill: CanFill, vessel: Vessel): string {
  const { count, full, stockText, waterText } = fill;
  return full
    ? `${vesselCount(count, vessel)} × ${stockText}`
    : `${count} part ${vesselWords(vessel, count)} × ${stockText} (${waterText})`;
}

/** Where not all are told. */
export function moreCans(count: number): string {
  return `${count} more ${vesselWords("can", count)}`;
}

/** `2 full cans: 23 mL of stock in 9 L of water each` */
export function fillInFull(fill: CanFill, vessel: Vessel, liquid = "stock"): string {
  const { stockText, stockMl, waterText } = fill;
  const ml = stockText.endsWith(" mL") ? "" : ` (${measured(stockMl)} mL)`;
  return `${fillWords(fill, vessel)}: ${stockText}${ml} of ${liquid} in ${waterText} of water${each(fill)}${andFromEach(fill)}`;
}

/** `2 full cans: 23 mL in 9 L each` */
export function fillWithStock<T>(say: Say<T>, fill: CanFill, vessel: Vessel, stock: T | string): T {
  return say`${fillWords(fill, vessel)}: ${stock} in ${fill.waterText}${each(fill)}${andFromEach(fill)}`;
}

/** `23 mL each` */
export function stockInEach(fill: CanFill): string {
  return `${fill.stockText}${each(fill)}`;
}

/** Under {@link stockInEach}: `of stock in 9 L of water each` */
export function ofStockInWater(fill: CanFill): string {
  const ml = fill.stockText.endsWith(" mL") ? "" : ` (${decimal(fill.stockMl, 1)} mL)`;
  return `of stock${ml} in ${fill.waterText} of water${each(fill)}${andFromEach(fill)}`;
}

/** `15 mL from bottle B1, 8 mL from bottle B2`, where a can is poured from several. */
export function fromEach({ pours = [] }: CanFill): string {
  return pours.map((pour) => fromBottle(plain, `${decimal(pour.ml, 1)} mL`, pour.batch)).join(", ");
}

/** `: 15 mL from bottle B1, 8 mL from bottle B2` behind the rest */
function andFromEach(fill: CanFill): string {
  return fill.pours === undefined ? "" : `: ${fromEach(fill)}`;
}

function each({ count }: CanFill): string {
  return count > 1 ? " each" : "";
}

export const tooLittleStock = "too little stock";

/** `too little stock: 30 mL missing` */
export function missingStock(ml: number, amounts: Amounts): string {
  return `${tooLittleStock}: ${stockText(ml, amounts)} missing`;
}

/** `Soil drench, 2.5 mL of stock to the litre` */
export function mixTitle(route: Route, rateMlPerL: number): string {
  return `${routeNames[route].title}, ${measured(rateMlPerL)} mL of stock to the litre`;
}

/** `a full can (9 L) with 23 mL of stock, about pH 4.6` */
export function fullVessel(vessel: Vessel, size: string, stockMl: number, ph?: number): string {
  const acidity = ph === undefined ? "" : `, about pH ${decimal(ph, 1)}`;
  return `a full ${vessel} (${size}) with ${decimal(stockMl, stockMl < 10 ? 1 : 0)} mL of stock${acidity}`;
}

/** `23 mL per 9 L can: tomato, pepper` */
export function doseOnLabel(stock: string, vessel: string, crops: readonly string[]): string {
  return `${stock} per ${vessel}: ${crops.join(", ")}`;
}

/** `In all: 46 mL of stock, 15 L of water` */
export function tripTotal(stockMl: number, waterL: number, amounts: Amounts): string {
  return `In all: ${measured(stockMl)} mL of stock, ${waterMeasured(waterL, amounts)} of water`;
}

const litresIn = { metric: 1, us: litersPerUsGallon, imperial: litersPerImperialGallon };

export function waterMeasured(waterL: number, amounts: Amounts): string {
  return `${measured(waterL / litresIn[amounts])} ${amounts === "metric" ? "L" : "gal"}`;
}
