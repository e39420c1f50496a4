/** Amounts of calcium that are known between two bounds, and what they come to for a plant and a m2. */
// @ts-nocheck


/** Both ends count; the unit stands in the name of what holds it. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

export function exactly(value: number): Range {
  return { low: value, high: value };
}

export function scaled({ low, high }: Range, factor: number): Range {
  return { low: low * factor, high: high * factor };
}

/** Factors of 0 or more. */
export function product(a: Range, b: Range): Range {
  return { low: a.low * b.low, high: a.high * b.high };
}

export function summed(ranges: readonly Range[]): Range {
  return {
    low: ranges.reduce((sum, { low }) => sum + low, 0),
    high: ranges.reduce((sum, { high }) => sum + high, 0),
  };
}

/** From the least to the most of all; undefined of none. */
export function widest(ranges: readonly Range[]): Range | undefined {
  if (ranges.length === 0) return undefined;
  return {
    low: Math.min(...ranges.map(({ low }) => low)),
    high: Math.max(...ranges.map(({ high }) => high)),
  };
}

/** The part in per cent of the whole, which is above 0. */
export function percentOf(part: Range, whole: Range): Range {
  return { low: (part.low / whole.high) * 100, high: (part.high / whole.low) * 100 };
}
