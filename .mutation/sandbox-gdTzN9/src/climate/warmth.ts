/** Warmth of a place over days: sums of degree days, and the day one is reached. */
// @ts-nocheck

import { addDays, type Day, dayFromNumber, dayNumber, type DaySpan, yearOf } from "../dates.js";
import type { PlaceWeather, Thresholds, Warmer, Warmth } from "./climate.js";
import { type Added, sumsOfYears } from "./year-sums.js";
import { indexInYear } from "./year-ring.js";

/** Days of one year on which the same degrees are added. */
interface Piece {
  readonly firstDayNumber: number;
  readonly days: number;
  /** Degree days of the piece's first `days` days. */
  readonly upTo: (days: number) => number;
}

/**
 * Days seen and forecast count as they are, one by one. All others, of any year, have the weather of
 * the means, spread as single days lie about them. What has been summed is kept for as long as the
 * answer: make one for a place and ask it often.
 *
 * Warmth is never below 0 and grows with every degree: a higher sum is never reached earlier, nor the
 * same sum later where it is warmer.
 */
export function warmthOf(place: PlaceWeather): Warmth {
  const sumsOf = sumsOfYears(place);

  function* pieces(
    span: DaySpan,
    thresholds: Thresholds,
    warmer: readonly Warmer[],
  ): Generator<Piece> {
    const starts = startsOfPieces(span, warmer);
    for (const [i, from] of starts.entries()) {
      const next = starts[i + 1] ?? addDays(span.to, 1);
      const sums = sumsOf(yearOf(from), thresholds, addedOn(from, warmer));
      const first = indexInYear(from);
      yield {
        firstDayNumber: dayNumber(from),
        days: dayNumber(next) - dayNumber(from),
        upTo: (days) => (sums[first + days] as number) - (sums[first] as number),
      };
    }
  }

  return {
    sum(span, thresholds, warmer = []) {
      let sum = 0;
      for (const piece of pieces(span, thresholds, warmer)) sum += piece.upTo(piece.days);
      return sum;
    },
    reached(degreeDays, { from, until }, thresholds, warmer = []) {
      let before = 0;
      for (const piece of pieces({ from, to: until }, thresholds, warmer)) {
        const whole = before + piece.upTo(piece.days);
        if (whole >= degreeDays) {
          const days = fewest(piece.days, (n) => before + piece.upTo(n) >= degreeDays);
          return dayFromNumber(piece.firstDayNumber + days - 1);
        }
        before = whole;
      }
      return undefined;
    },
  };
}

/** First days of the pieces: the span's, of each year in it, and wherever what is added changes. */
function startsOfPieces(span: DaySpan, warmer: readonly Warmer[]): readonly Day[] {
  if (span.to < span.from) return [];
  const newYears = Array.from(
    { length: yearOf(span.to) - yearOf(span.from) },
    (_, i) => `${yearOf(span.from) + i + 1}-01-01` as Day,
  );
  const changes = warmer.flatMap(({ from, to }) => [
    ...(from === undefined ? [] : [from]),
    ...(to === undefined ? [] : [addDays(to, 1)]),
  ]);
  const inside = [...newYears, ...changes].filter((d) => span.from < d && d <= span.to);
  return [...new Set([span.from, ...inside])].sort();
}

function addedOn(d: Day, warmer: readonly Warmer[]): Added {
  const onDay = warmer.filter(
    ({ from, to }) => (from === undefined || from <= d) && (to === undefined || d <= to),
  );
  const total = (some: readonly Warmer[]): number => some.reduce((sum, { byC }) => sum + byC, 0);
  return {
    onMeansC: total(onDay),
    onFilesC: total(onDay.filter(({ onMeansOnly }) => onMeansOnly !== true)),
  };
}

/** The least number from 1 to `most`, which holds, that holds: all above it do, none below. */
function fewest(most: number, holds: (n: number) => boolean): number {
  let [low, high] = [1, most];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
