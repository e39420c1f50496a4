/** Shapes of a place's climate and of its weather. */
// @ts-nocheck

import type { Day, DaySpan } from "../dates.js";

/** Twelve means, January first, in both halves of the earth. */
export interface MonthlyMeans {
  /** Mean daily maximum of each month, degC. */
  readonly maxC: readonly number[];
  /** Mean daily minimum of each month, degC. */
  readonly minC: readonly number[];
  /** mm of each month; absent where nobody gave it. */
  readonly rainMm?: readonly number[];
}

/** What is known of the climate of a place. */
export interface PlaceClimate {
  readonly means: MonthlyMeans;
  /** Where the means are from, in words for the grower: source, years, distance, height. */
  readonly origin: string;
  /** Where they are from the table. */
  readonly point?: ClimatePoint;
  /** Root mean square error of a monthly mean temperature, degC. */
  readonly errorC: number;
  /** How far single days lie about the mean of their date: standard deviation, degC. */
  readonly daySdC: number;
  readonly latitudeDeg: number;
  readonly longitudeDeg?: number;
}

/** A point of the table of monthly means, as it lies from the garden. */
export interface ClimatePoint {
  readonly name: string;
  readonly distanceKm: number;
  /** Than the garden; negative where it lies lower, 0 where the garden's height is not known. */
  readonly higherM: number;
}

/** One day's weather. */
export interface DayWeather {
  readonly minC: number;
  readonly maxC: number;
  readonly rainMm?: number;
  /** By the file of what was seen: it has fallen, whatever today is. */
  readonly isRainSeen?: true;
  /** From a weather file, where `forecast` are its rows of today or later; or from the means. */
  readonly from: "seen" | "forecast" | "means";
}

/** The climate of a garden's place, and what weather files tell of single days. */
export interface PlaceWeather {
  readonly climate: PlaceClimate;
  /** Days of the weather files, gaps filled. Every other day has the weather that the means give. */
  readonly days: ReadonlyMap<Day, DayWeather>;
}

export const degreeDayMethods = ["simple", "modified", "single-sine"] as const;
export type DegreeDayMethod = (typeof degreeDayMethods)[number];

/** From where to where warmth counts, and how a day's is reckoned from its two temperatures. */
export interface Thresholds {
  readonly method: DegreeDayMethod;
  readonly baseC: number;
  /** No limit where absent. */
  readonly upperC?: number;
}

/** Degrees that are added to both temperatures of some days. */
export interface Warmer extends Partial<DaySpan> {
  readonly byC: number;
  /** Only on days from the means: the means' own error. */
  readonly onMeansOnly?: true;
}

/** Warmth of a place over days, in degree days (degC times days). */
export interface Warmth {
  /** From the morning of `from` to the evening of `to`; 0 where `to` lies before `from`. */
  readonly sum: (span: DaySpan, thresholds: Thresholds, warmer?: readonly Warmer[]) => number;
  /**
   * The first day by whose evening the sum from the morning of `from` on is reached; `from` itself for
   * a sum of 0; undefined where that isn't so by the evening of `until`.
   */
  readonly reached: (
    degreeDays: number,
    span: { readonly from: Day; readonly until: Day },
    thresholds: Thresholds,
    warmer?: readonly Warmer[],
  ) => Day | undefined;
}
