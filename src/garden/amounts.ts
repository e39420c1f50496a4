/** Amounts as a person reads and measures them, in the garden's own measures. */
import type { Amounts } from "./garden.js";

// NIST Handbook 44, Appendix C: exact by definition.
export const litersPerUsGallon = 3.785411784;
export const litersPerImperialGallon = 4.54609;
export const mlPerTeaspoon = 4.92892159375;
const teaspoonsPerTablespoon = 3;
const tablespoonsPerCup = 16;
const fluidOuncesPerUsGallon = 128;
const quartsPerUsGallon = 4;

/** Water: `9 L`, `600 mL`, `1 1/2 gal`, `24 fl oz`. */
export function volumeText(liters: number, amounts: Amounts): string {
  const inMl = `${decimal(liters * 1000, 0)} mL`;
  if (amounts === "metric") return liters >= 1 || liters === 0 ? `${decimal(liters, 2)} L` : inMl;
  const gallons = liters / (amounts === "us" ? litersPerUsGallon : litersPerImperialGallon);
  if (gallons >= 0.24 || liters === 0) return `${mixedNumber(gallons)} gal`;
  return amounts === "us" ? `${decimal(gallons * fluidOuncesPerUsGallon, 1)} fl oz` : inMl;
}

/** Stock to measure out: `23 mL`; in US measures `3/4 tsp`, `1 tbsp + 3/4 tsp`, `1 cup + 2 tbsp`. */
export function stockText(ml: number, amounts: Amounts): string {
  // Small amounts keep two digits, so that the text stays within some per cent of the amount.
  const inMl = `${decimal(ml, ml < 0.1 ? 3 : ml < 2 ? 2 : 1)} mL`;
  if (amounts !== "us") return inMl;
  const eighths = (ml / mlPerTeaspoon) * 8;
  // Spoons are counted in hundredths of a mL. What no spoon of a kitchen set measures is drawn up with a syringe.
  if (eighths < 1.92 || Math.abs(eighths - Math.round(eighths)) >= 0.01) return inMl;
  const teaspoons = Math.round(eighths) / 8;
  const whole = Math.floor(teaspoons / teaspoonsPerTablespoon + 1e-6);
  const rest = teaspoons - whole * teaspoonsPerTablespoon;
  const cups = Math.floor(whole / tablespoonsPerCup);
  const tablespoons = whole - cups * tablespoonsPerCup;
  return [
    cups > 0 ? `${cups} cup${cups > 1 ? "s" : ""}` : "",
    tablespoons > 0 ? `${tablespoons} tbsp` : "",
    rest > 0.01 ? `${mixedNumber(rest)} tsp` : "",
  ]
    .filter((part) => part !== "")
    .join(" + ");
}

/** Totals of stock over a season: `1.25 L`, `2 cups`. */
export function totalStockText(ml: number, amounts: Amounts): string {
  if (ml < 1000 && amounts === "us") {
    const quarters = Math.round((ml / mlPerTeaspoon) * 4);
    return stockText(quarters > 0 ? (quarters / 4) * mlPerTeaspoon : ml, "us");
  }
  if (ml < 1000) return `${decimal(ml, 0)} mL`;
  if (amounts !== "us") return `${decimal(ml / 1000, 2)} L`;
  const gallons = ml / 1000 / litersPerUsGallon;
  return gallons >= 1
    ? volumeText(ml / 1000, "us")
    : `${decimal(gallons * quartsPerUsGallon, 1)} qt`;
}

/** Measured amounts together, free of the dust of binary fractions. */
export function totalOf(amounts: readonly number[]): number {
  return withoutDust(amounts.reduce((total, amount) => total + amount, 0));
}

/** To a millionth: finer than anything that is measured here. */
export function withoutDust(amount: number): number {
  return Number(amount.toFixed(6));
}

/** At most that many places, without trailing zeros. */
export function decimal(value: number, places: number): string {
  return String(Number(value.toFixed(places)));
}

/** `1 can`, `3 cans` */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** As the recipe has them: `9.5 g`, `16 g`. */
export function gramsText(g: number): string {
  return `${decimal(g, g < 10 ? 1 : 0)} g`;
}

const fractions: readonly [number, string][] = [
  [0, ""],
  [1 / 8, "1/8"],
  [1 / 4, "1/4"],
  [1 / 3, "1/3"],
  [3 / 8, "3/8"],
  [1 / 2, "1/2"],
  [5 / 8, "5/8"],
  [2 / 3, "2/3"],
  [3 / 4, "3/4"],
  [7 / 8, "7/8"],
  [1, ""],
];

/** 1.5 -> `1 1/2`; what is no kitchen fraction stays a decimal. */
export function mixedNumber(value: number): string {
  const whole = Math.floor(value + 1e-9);
  const near = fractions.find(([part]) => Math.abs(value - whole - part) < 0.005);
  if (near === undefined) return decimal(value, 2);
  const ones = near[0] === 1 ? whole + 1 : whole;
  return [ones > 0 || near[1] === "" ? String(ones) : "", near[1]].filter(Boolean).join(" ");
}
