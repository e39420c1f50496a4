/** Amounts of a recipe as they are weighed and measured in the kitchen. */
// @ts-nocheck

import {
  type Amounts,
  decimal,
  litersPerUsGallon,
  totalStockText,
  volumeText,
} from "../../garden/index.js";

// NIST Handbook 44, Appendix C: exact by definition.
const gPerOunce = 28.349523125;
const ouncesPerPound = 16;

/** `59 g`; in US measures `2.1 oz (59 g)`. */
export function weightText(g: number, amounts: Amounts): string {
  const metric = g < 10 ? `${g.toFixed(1)} g` : `${Math.round(g)} g`;
  if (amounts !== "us") return metric;
  const ounces = g / gPerOunce;
  return ounces < ouncesPerPound
    ? `${decimal(ounces, ounces < 1 ? 2 : 1)} oz (${metric})`
    : `${decimal(ounces / ouncesPerPound, 2)} lb (${metric})`;
}

/** `990 mL`, `1.5 L`; in US measures cups and spoons, from a quart on quarts and gallons. */
export function kitchenVolumeText(ml: number, amounts: Amounts): string {
  if (amounts === "us") return totalStockText(ml, amounts);
  return ml < 1000 ? `${Math.round(ml)} mL` : `${decimal(ml / 1000, 2)} L`;
}

/** Jars, bowls and buckets, and gas: `5 L`; in US measures rounded up: `1 qt`, `1 1/2 gal`. */
export function vesselText(l: number, amounts: Amounts): string {
  if (amounts !== "us") return `${decimal(l, l < 10 ? 1 : 0)} L`;
  const gallons = l / litersPerUsGallon;
  const partsOfGallon = gallons < 1 ? 4 : 2;
  const roundedUp = Math.ceil(gallons * partsOfGallon - 1e-9) / partsOfGallon;
  return volumeText(roundedUp * litersPerUsGallon, amounts);
}

/** `500 mL`, `1.5 L`; in US measures `1 qt`, `16.9 fl oz`. */
export function bottleText(ml: number, amounts: Amounts): string {
  return amounts === "us" ? volumeText(ml / 1000, amounts) : kitchenVolumeText(ml, amounts);
}

/** Level US spoons, to the half: three teaspoons to the tablespoon. */
export function spoonsText(tablespoons: number): string {
  const [n, spoon] =
    tablespoons > 0.9 ? [tablespoons, "tablespoon"] : [3 * tablespoons, "teaspoon"];
  const halves = Math.max(1, Math.round(2 * n)) / 2;
  return `${halves} level ${spoon}${halves > 1 ? "s" : ""}`;
}
