/** Means of single days from means of months. */
import dailyShares from "../compiled/daily-shares.js";
import { daysInCommonYear } from "./year-ring.js";

const kept = new WeakMap<readonly number[], readonly number[]>();

/**
 * Twelve means, January first -> 365 means of single days, 1 January first. Each month's days have
 * exactly the month's mean. Throws where there are not twelve: our own bug.
 */
export function dailyFromMonthly(means: readonly number[]): readonly number[] {
  const known = kept.get(means);
  if (known) return known;
  const daily = shared(means);
  kept.set(means, daily);
  return daily;
}

/** By the shares of `smoothed-year.ts`: of what is above January, so that a year of one mean has only that. */
function shared(means: readonly number[]): readonly number[] {
  if (means.length !== 12) throw new RangeError(`not twelve means: ${means.length}`);
  const january = means[0] as number;
  const daily = Array<number>(daysInCommonYear).fill(january);
  for (const [m, shares] of dailyShares().entries()) {
    const above = (means[m] as number) - january;
    for (let d = 0; d < daysInCommonYear; d++)
      daily[d] = (daily[d] as number) + above * (shares[d] as number);
  }
  return daily;
}
