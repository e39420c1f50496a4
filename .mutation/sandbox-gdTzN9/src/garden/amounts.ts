/** Amounts as a person reads and measures them, in the garden's own measures. */
// @ts-nocheck

import type { Amounts } from "./garden.js";
import { decimal, mixedNumber } from "./numbers.js";
import {
  litersPerUsGallon,
  mlPerTeaspoon,
  usKitchenText,
  usSpoonsText,
  usVolumeText,
} from "./us-measures.js";

// Weights and Measures Act 1985, schedule 1: exact by definition.
export const litersPerImperialGallon = 4.54609;

/** Of the unit that larger amounts of water are told in. */
export const litersPerVolume: Readonly<Record<Amounts, number>> = {
  metric: 1,
  imperial: litersPerImperialGallon,
  us: litersPerUsGallon,
};

/** Water: `9 L`, `600 mL`, `1 1/2 gal`; in US measures `1 qt`, `3 cups`, too. */
export function volumeText(liters: number, amounts: Amounts): string {
  if (amounts === "us") return liters === 0 ? "0 gal" : usVolumeText(liters);
  const inMl = `${decimal(liters * 1000, 0)} mL`;
  if (amounts === "metric") return liters >= 1 || liters === 0 ? `${decimal(liters, 2)} L` : inMl;
  const gallons = liters / litersPerImperialGallon;
  return gallons >= 0.24 || liters === 0 ? `${mixedNumber(gallons)} gal` : inMl;
}

/** Stock to measure out: `23 mL`; in US measures `3/4 tsp`, `1 tbsp + 3/4 tsp`, `1/4 cup + 1 tbsp`. */
export function stockText(ml: number, amounts: Amounts): string {
  // Small amounts keep two digits, so that the text stays within some per cent of the amount.
  const inMl = `${decimal(ml, ml < 0.1 ? 3 : ml < 2 ? 2 : 1)} mL`;
  if (amounts !== "us") return inMl;
  const eighths = (ml / mlPerTeaspoon) * 8;
  // Spoons are counted in hundredths of a mL. What no spoon of a kitchen set measures is drawn up with a syringe.
  return eighths < 1.92 || Math.abs(eighths - Math.round(eighths)) >= 0.01
    ? inMl
    : usSpoonsText(Math.round(eighths) / 8);
}

/** Stock that is taken of one of several bottles, as near as it can be measured. */
export function pouredText(ml: number, amounts: Amounts): string {
  return amounts === "us" ? usKitchenText(ml) : `${decimal(ml, ml < 1 ? 2 : 1)} mL`;
}

/** The sum of what is measured into several cans: in US measures to the eighth of a teaspoon. */
export function sumOfStockText(ml: number, amounts: Amounts): string {
  const eighths = Math.round((ml / mlPerTeaspoon) * 8);
  return amounts === "us" && eighths > 1 ? usSpoonsText(eighths / 8) : stockText(ml, amounts);
}

/** Totals of stock, and what is left of it: `1.25 L`, `2 cups`. */
export function totalStockText(ml: number, amounts: Amounts): string {
  if (amounts === "us") return usKitchenText(ml);
  return ml < 1000 ? `${decimal(ml, 0)} mL` : `${decimal(ml / 1000, 2)} L`;
}

/** A total that is enough: never less than it, other than by the dust of binary fractions. */
export function enoughStockText(ml: number, amounts: Amounts): string {
  const up = (value: number): number => Math.ceil(value - 1e-6);
  return amounts === "us" ? usKitchenText(ml, up) : totalStockText(up(ml / 10) * 10, amounts);
}

/** What stock, and the water that it is stirred into, are reckoned in where a rate is told. */
export interface RateMeasures {
  readonly stock: "mL" | "tsp";
  readonly stockMl: number;
  readonly water: "L" | "gal";
  readonly waterWord: "litre" | "gallon";
  readonly waterL: number;
  /** The strength of a bottle is told in so much of it. */
  readonly strengthUnit: "L" | "tsp";
  readonly strengthWord: "litre" | "teaspoon";
}

const inMlAndL: RateMeasures = {
  stock: "mL",
  stockMl: 1,
  water: "L",
  waterWord: "litre",
  waterL: 1,
  strengthUnit: "L",
  strengthWord: "litre",
};

export const rateMeasures: Readonly<Record<Amounts, RateMeasures>> = {
  metric: inMlAndL,
  imperial: inMlAndL,
  us: {
    stock: "tsp",
    stockMl: mlPerTeaspoon,
    water: "gal",
    waterWord: "gallon",
    waterL: litersPerUsGallon,
    strengthUnit: "tsp",
    strengthWord: "teaspoon",
  },
};

/** mL per litre in the garden's own measures: a number of its `stock` in one of its `water`. */
export function rateIn(amounts: Amounts, rateMlPerL: number): number {
  const { stockMl, waterL } = rateMeasures[amounts];
  return (rateMlPerL * waterL) / stockMl;
}

/** `2.5 mL per L`, `1.92 tsp per gal` */
export function rateText(rateMlPerL: number, amounts: Amounts): string {
  const { stock, water } = rateMeasures[amounts];
  return `${decimal(rateIn(amounts, rateMlPerL), 2)} ${stock} per ${water}`;
}

/** Calcium that the stock holds: `17.8 g` in a litre, in US measures `87.5 mg` in a teaspoon. */
export function strengthFigure(gPerL: number, amounts: Amounts, places = 1): string {
  if (amounts !== "us") return `${decimal(gPerL, places)} g`;
  const mgPerTeaspoon = gPerL * mlPerTeaspoon;
  return `${Number(mgPerTeaspoon.toPrecision(3))} mg`;
}

/** `17.8 g of calcium per litre`, `87.5 mg of calcium per teaspoon` */
export function strengthText(gPerL: number, amounts: Amounts, places = 1): string {
  return `${strengthFigure(gPerL, amounts, places)} of calcium per ${rateMeasures[amounts].strengthWord}`;
}

/** mg in a litre of can water, or in a gallon of it. */
export function calciumIn(amounts: Amounts, mgPerL: number): number {
  return mgPerL * rateMeasures[amounts].waterL;
}

/** Measured amounts together, free of the dust of binary fractions. */
export function totalOf(amounts: readonly number[]): number {
  return withoutDust(amounts.reduce((total, amount) => total + amount, 0));
}

/** To a millionth: finer than anything that is measured here. */
export function withoutDust(amount: number): number {
  return Number(amount.toFixed(6));
}

/** `1 can`, `3 cans` */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
