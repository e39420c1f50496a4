// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays, day, daysBetween } from "../../src/dates.js";
import { type Claimant, claimedDays } from "../../src/log/claims.js";

const june = (n: number) => addDays(day("2027-06-01"), n - 1);
const on = (n: number, round?: number): Claimant =>
  round === undefined ? { on: june(n) } : { on: june(n), round: june(round) };

/** The day of June that each entry stands for. */
function claims(entries: readonly Claimant[], days: readonly number[], withinDays: number) {
  const claimed = claimedDays(entries, days.map(june), withinDays);
  return entries.map((entry) => {
    const stands = claimed.get(entry);
    return stands === undefined ? undefined : daysBetween(day("2027-05-31"), stands);
  });
}

describe("an entry stands for", () => {
  test("the nearest published day, early or late, as far as is allowed", () => {
    expect(claims([on(3)], [5, 19], 5)).toEqual([5]);
    expect(claims([on(10)], [5, 19], 5)).toEqual([5]);
    expect(claims([on(11)], [5, 19], 5)).toEqual([undefined]);
  });

  test("the earlier of two that are as near", () => {
    expect(claims([on(12)], [5, 19], 7)).toEqual([5]);
  });

  test("no day that another stands for", () => {
    expect(claims([on(5), on(7)], [5, 19], 5)).toEqual([5, undefined]);
    expect(claims([on(7), on(5)], [5, 19], 5)).toEqual([undefined, 5]);
    expect(claims([on(5), on(14)], [5, 19], 9)).toEqual([5, 19]);
  });

  test("the day it names, however far, before any that only lies near", () => {
    expect(claims([on(5), on(18, 5)], [5, 19], 5)).toEqual([undefined, 5]);
  });

  test("nothing where the day that it names was not published", () => {
    expect(claims([on(5, 6)], [5, 19], 5)).toEqual([undefined]);
  });
});

test("no two entries stand for one day, and none that names no day for one too far", () => {
  const numbers = fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { maxLength: 8 });
  fc.assert(
    fc.property(numbers, numbers, fc.integer({ min: 0, max: 10 }), (ons, days, withinDays) => {
      const entries = ons.map((n) => on(n));
      const found = claimedDays(entries, [...days].sort((a, b) => a - b).map(june), withinDays);
      expect(new Set(found.values()).size).toBe(found.size);
      for (const [entry, stands] of found)
        expect(Math.abs(daysBetween(entry.on, stands))).toBeLessThanOrEqual(withinDays);
    }),
  );
});
