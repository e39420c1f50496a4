// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { leastEnergy } from "../../../src/stock/chemistry/least-energy.js";

const small = fc.integer({ min: -3, max: 3 });
/** Rows that hold both signs of every axis, so that a lowest point exists for any totals. */
const bowl = fc
  .record({
    extra: fc.array(fc.tuple(small, small, small), { maxLength: 6 }),
    constants: fc.array(fc.double({ min: -30, max: 30, noNaN: true }), {
      minLength: 12,
      maxLength: 12,
    }),
    totals: fc.tuple(
      fc.double({ min: -100, max: 100, noNaN: true }),
      fc.double({ min: -100, max: 100, noNaN: true }),
      fc.double({ min: -100, max: 100, noNaN: true }),
    ),
    start: fc.tuple(
      fc.double({ min: -40, max: 40, noNaN: true }),
      fc.double({ min: -40, max: 40, noNaN: true }),
      fc.double({ min: -40, max: 40, noNaN: true }),
    ),
  })
  .map(({ extra, constants, totals, start }) => {
    const rows = [[1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1], ...extra];
    return { rows, constants: constants.slice(0, rows.length), totals, start };
  });

describe("the lowest point of a sum of exponentials", () => {
  test("meets every balance, from any start", () => {
    fc.assert(
      fc.property(bowl, ({ rows, constants, totals, start }) => {
        const found = leastEnergy(rows, constants, totals, start);
        expect(found).toBeDefined();
        totals.forEach((total, j) => {
          const terms = rows.map((row, i) => (row[j] ?? 0) * (found?.amounts[i] ?? NaN));
          const sum = terms.reduce((a, b) => a + b, 0);
          const size = terms.reduce((a, b) => a + Math.abs(b), Math.abs(total));
          expect(Math.abs(sum - total)).toBeLessThanOrEqual(1e-9 * size);
        });
      }),
      { numRuns: 2000 },
    );
  });

  test("is where calculus puts it", () => {
    // exp(v) + exp(-v) - 3 v is lowest at sinh v = 3/2.
    const found = leastEnergy([[1], [-1]], [0, 0], [3], [20]);
    expect(found?.at[0]).toBeCloseTo(Math.asinh(1.5), 12);
  });

  test("is the same from every start", () => {
    fc.assert(
      fc.property(bowl, ({ rows, constants, totals, start }) => {
        const here = leastEnergy(rows, constants, totals, start);
        const there = leastEnergy(rows, constants, totals, [0, 0, 0]);
        here?.amounts.forEach((n, i) => {
          const other = there?.amounts[i] ?? NaN;
          expect(Math.abs(n - other)).toBeLessThanOrEqual(1e-6 * Math.max(1, n, other));
        });
      }),
      { numRuns: 300 },
    );
  });

  test("is missing where there is none", () => {
    // exp(v) can never sum to -1.
    expect(leastEnergy([[1]], [0], [-1], [0])).toBeUndefined();
  });

  test("of nothing free is found at once", () => {
    expect(leastEnergy([[], []], [0, Math.log(2)], [], [])?.amounts).toEqual([1, 2]);
  });
});
