/** How far a point of the climate table lies from the garden, in the grower's measures. */
// @ts-nocheck


/** Measures that a grower reads: km, m and degC, or miles, feet and degF. */
export type PlaceMeasures = "metric" | "us";

export interface MeasureWords {
  readonly distance: (km: number) => string;
  readonly height: (m: number) => string;
  /** Of a difference. */
  readonly degrees: (c: number) => string;
  readonly lapse: (cPerM: number) => string;
}

const [kmPerMile, mPerFoot, fPerC] = [1.609344, 0.3048, 1.8];

export const measuresInWords: Readonly<Record<PlaceMeasures, MeasureWords>> = {
  metric: {
    distance: (km) => distanceWords(km, "km", "km"),
    height: (m) => `${whole(m)} m`,
    degrees: (c) => `${c.toFixed(1)} C`,
    lapse: (cPerM) => `${(100 * cPerM).toFixed(1)} C per 100 m`,
  },
  us: {
    distance: (km) => distanceWords(km / kmPerMile, "mile", "miles"),
    height: (m) => `${whole(m / mPerFoot)} ft`,
    degrees: (c) => `${(c * fPerC).toFixed(1)} F`,
    lapse: (cPerM) => `${(1000 * mPerFoot * fPerC * cPerM).toFixed(1)} F per 1,000 ft`,
  },
};

function distanceWords(distance: number, one: string, several: string): string {
  const rounded = Math.round(distance);
  if (rounded === 0) return `less than 1 ${one}`;
  return `${whole(distance)} ${rounded === 1 ? one : several}`;
}

function whole(value: number): string {
  return Math.round(value).toLocaleString("en-US");
}

export function heightInOrigin(higherM: number, words: MeasureWords): string {
  return Math.round(higherM) === 0 ? "at the same height" : `and ${heightWords(higherM, words)}`;
}

/** @param higherM of the point */
export function heightWords(higherM: number, { height }: MeasureWords): string {
  return `${height(Math.abs(higherM))} ${higherM > 0 ? "higher" : "lower"}`;
}
