/** Means of single days from means of months. */
import { daysInCommonYear, monthLengths } from "./year-ring.js";

/**
 * As often as it takes for the steps between months to melt into one curve: Rymes and Meyers 2001,
 * Solar Energy 71:225-231, smooth, give each month its mean back, and again.
 */
const rounds = 730;

const kept = new WeakMap<readonly number[], readonly number[]>();

/**
 * Twelve means, January first -> 365 means of single days, 1 January first. The year is a ring: 31
 * December meets 1 January. Each month's days have exactly the month's mean. Throws where there are
 * not twelve: our own bug.
 */
export function dailyFromMonthly(means: readonly number[]): readonly number[] {
  const known = kept.get(means);
  if (known) return known;
  const daily = smoothed(means);
  kept.set(means, daily);
  return daily;
}

function smoothed(means: readonly number[]): readonly number[] {
  if (means.length !== 12) throw new RangeError(`not twelve means: ${means.length}`);
  let days = Float64Array.from(
    means.flatMap((mean, m) => Array<number>(monthLengths[m] as number).fill(mean)),
  );
  let spare = new Float64Array(days);
  for (let i = 0; i < rounds; i++) {
    smooth(days, spare);
    giveMeansBack(spare, means);
    [days, spare] = [spare, days];
  }
  return [...days];
}

// Plain loops here and below: they run 730 times over the year, and a plan waits for them.
function smooth(days: Float64Array, into: Float64Array): void {
  let before = days[daysInCommonYear - 1] as number;
  for (let d = 0; d < daysInCommonYear; d++) {
    const today = days[d] as number;
    const after = days[d + 1 === daysInCommonYear ? 0 : d + 1] as number;
    into[d] = (before + today + after) / 3;
    before = today;
  }
}

function giveMeansBack(days: Float64Array, means: readonly number[]): void {
  let first = 0;
  for (let m = 0; m < 12; m++) {
    const length = monthLengths[m] as number;
    let sum = 0;
    for (let d = first; d < first + length; d++) sum += days[d] as number;
    const shift = (means[m] as number) - sum / length;
    for (let d = first; d < first + length; d++) days[d] = (days[d] as number) + shift;
    first += length;
  }
}
