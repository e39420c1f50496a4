/**
 * Quantities as growers write them: a number (`9`, `1.5`, `1 1/2`, `½`) and a unit, or two
 * quantities with `per`, `in` or `/` between them.
 */
import { commaMend, type Mending, withoutComma } from "../suggest.js";
import type { Amounts } from "./garden.js";
import { findUnit, type UnitKind, type UnitTable } from "./units.js";

export interface UnitContext {
  readonly units: UnitTable;
  readonly amounts: Amounts;
}

export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | ({ readonly ok: false; readonly message: string } & Mending);

const kinds: Record<UnitKind, { readonly words: string; readonly example: string }> = {
  volume: { words: "a volume", example: "9 L or 2 gal" },
  mass: { words: "a weight", example: "50 g or 2 oz" },
  length: { words: "a length", example: "20 m or 60 ft" },
  area: { words: "an area", example: "4 m2 or 40 ft2" },
  time: { words: "a number of days", example: "14 days or 2 weeks" },
  hardness: { words: "a hardness", example: "120 mg/L, 7 dH or 12 gpg" },
  concentration: { words: "a concentration", example: "5 g/L or 40 mg/L" },
  "soil-content": { words: "calcium in soil", example: "850 ppm, 1700 lb/acre or 4.2 meq/100 g" },
  density: { words: "a density", example: "1.2 kg/L" },
};

const numberAtStart = /^(\d+\s+\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+\.?)\s*/;

/**
 * Text -> amount in the base unit of the kind (L, g, m, m2, days, mg/L, mg/kg, kg/L).
 *
 * @param mayBeNegative as a height below the sea
 */
export function parseQuantity(
  text: string,
  kind: UnitKind,
  { units, amounts }: UnitContext,
  mayBeNegative = false,
): Parsed<number> {
  const signed = plainText(text);
  const plain = signed.replace(/^[-−–]\s*/, "");
  const isNegative = plain !== signed;
  const comma = commaTrouble(text);
  if (comma !== undefined) return comma;
  const { words, example } = kinds[kind];
  const refuse = (message: string, mend = `write it like ${example}`) =>
    ({ ok: false, message, mend }) as const;
  if (isNegative && !mayBeNegative) return refuse(`\`${text}\` is negative`);
  const number = numberAtStart.exec(plain);
  if (!number?.[1]) return refuse(`\`${text}\` is not a number with a unit`);
  const amount = numberOf(number[1]);
  if (!Number.isFinite(amount)) return refuse(`\`${text}\` divides by zero`);
  const unitName = plain.slice(number[0].length);
  if (unitName === "")
    return refuse(`\`${text}\` has no unit`, `write the unit behind the number, like ${example}`);
  const unit = findUnit(unitName, units, amounts, kind);
  if (unit !== undefined) return { ok: true, value: amount * unit.factor * (isNegative ? -1 : 1) };
  const other = findUnit(unitName, units, amounts);
  return refuse(
    other
      ? `\`${text}\` is ${kinds[other.kind].words}, ${words} is needed`
      : `the unit \`${unitName}\` is not known`,
    `write ${words} like ${example}`,
  );
}

/** `10 mL in 4 L`, `2.5 mL per L`, `2 tsp/gal` -> mL of stock per litre of water. */
export function parseRate(text: string, context: UnitContext): Parsed<number> {
  const [above, below] = splitPer(text);
  const mend = "write it like 2.5 mL per L, 10 mL in 4 L or 2 tsp per gal";
  const comma = commaTrouble(text);
  if (comma !== undefined) return comma;
  if (above === undefined || below === undefined)
    return { ok: false, message: `\`${text}\` is not a rate`, mend };
  const stock = parseQuantity(above, "volume", context);
  const water = parseQuantity(withNumber(below), "volume", context);
  if (!stock.ok) return { ...stock, mend };
  if (!water.ok) return { ...water, mend };
  if (water.value === 0) return { ok: false, message: `\`${text}\` is in no water`, mend };
  return { ok: true, value: (stock.value * 1000) / water.value };
}

export interface WaterAmount {
  readonly liters: number;
  /** A depth is litres per m2 too; only the words for it differ. */
  readonly per: "whole" | "plant" | "m2" | "depth";
}

/** A heavy soaking is 50 mm; the `m` of a misspelt `mL` is no depth of water. */
const depthBounds: Bounds = { least: 0, most: 0.3, words: "a depth of up to 300 mm" };

/** `6 L`, `2 L per plant`, `4 L per m2`, `1 gal per 10 ft2`, `25 mm`. */
export function parseWater(text: string, context: UnitContext): Parsed<WaterAmount> {
  const comma = commaTrouble(text);
  if (comma !== undefined) return comma;
  const depthM = parseQuantity(text, "length", context);
  if (depthM.ok) {
    const trouble = absurdSize(text, depthM.value, depthBounds);
    if (trouble !== undefined) return { ok: false, ...trouble };
    return { ok: true, value: { liters: depthM.value * 1000, per: "depth" } };
  }
  const [above, below] = splitPer(text);
  const liters = parseQuantity(above ?? text, "volume", context);
  const mend = "write it like 6 L, 2 L per plant or 4 L per m2";
  if (!liters.ok) return { ...liters, mend };
  const amount = (per: WaterAmount["per"], divisor = 1): Parsed<WaterAmount> => ({
    ok: true,
    value: { liters: liters.value / divisor, per },
  });
  if (below === undefined || /^(planting|bed)$/i.test(below)) return amount("whole");
  if (/^plants?$/i.test(below)) return amount("plant");
  const area = parseQuantity(withNumber(below), "area", context);
  if (!area.ok || area.value === 0)
    return { ok: false, message: `\`per ${below}\` is neither plants nor an area`, mend };
  return amount("m2", area.value);
}

/** Water a week, with or without saying so: `25 mm`, `25 mm a week`, `60 L/week`. */
export function parseWeeklyWater(text: string, context: UnitContext): Parsed<WaterAmount> {
  return parseWater(withoutWeek(text), context);
}

/** `25 mm per week` -> `25 mm` */
export function withoutWeek(text: string): string {
  return text.replace(/(?:\s*(?:\/|\b(?:per|an?|each|every)\b)\s*week|\s+weekly)?\s*$/i, "");
}

export interface SpreadAmount {
  readonly grams: number;
  readonly per: "whole" | "m2";
}

/** `500 g`, `50 g per m2`, `2 lb per 100 ft2`. */
export function parseSpread(text: string, context: UnitContext): Parsed<SpreadAmount> {
  const comma = commaTrouble(text);
  if (comma !== undefined) return comma;
  const [above, below] = splitPer(text);
  const mend = "write it like 500 g, 50 g per m2 or 2 lb per 100 ft2";
  const mass = parseQuantity(above ?? text, "mass", context);
  if (!mass.ok) return { ...mass, mend };
  if (below === undefined || /^bed$/i.test(below))
    return { ok: true, value: { grams: mass.value, per: "whole" } };
  const area = parseQuantity(withNumber(below), "area", context);
  if (!area.ok || area.value === 0)
    return { ok: false, message: `\`per ${below}\` is no area`, mend };
  return { ok: true, value: { grams: mass.value / area.value, per: "m2" } };
}

/** `94 %` -> 0.94. */
export function parsePercent(text: string): Parsed<number> {
  const comma = commaTrouble(text);
  if (comma !== undefined) return comma;
  const match = /^(\d+(?:\.\d+)?)\s*(?:%|percent)$/.exec(plainText(text));
  if (!match)
    return { ok: false, message: `\`${text}\` is not a percentage`, mend: "write it like 5 %" };
  return { ok: true, value: Number(match[1]) / 100 };
}

function commaTrouble(text: string): (Parsed<never> & { ok: false }) | undefined {
  const mend = commaMend(plainText(text));
  return mend === undefined
    ? undefined
    : {
        ok: false,
        message: `\`${text}\` has a comma in the number`,
        mend,
        ...(/^\d[\d,.]* ?[\p{L}\d %/]*$/u.test(text) && { fix: withoutComma(text) }),
      };
}

/** `per L` is per 1 L. */
function withNumber(text: string): string {
  return /^\.?\d/.test(text) ? text : `1 ${text}`;
}

function splitPer(text: string): [above: string | undefined, below: string | undefined] {
  const match = /^(.*?\S)\s*(?:\bper\b|\bin\b|\/(?!\d)|(?<=[a-z]\s?)\/)\s*(\S.*)$/i.exec(
    plainText(text),
  );
  return match ? [match[1], match[2]] : [undefined, undefined];
}

/** `1½ m²` -> `1 1/2 m2`; `half a gallon` -> `1/2 gallon`. */
function plainText(text: string): string {
  return text
    .replace(/[½¼¾⅓⅔⅛⅜⅝⅞]/g, (c) => ` ${c.normalize("NFKC")}`)
    .normalize("NFKC")
    .replaceAll("⁄", "/")
    .replace(/\b(?:and )?(?:an? )?(half|quarter)\b(?: of)?(?: an?\b)?-?/gi, (_, part: string) =>
      part.toLowerCase() === "half" ? "1/2" : "1/4",
    )
    .trim();
}

function numberOf(text: string): number {
  return text
    .split(/\s+/)
    .map((part) => {
      const [above, below] = part.split("/");
      return below === undefined ? Number(above) : Number(above) / Number(below);
    })
    .reduce((sum, part) => sum + part, 0);
}

/** Smallest and largest sensible amount, in the base unit. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
  /** The bounds in words: `0.1 L to 100 L`. */
  readonly words: string;
}

/** What is wrong with an amount beyond its bounds; a conversion's last digits are within them. */
export function absurdSize(
  text: string,
  amount: number,
  { least, most, words }: Bounds,
): { message: string; mend: string } | undefined {
  const isSmall = amount < least - Math.abs(least) * 1e-9;
  if (!isSmall && !(amount > most * (1 + 1e-9))) return undefined;
  return {
    message: `\`${text}\` is too ${isSmall ? "small" : "large"} to be meant`,
    mend: `check the number and the unit; ${words} is understood`,
  };
}

export const rateBounds: Bounds = { least: 0.01, most: 100, words: "0.01 to 100 mL per L" };
