// @ts-nocheck
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearestPairs } from "../../src/calendar/nearest-pairs.js";

type Pairs = readonly (readonly [number, number])[];

/** Every way to pair days no further apart than the limit, crossing or not. */
function allPairings(
  olds: readonly number[],
  news: readonly number[],
  within: number,
  i = 0,
): Pairs[] {
  const old = olds[i];
  if (old === undefined) return [[]];
  const without = allPairings(olds, news, within, i + 1);
  const withOne = news.flatMap((day, j) =>
    Math.abs(day - old) > within
      ? []
      : without
          .filter((pairs) => pairs.every(([, k]) => k !== j))
          .map((pairs) => [[i, j] as const, ...pairs]),
  );
  return [...without, ...withOne];
}

function worth(pairs: Pairs, olds: readonly number[], news: readonly number[]) {
  const days = pairs.map(([i, j]) => Math.abs((olds[i] ?? NaN) - (news[j] ?? NaN)));
  return { pairs: pairs.length, daysMoved: days.reduce((a, b) => a + b, 0) };
}

const someDays = fc
  .uniqueArray(fc.integer({ min: 0, max: 30 }), { maxLength: 6 })
  .map((days) => days.sort((a, b) => a - b));

describe("pairing days", () => {
  it("makes as many pairs with as few days moved as the best of all ways does", () => {
    fc.assert(
      fc.property(someDays, someDays, fc.integer({ min: 0, max: 20 }), (olds, news, within) => {
        const best = allPairings(olds, news, within)
          .map((pairs) => worth(pairs, olds, news))
          .reduce((a, b) =>
            b.pairs > a.pairs || (b.pairs === a.pairs && b.daysMoved < a.daysMoved) ? b : a,
          );
        const found = nearestPairs(olds, news, within);
        expect(worth(found, olds, news)).toEqual(best);
        for (const [i, j] of found)
          expect(Math.abs((olds[i] ?? NaN) - (news[j] ?? NaN))).toBeLessThanOrEqual(within);
        expect(new Set(found.map(([i]) => i)).size).toBe(found.length);
        expect(new Set(found.map(([, j]) => j)).size).toBe(found.length);
      }),
      { numRuns: 400 },
    );
  });

  it("shifts a whole row by the same few days", () => {
    expect(nearestPairs([0, 7, 14, 21], [2, 9, 16, 23], 14)).toEqual([
      [0, 0],
      [1, 1],
      [2, 2],
      [3, 3],
    ]);
  });

  it("leaves the inserted day of a shifted row unpaired", () => {
    expect(nearestPairs([0, 10, 20], [1, 5, 11, 21], 14)).toEqual([
      [0, 0],
      [1, 2],
      [2, 3],
    ]);
  });

  it("takes the earlier of two equally near", () => {
    expect(nearestPairs([5], [3, 7], 14)).toEqual([[0, 0]]);
    expect(nearestPairs([3, 7], [5], 14)).toEqual([[0, 0]]);
  });

  it("pairs nothing with nothing", () => {
    expect(nearestPairs([], [1, 2], 14)).toEqual([]);
    expect(nearestPairs([1, 2], [], 14)).toEqual([]);
  });
});
