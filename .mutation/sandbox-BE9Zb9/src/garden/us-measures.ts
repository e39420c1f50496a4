/** US cups, quarts and gallons as a kitchen and a watering can have them. */
// @ts-nocheck

import { decimal, mixedNumber } from "./numbers.js";

// NIST Handbook 44, Appendix C: exact by definition.
export const litersPerUsGallon = 3.785411784;
export const squareFeetPerM2 = 1 / 0.3048 ** 2;
export const mlPerTeaspoon = 4.92892159375;
const teaspoonsPerCup = 48;
export const mlPerCup = mlPerTeaspoon * teaspoonsPerCup;
const cupsPerGallon = 16;
const fluidOuncesPerCup = 8;
const teaspoonsPerTablespoon = 3;
const tablespoonsPerQuarterCup = 4;

/** Water: `1 1/2 gal`, `1 qt`, `3 cups`, `1 gal + 2 cups`; what no measure holds, `2.38 gal`, `16.9 fl oz`. */
export function usVolumeText(liters: number): string {
  const cups = (liters * 1000) / mlPerCup;
  const gallons = cups / cupsPerGallon;
  if (isWhole(gallons * 4))
    return Math.round(gallons * 4) === 1 ? "1 qt" : `${mixedNumber(gallons)} gal`;
  if (gallons > 1) {
    const inQuarters = Math.floor(gallons * 4) / 4;
    return isWhole(cups)
      ? `${mixedNumber(inQuarters)} gal + ${cupsText(cups - inQuarters * cupsPerGallon)}`
      : `${decimal(gallons, gallons < 10 ? 2 : gallons < 100 ? 1 : 0)} gal`;
  }
  if (isWhole(cups / 2)) return cups < 3 ? "1 pt" : `${mixedNumber(cups / 4)} qt`;
  return isWhole(cups * 4) ? cupsText(cups) : `${decimal(cups * fluidOuncesPerCup, 1)} fl oz`;
}

/** Stock in a can, exactly: `3/4 tsp`, `1 tbsp + 3/4 tsp`, `1/4 cup + 1 tbsp`. */
export function usSpoonsText(teaspoons: number): string {
  const tablespoons = Math.floor(teaspoons / teaspoonsPerTablespoon + 1e-6);
  const rest = teaspoons - tablespoons * teaspoonsPerTablespoon;
  const quarterCups = Math.floor(tablespoons / tablespoonsPerQuarterCup);
  const overCups = tablespoons - quarterCups * tablespoonsPerQuarterCup;
  return [
    quarterCups > 0 ? cupsText(quarterCups / 4) : "",
    overCups > 0 ? `${overCups} tbsp` : "",
    rest > 0.01 ? `${mixedNumber(rest)} tsp` : "",
  ]
    .filter((part) => part !== "")
    .join(" + ");
}

/** In teaspoons: finer the less it is, so that rounding stays within some per cent. */
const kitchenSteps = [
  { below: 6, by: 1 / 4 },
  { below: 12, by: 1 / 2 },
  { below: 30, by: 1 },
  { below: 4 * teaspoonsPerCup, by: 3 },
];

/** Of a recipe, a batch, a season: `2 tsp`, `1 cup + 1 tbsp`, `9 1/2 cups`, `2 1/2 qt`, `1 1/4 gal`. */
export function usKitchenText(ml: number, rounded = Math.round): string {
  if (ml === 0) return "0 tsp";
  const teaspoons = ml / mlPerTeaspoon;
  const step = kitchenSteps.find(({ below }) => teaspoons < below);
  if (step !== undefined)
    return usSpoonsText(Math.max(step.by, rounded(teaspoons / step.by) * step.by));
  const cups = rounded((4 * ml) / mlPerCup) / 4;
  const quarterGallons = Math.floor((4 * cups) / cupsPerGallon);
  const over = cups - (quarterGallons * cupsPerGallon) / 4;
  if (cups < cupsPerGallon)
    return isWhole(cups / 2) ? `${mixedNumber(cups / 4)} qt` : cupsText(cups);
  const gallons = `${mixedNumber(quarterGallons / 4)} gal`;
  return over === 0 ? gallons : `${gallons} + ${cupsText(over)}`;
}

function cupsText(cups: number): string {
  return `${mixedNumber(cups)} cup${cups > 1.01 ? "s" : ""}`;
}

function isWhole(value: number): boolean {
  return Math.round(value) > 0 && Math.abs(value - Math.round(value)) < 0.01;
}
