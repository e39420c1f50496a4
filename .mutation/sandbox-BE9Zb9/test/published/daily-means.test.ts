/** Days from months, against published examples. */
// @ts-nocheck

import { expect, test } from "vitest";
import { dailyFromMonthly } from "../../src/climate/daily-means.js";

// Input of a demonstration of mp-interp (Bartlein, commit 5c8efd24), whose method it is.
const means = [-6.77, -4.33, 1.52, 8.35, 14.74, 20.29, 23.22, 22.17, 16.94, 10.35, 3.08, 4.29];

test.each([
  ["1 January", 0, -1.86],
  ["31 December", 364, -1.12],
])("Rymes and Meyers 2001 as worked by mp-interp: %s, within 0.5 degC", (_, index, printed) => {
  expect(Math.abs((dailyFromMonthly(means)[index] ?? NaN) - printed)).toBeLessThan(0.5);
});
