/** The options of `batch` as sizes and means; what cannot be meant is wrong usage. */
// @ts-nocheck

import { inBaseUnit } from "../climate/index.js";
import {
  absurdSize,
  type Acid,
  type Amounts,
  type Bounds,
  type Parsed,
  parsePercent,
  parseQuantity,
  type UnitKind,
} from "../garden/index.js";
import type { BatchSize, RecipeMeans } from "../stock/index.js";
import type { Tables } from "../tables.js";
import { wrongUsage } from "./shell.js";

export interface BatchSizes {
  readonly make?: string;
  readonly shells?: string;
  readonly acid?: string;
}

export interface BatchWays {
  readonly vinegar?: string;
  readonly citric?: true;
  readonly monohydrate?: true;
  readonly purity?: string;
  readonly temperature?: string;
  readonly bottles?: string;
}

type Units = Pick<Tables, "units">;

/** The size asked for, if any. Throws CommandError (wrong usage). */
export function batchSize(
  options: BatchSizes,
  acidKind: Acid,
  amounts: Amounts,
  tables: Units,
): BatchSize | undefined {
  const { make, shells, acid } = options;
  const given = Object.entries({ make, shells, acid }).filter(([, text]) => text !== undefined);
  if (given.length > 1)
    throw wrongUsage(
      `${given.map(([key]) => `--${key}`).join(" and ")}: give one size, not several`,
    );
  if (make !== undefined) {
    const bounds = { least: 0.05, most: 1000, words: "50 mL to 1,000 L" };
    return {
      by: "volume",
      makeMl: 1000 * quantity("--make", make, "volume", bounds, amounts, tables),
    };
  }
  if (shells !== undefined) return { by: "shells", eggs: eggs(shells) };
  if (acid === undefined) return undefined;
  if (isPoured[acidKind] && parseQuantity(acid, "volume", { ...tables, amounts }).ok) {
    const bounds = { least: 0.05, most: 1000, words: "50 mL to 1,000 L of vinegar" };
    const liters = quantity("--acid", acid, "volume", bounds, amounts, tables);
    return { by: "vinegar", volumeMl: 1000 * liters };
  }
  const bounds = { least: 1, most: 100_000, words: "1 g to 100 kg" };
  return { by: "acid", grams: quantity("--acid", acid, "mass", bounds, amounts, tables) };
}

/** Measured by volume as well as by weight. */
const isPoured: Readonly<Record<Acid, boolean>> = { citric: false, vinegar: true };

/** The grower's usual means, as far as the options do not say otherwise. Throws CommandError. */
export function batchMeans(
  options: BatchWays,
  usual: RecipeMeans,
  amounts: Amounts,
  tables: Units,
): RecipeMeans {
  const { vinegar, citric, monohydrate, purity, temperature, bottles } = options;
  if (vinegar !== undefined && (citric ?? monohydrate))
    throw wrongUsage(`--vinegar and --${citric ? "citric" : "monohydrate"}: give one acid`);
  return {
    ...usual,
    amounts,
    ...(vinegar === undefined
      ? {}
      : { acid: "vinegar" as const, vinegarPercent: percent("--vinegar", vinegar, acidity) }),
    ...((citric ?? monohydrate) ? { acid: "citric" as const } : {}),
    ...(monohydrate ? { citricForm: "monohydrate" as const } : {}),
    ...(purity === undefined ? {} : { shellPurity: percent("--purity", purity, carbonate) / 100 }),
    ...(temperature === undefined ? {} : { temperatureC: celsius(temperature) }),
    ...(bottles === undefined
      ? {}
      : { bottleMl: 1000 * quantity("--bottles", bottles, "volume", bottle, amounts, tables) }),
  };
}

const acidity: Bounds = {
  least: 1,
  most: 25,
  words: "1 % to 25 %, usually 4 % to 8 % (stronger acetic acid burns the skin),",
};
const carbonate: Bounds = { least: 50, most: 100, words: "50 % to 100 %" };
const bottle: Bounds = { least: 0.01, most: 100, words: "10 mL to 100 L" };
const kitchen: Bounds = { least: 1, most: 60, words: "1 C to 60 C" };

function quantity(
  option: string,
  text: string,
  kind: UnitKind,
  bounds: Bounds,
  amounts: Amounts,
  tables: Units,
): number {
  const value = accepted(option, parseQuantity(text, kind, { units: tables.units, amounts }));
  return inBounds(option, text, value, bounds);
}

function percent(option: string, text: string, bounds: Bounds): number {
  return inBounds(option, text, 100 * accepted(option, parsePercent(text)), bounds);
}

function eggs(text: string): number {
  if (!/^\d+$/.test(text.trim()))
    throw wrongUsage(`--shells: \`${text}\` is no number of shells: write a whole number, like 30`);
  return inBounds("--shells", text, Number(text), {
    least: 1,
    most: 20_000,
    words: "1 to 20,000 shells",
  });
}

/** `20`, `20 C`, `68F`. */
function celsius(text: string): number {
  const match = /^(-?\d+(?:\.\d+)?)\s*(?:(?:°|deg)?\s*([CF]))?$/i.exec(text.trim());
  if (!match)
    throw wrongUsage(`--temperature: \`${text}\` is no temperature: write it like 20 C or 68 F`);
  const degrees = Number(match[1]);
  const value = match[2]?.toUpperCase() === "F" ? inBaseUnit.F(degrees) : degrees;
  return inBounds("--temperature", text, value, kitchen);
}

function accepted<T>(option: string, parsed: Parsed<T>): T {
  if (parsed.ok) return parsed.value;
  throw wrongUsage(`${option}: ${parsed.message}: ${parsed.mend}`);
}

function inBounds(option: string, text: string, value: number, bounds: Bounds): number {
  const absurd = absurdSize(text, value, bounds);
  if (absurd === undefined) return value;
  throw wrongUsage(`${option}: ${absurd.message}: ${absurd.mend}`);
}
