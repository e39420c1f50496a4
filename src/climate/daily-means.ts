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
 * 1 January is at 1. At both ends there is room for the day across New Year, so that the loop, which
 * runs 730 times over the year while a plan waits, has no ring to go round.
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
