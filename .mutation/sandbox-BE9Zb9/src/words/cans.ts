/** Cans and sprayers, how full they are, and what goes in each. */
// @ts-nocheck

import {
  type Amounts,
  decimal,
  litersPerImperialGallon,
  pouredText,
  rateIn,
  rateMeasures,
  type Route,
  totalOf,
  type Vessel,
  volumeText,
} from "../garden/index.js";
import type { CanFill, CanMix, FromJug } from "../season/index.js";
import { batchName } from "../stock/index.js";
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

/** `2 cans × 23 mL`, `1 part sprayer × 4 mL (2 L)`, `16 cans × 100 mL from a jug (8 mL in 1.6 L)` */
export function fillInShort(fill: CanFill, vessel: Vessel): string {
  const { count, full, waterText } = fill;
  const water = full || isAllFromJug(fill) ? "" : ` (${waterText})`;
  return full
    ? `${vesselCount(count, vessel)} × ${stockInShort(fill)}`
    : `${count} part ${vesselWords(vessel, count)} × ${stockInShort(fill)}${water}`;
}

/** `23 mL`, `100 mL from a jug (8 mL in 1.6 L)` */
export function stockInShort({ stockText, jug }: CanFill): string {
  return jug === undefined ? stockText : `${jug.takeText} ${aJug(jug)}`;
}

function aJug({ stockText, waterText }: FromJug): string {
  return `from a jug (${stockText} in ${waterText})`;
}

function isAllFromJug({ waterL, jug }: CanFill): boolean {
  return jug !== undefined && jug.takeL > waterL * (1 - 1e-9);
}

/** Behind what is taken of it: `from a jug of 1.6 L with 8 mL of stock in it, filled up to 2 L` */
function fromJug(fill: CanFill, jug: FromJug, ofWhat = ""): string {
  const filledUp = isAllFromJug(fill) ? "" : `, filled up to ${fill.waterText}`;
  return `from a jug of ${jug.waterText} with ${jug.stockText}${ofWhat} in it${filledUp}`;
}

/** `2 full cans: 23 mL of stock in 9 L of water each` */
export function fillInFull(fill: CanFill, vessel: Vessel, liquid = "stock"): string {
  const { stockText, waterText, jug } = fill;
  if (jug !== undefined)
    return `${fillWords(fill, vessel)}: ${jug.takeText}${each(fill)} ${fromJug(fill, jug, ` of ${liquid}`)}`;
  return `${fillWords(fill, vessel)}: ${stockText} of ${liquid} in ${waterText} of water${each(fill)}${andFromEach(fill)}`;
}

/** `2 full cans: 23 mL in 9 L each`; what is measured out may be marked. */
export function fillWithStock<T>(
  say: Say<T>,
  fill: CanFill,
  vessel: Vessel,
  marked: (stock: string) => T,
): T {
  const { stockText, waterText, jug } = fill;
  const cans = fillWords(fill, vessel);
  return jug === undefined
    ? say`${cans}: ${marked(stockText)} in ${waterText}${each(fill)}${andFromEach(fill)}`
    : say`${cans}: ${marked(jug.takeText)}${each(fill)} ${fromJug(fill, jug)}`;
}

/** In the row of a sheet: `2 cans × 23 mL`, `1 part can × 8 mL in 3 L`; what is measured may be marked. */
export function fillOnSheet<T>(
  say: Say<T>,
  fill: CanFill,
  vessel: Vessel,
  marked: (stock: string) => T,
): T {
  const { count, full, stockText, waterText, jug } = fill;
  const cans = full ? vesselCount(count, vessel) : `${count} part ${vesselWords(vessel, count)}`;
  return jug === undefined
    ? say`${cans} × ${marked(stockText)}${full ? "" : ` in ${waterText}`}${andFromEach(fill)}`
    : say`${cans} × ${marked(jug.takeText)} ${fromJug(fill, jug)}`;
}

/** `23 mL each`; from a jug, its share. */
export function stockInEach(fill: CanFill): string {
  return `${fill.jug?.takeText ?? fill.stockText}${each(fill)}`;
}

/** Under {@link stockInEach}: `of stock in 9 L of water each` */
export function ofStockInWater(fill: CanFill): string {
  if (fill.jug !== undefined) return fromJug(fill, fill.jug, " of stock");
  return `of stock in ${fill.waterText} of water${each(fill)}${andFromEach(fill)}`;
}

/** In the row of a terminal: `23 mL each`, `100 mL each from a jug (8 mL in 1.6 L)` */
export function stockInRow(fill: CanFill): string {
  return fill.jug === undefined ? stockInEach(fill) : `${stockInEach(fill)} ${aJug(fill.jug)}`;
}

/** `15 mL from batch 1, 8 mL from batch 2`, where a can is poured from several. */
export function fromEach({ pours = [] }: CanFill): string {
  return pours
    .map(({ stockText, batch }) => fromBottle(plain, stockText, batchName(batch)))
    .join(", ");
}

/** `: 15 mL from batch 1, 8 mL from batch 2` behind the rest */
function andFromEach(fill: CanFill): string {
  return fill.pours === undefined ? "" : `: ${fromEach(fill)}`;
}

function each({ count }: CanFill): string {
  return count > 1 ? " each" : "";
}

export const tooLittleStock = "too little stock";

/** `too little stock: 30 mL missing` */
export function missingStock(ml: number, amounts: Amounts): string {
  return `${tooLittleStock}: ${missing(ml, amounts)}`;
}

/** The same where the round has said it already: `30 mL missing` */
export function missing(ml: number, amounts: Amounts): string {
  return `${pouredText(ml, amounts)} missing`;
}

/** `Soil drench, 2.5 mL of stock to the litre` */
export function mixTitle(route: Route, rateMlPerL: number, amounts: Amounts): string {
  return `${routeNames[route].title}, ${rateInFull(rateMlPerL, amounts, "of stock ")}`;
}

/** `2.5 mL of stock to the litre`, `1.92 tsp to the gallon` */
function rateInFull(rateMlPerL: number, amounts: Amounts, ofWhat = ""): string {
  const { stock, waterWord } = rateMeasures[amounts];
  return `${measured(rateIn(amounts, rateMlPerL))} ${stock} ${ofWhat}to the ${waterWord}`;
}

/** `a full can (9 L) with 23 mL of stock, about pH 4.6` */
export function fullVessel(vessel: Vessel, size: string, stock: string, ph?: number): string {
  const acidity = ph === undefined ? "" : `, about pH ${decimal(ph, 1)}`;
  return `a full ${vessel} (${size}) with ${stock} of stock${acidity}`;
}

/** `23 mL per full 9 L can: tomato, pepper`; the amount may be marked. */
export function doseOnLabel<T>(say: Say<T>, stock: T, vessel: string, crops: readonly string[]): T {
  return say`${stock} per full ${vessel}: ${crops.join(", ")}`;
}

/** The same where there is little room: `23 mL per 9 L can` */
export function doseInShort<T>(say: Say<T>, stock: T, vessel: string): T {
  return say`${stock} per ${vessel}`;
}

/** How often vessels are filled, part fills among them. */
export function vesselsIn(fills: readonly Pick<CanFill, "count">[]): number {
  return fills.reduce((total, { count }) => total + count, 0);
}

/** Stock, or another feed, in all of them, mL. */
export function stockIn(fills: readonly Pick<CanFill, "count" | "stockMl">[]): number {
  return totalOf(fills.map(({ count, stockMl }) => count * stockMl));
}

/** In the cans as they are filled. */
export function waterCarriedL(mixes: readonly Pick<CanMix, "fills">[]): number {
  return totalOf(mixes.flatMap(({ fills }) => fills.map(({ count, waterL }) => count * waterL)));
}

const litresIn = { metric: 1, imperial: litersPerImperialGallon };

export function waterMeasured(waterL: number, amounts: Amounts): string {
  if (amounts === "us") return volumeText(waterL, amounts);
  return `${measured(waterL / litresIn[amounts])} ${amounts === "metric" ? "L" : "gal"}`;
}
