/** Numbers within words. */
// @ts-nocheck

import { type Amounts, decimal } from "../garden/index.js";

/** Three figures are enough for anything measured with a can or a spoon. */
export function figures(value: number): string {
  return value >= 100 ? decimal(value, 0) : String(Number(value.toPrecision(3)));
}

/** Stock is measured to the millilitre or the quarter teaspoon, water to the tenth of a litre. */
export function measured(value: number): string {
  return decimal(value, value < 10 ? 2 : 1);
}

/** Kept on one line. */
export function unbroken(text: string): string {
  return text.replaceAll(" ", "\u00a0");
}

/** `27 degrees C`, `80 degrees F` */
export function degreesText(degC: number, amounts: Amounts): string {
  return amounts === "us"
    ? `${decimal(degC * 1.8 + 32, 0)} degrees F`
    : `${decimal(degC, 1)} degrees C`;
}
