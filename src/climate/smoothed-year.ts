/** The curve of a year's days through means of months: too long a work for a plan to wait for. */
import { daysInCommonYear, monthLengths } from "./year-ring.js";

/**
 * As often as it takes for the steps between months to melt into one curve: Rymes and Meyers 2001,
 * Solar Energy 71:225-231, smooth, give each month its mean back, and again.
 */
const rounds = 730;

/**
 * The curve is linear in the means: of each month, January first, the share that its mean has in each
 * of 365 days, 1 January first. Of thirteen decimals, which is far finer than any mean.
 */
export function dailyShares(): readonly (readonly number[])[] {
  return monthLengths.map((_, m) => {
    const means = monthLengths.map((_length, other) => (other === m ? 1 : 0));
    return smoothed(means).map((share) => Number(share.toFixed(13)));
  });
}

/** Twelve means -> 365 of single days. The year is a ring: 31 December meets 1 January. */
export function smoothed(means: readonly number[]): readonly number[] {
  const steps = means.flatMap((mean, m) => Array<number>(monthLengths[m] as number).fill(mean));
  let days = Float64Array.of(0, ...steps, 0);
  let spare = new Float64Array(days.length);
  for (let i = 0; i < rounds; i++) {
    smooth(days, spare);
    [days, spare] = [spare, days];
  }
  return [...days.subarray(1, -1)];
}

/** A product takes a quarter of the time of a quotient. */
const third = 1 / 3;

/**
 * Running means of three days. A month takes a third of the days that lie on its sides for a third of
 * its own first and last one: the difference, shared among its days, gives its mean back.
 *
 * 1 January is at 1. At both ends there is room for the day across New Year, so that the loop has no
 * ring to go round.
 */
function smooth(days: Float64Array, into: Float64Array): void {
  days[0] = days[daysInCommonYear] as number;
  days[daysInCommonYear + 1] = days[1] as number;
  let first = 1;
  for (const length of monthLengths) {
    const next = first + length;
    let [before, own] = [days[first - 1] as number, days[first] as number];
    const back = (own + (days[next - 1] as number) - before - (days[next] as number)) / 3 / length;
    for (let d = first; d < next; d++) {
      const after = days[d + 1] as number;
      into[d] = (before + own + after) * third + back;
      before = own;
      own = after;
    }
    first = next;
  }
}
