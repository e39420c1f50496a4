/**
 * How long the making plan of a season takes: some 20 ms for 1,000 feedings where it was written. Growth
 * is near linear when 1,000 feedings take about four times as long as 250.
 */
// @ts-nocheck

import { bench, describe } from "vitest";
import { addDays, day } from "../../src/dates.js";
import { planStock } from "../../src/stock/making/batches.js";
import { usualMaking as making } from "../stock/making/making-cases.js";

const today = day("2027-05-01");

describe.each([250, 1000])("%s feedings, six a day", (count) => {
  const needs = Array.from({ length: count }, (_, i) => ({
    id: `n${i}`,
    day: addDays(today, 5 + Math.floor(i / 6)),
    calciumMg: 20 * (1 + ((i * 37) % 60)),
    mostMl: 10_000,
  }));
  bench("planStock", () => {
    planStock({
      today,
      season: { from: day("2027-03-01"), to: day("2027-10-31") },
      away: [],
      needs,
      bottles: [],
      making,
      shells: { inHand: 0, gPerShell: 5, gPerL: 100, perWeek: 21 },
    });
  });
});
