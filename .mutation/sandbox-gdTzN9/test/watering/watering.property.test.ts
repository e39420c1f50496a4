/** What holds of any bed in any place. */
// @ts-nocheck

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { PlaceWeather } from "../../src/climate/climate.js";
import { addDays, day, eachDay } from "../../src/dates.js";
import type { Bed } from "../../src/garden/garden.js";
import { mulches } from "../../src/garden/soil.js";
import { bedWatering } from "../../src/watering/bed-watering.js";
import type { Grown } from "../../src/watering/growing.js";
import type { BedWatering, WateringWeek } from "../../src/watering/watering.js";
import { balancedWeeks, lessRounds } from "../../src/watering/weeks.js";
import { aPlace, bed, cropCoefficients, grown, season, tables } from "./a-watered-bed.js";

const known = cropCoefficients.coefficients.flatMap(({ crop }) => crop ?? []);

interface Case {
  readonly minC: number;
  readonly rangeC: number;
  readonly rainMm: number;
  readonly latitudeDeg: number;
  readonly areaM2: number;
  readonly one: Grown;
  readonly differs: Partial<Bed>;
}

const cases: fc.Arbitrary<Case> = fc
  .record({
    minC: fc.double({ min: -10, max: 25, noNaN: true }),
    rangeC: fc.double({ min: 0, max: 20, noNaN: true }),
    rainMm: fc.double({ min: 0, max: 400, noNaN: true }),
    latitudeDeg: fc.double({ min: -60, max: 60, noNaN: true }),
    areaM2: fc.double({ min: 0.1, max: 50, noNaN: true }),
    crop: fc.constantFrom(...known),
    after: fc.integer({ min: 0, max: 120 }),
    mulch: fc.option(fc.constantFrom(...mulches)),
    cover: fc.option(fc.constantFrom("glass", "tunnel", "fleece")),
  })
  .map(({ crop, after, areaM2, mulch, cover, ...place }) => ({
    ...place,
    areaM2,
    one: grown(crop, { transplanted: addDays(day("2027-04-01"), after), areaM2 }),
    differs: {
      ...(mulch === null ? {} : { soil: { mulch } }),
      ...(cover === null ? {} : { cover: { kind: cover } }),
    },
  }));

const placeOf = ({ minC, rangeC, rainMm, latitudeDeg }: Case): PlaceWeather =>
  aPlace({ minC, maxC: minC + rangeC, rainMm, latitudeDeg });

function watered(one: Case): BedWatering {
  const place = { weather: placeOf(one), season };
  return bedWatering(bed(one.differs), "auto", [one.one], place, tables);
}

const litres = (weeks: readonly WateringWeek[]): number =>
  weeks.reduce((sum, { waterL }) => sum + waterL, 0);

/** Sums of many numbers in another order differ in their last digits. */
const slack = 1e-6;

describe("litres", () => {
  test("are never negative, nor is what rounds leave of them", () => {
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 500, noNaN: true }), (one, roundL) => {
        const { weeks } = watered(one);
        const rounds = new Map(weeks.map(({ from }) => [addDays(from, 2), roundL]));
        for (const { waterL, leftL = -1 } of lessRounds(weeks, rounds)) {
          expect(waterL).toBeGreaterThanOrEqual(0);
          expect(leftL).toBeGreaterThanOrEqual(0);
          expect(leftL).toBeLessThanOrEqual(waterL);
        }
      }),
    );
  });

  test("grow with the range of a day's temperatures", () => {
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 5, noNaN: true }), (one, moreC) => {
        const wider = { ...one, minC: one.minC - moreC, rangeC: one.rangeC + 2 * moreC };
        expect(litres(watered(wider).weeks)).toBeGreaterThanOrEqual(
          litres(watered(one).weeks) - slack,
        );
      }),
    );
  });

  test("shrink with rain", () => {
    fc.assert(
      fc.property(cases, fc.double({ min: 0, max: 100, noNaN: true }), (one, moreMm) => {
        const wetter = { ...one, rainMm: one.rainMm + moreMm };
        expect(litres(watered(wetter).weeks)).toBeLessThanOrEqual(
          litres(watered(one).weeks) + slack,
        );
      }),
    );
  });

  test("are proportional to the ground", () => {
    fc.assert(
      fc.property(cases, fc.double({ min: 0.1, max: 10, noNaN: true }), (one, factor) => {
        const planting = { ...one.one.planting, areaM2: one.areaM2 * factor };
        const larger = { ...one, one: { ...one.one, planting } };
        expect(litres(watered(larger).weeks)).toBeCloseTo(factor * litres(watered(one).weeks), 4);
      }),
    );
  });

  test("are no more under any mulch", () => {
    fc.assert(
      fc.property(cases, (one) => {
        const { cover } = one.differs;
        const bare = cover === undefined ? {} : { cover };
        expect(litres(watered(one).weeks)).toBeLessThanOrEqual(
          litres(watered({ ...one, differs: bare }).weeks) + slack,
        );
      }),
    );
  });
});

test("weeks add up to their days, in whole and for need and rain alone", () => {
  const days = fc.array(
    fc.record({
      needMm: fc.double({ min: 0, max: 12, noNaN: true }),
      rainMm: fc.double({ min: 0, max: 60, noNaN: true }),
    }),
    { maxLength: 60 },
  );
  fc.assert(
    fc.property(days, fc.integer({ min: 0, max: 6 }), (amounts, offset) => {
      const from = addDays(day("2027-06-07"), offset);
      const to = addDays(from, amounts.length - 1);
      const balance = [...eachDay({ from, to })].map((on, i) => ({
        day: on,
        needMm: amounts[i]?.needMm ?? 0,
        rainMm: amounts[i]?.rainMm ?? 0,
      }));
      const weeks = balancedWeeks(balance, 1);
      for (const key of ["needMm", "rainMm"] as const) {
        const [byWeeks, byDays] = [weeks, balance].map((list) =>
          list.reduce((sum, one) => sum + (one[key] ?? 0), 0),
        );
        expect(byWeeks).toBeCloseTo(byDays ?? 0, 6);
      }
    }),
  );
});
