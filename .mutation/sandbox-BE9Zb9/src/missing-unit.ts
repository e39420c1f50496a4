/** The unit that a bare number lacks. */
// @ts-nocheck


/** Kinds of text (`format`) that are amounts with their unit. */
export const quantityFormats: ReadonlySet<string> = new Set([
  "volume",
  "mass",
  "length",
  "area",
  "hardness",
  "concentration",
  "percent",
  "duration",
  "days",
  "water",
  "rate",
  "temperature",
  "temperature-difference",
  "soil-content",
  "density",
  "spread",
  "watering",
]);

/** What a file is written in, where it says so. */
export type Measures = "metric" | "us" | "imperial";

export function measuresOf(value: unknown): Measures {
  const { amounts } = (value ?? {}) as { amounts?: unknown };
  return amounts === "us" || amounts === "imperial" ? amounts : "metric";
}

/** Of these the garden's measures say the unit; hardness has several in any measures. */
const sizeFormats = new Set([
  "volume",
  "mass",
  "length",
  "area",
  "days",
  "duration",
  "temperature",
]);
const usUnit = /^(?:gal|qt|pt|fl oz|tbsp|tsp|cups?|ft2?|in|oz|lb|F)$/;

interface Described {
  readonly format?: string;
  readonly examples?: readonly unknown[];
}

/** The one unit that the examples have in such measures. */
export function onlyUnit(
  { format = "", examples = [] }: Described,
  measures: Measures,
): string | undefined {
  if (!sizeFormats.has(format) || measures === "imperial") return undefined;
  const isOfTime = format === "days" || format === "duration";
  const units = examples
    .flatMap((example) => /^[\d.]+ ([^\d].*)$/.exec(String(example))?.[1] ?? [])
    .filter((unit) => isOfTime || usUnit.test(unit) === (measures === "us"));
  const [unit, ...others] = new Set(units);
  return others.length === 0 ? unit : undefined;
}
