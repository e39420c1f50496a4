// @ts-nocheck
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type DayWeather,
  degreeDayMethods,
  type MonthlyMeans,
  type Thresholds,
  type Warmer,
  type Warmth,
  warmthOf,
} from "../../src/climate/index.js";
import { addDays, type Day, day, dayNumber } from "../../src/dates.js";
import { halfAYearOn, placeWeather } from "../support/a-place.js";

const anyMeans: fc.Arbitrary<MonthlyMeans> = fc
  .record({
    mean: fc.double({ min: -25, max: 28, noNaN: true }),
    swing: fc.double({ min: 0, max: 22, noNaN: true }),
    range: fc.double({ min: 2, max: 16, noNaN: true }),
    warmest: fc.nat({ max: 11 }),
  })
  .map(({ mean, swing, range, warmest }) => {
    const months = Array.from(
      { length: 12 },
      (_, m) => mean + swing * Math.cos(((m - warmest) * Math.PI) / 6),
    );
    return { maxC: months.map((t) => t + range / 2), minC: months.map((t) => t - range / 2) };
  });

const anyDay = fc.integer({ min: 0, max: 1500 }).map((n) => addDays(day("2026-06-01"), n));

const anyDays: fc.Arbitrary<[Day, DayWeather][]> = fc
  .record({
    first: anyDay,
    temperatures: fc.array(fc.double({ min: -15, max: 38, noNaN: true }), { maxLength: 80 }),
  })
  .map(({ first, temperatures }) =>
    temperatures.map((t, i) => [
      addDays(first, i),
      { minC: t - 4, maxC: t + 4, from: i > 70 ? "forecast" : "seen" },
    ]),
  );

const anyWarmth = fc
  .tuple(anyMeans, anyDays)
  .map(([means, days]) => warmthOf(placeWeather(means, days)));

const anyThresholds: fc.Arbitrary<Thresholds> = fc.record(
  {
    method: fc.constantFrom(...degreeDayMethods),
    baseC: fc.double({ min: 0, max: 15, noNaN: true }),
    upperC: fc.double({ min: 20, max: 40, noNaN: true }),
  },
  { requiredKeys: ["method", "baseC"] },
);

const anyWarmer: fc.Arbitrary<Warmer> = fc.record(
  {
    byC: fc.double({ min: 0, max: 6, noNaN: true }),
    from: anyDay,
    to: anyDay,
    onMeansOnly: fc.constant(true as const),
  },
  { requiredKeys: ["byC"] },
);

const anySpan = fc
  .tuple(anyDay, fc.nat({ max: 800 }))
  .map(([from, days]) => ({ from, until: addDays(from, days), to: addDays(from, days) }));

const anySum = fc.double({ min: 0, max: 4000, noNaN: true });

/** Later than any day where it isn't reached. */
function when(...asked: Parameters<Warmth["reached"]>): (warmth: Warmth) => number {
  return (warmth) => {
    const reached = warmth.reached(...asked);
    return reached === undefined ? Infinity : dayNumber(reached);
  };
}

test("a sum is reached on the first day by whose evening it is there", () => {
  fc.assert(
    fc.property(
      anyWarmth,
      anySpan,
      anySum,
      anyThresholds,
      fc.array(anyWarmer, { maxLength: 3 }),
      (warmth, span, degreeDays, thresholds, warmer) => {
        const reached = warmth.reached(degreeDays, span, thresholds, warmer);
        const sumTo = (to: Day): number => warmth.sum({ from: span.from, to }, thresholds, warmer);
        if (reached === undefined) {
          expect(sumTo(span.until)).toBeLessThan(degreeDays);
        } else {
          expect(sumTo(reached)).toBeGreaterThanOrEqual(degreeDays);
          if (reached > span.from) expect(sumTo(addDays(reached, -1))).toBeLessThan(degreeDays);
        }
      },
    ),
  );
});

test("a span's sum is reached by its evening, and never after", () => {
  fc.assert(
    fc.property(anyWarmth, anySpan, anyThresholds, (warmth, span, thresholds) => {
      const sum = warmth.sum(span, thresholds);
      const reached = warmth.reached(sum, { ...span, until: addDays(span.to, 400) }, thresholds);
      expect(reached).toBeDefined();
      expect((reached ?? "") <= span.to).toBe(true);
    }),
  );
});

test("more warmth is never later, and more to reach never sooner", () => {
  fc.assert(
    fc.property(
      anyWarmth,
      anySpan,
      anySum,
      anyThresholds,
      anyWarmer,
      anyWarmer,
      (warmth, span, sum, thresholds, some, more) => {
        const cool = when(sum, span, thresholds, [some])(warmth);
        expect(when(sum, span, thresholds, [some, more])(warmth)).toBeLessThanOrEqual(cool);
        expect(when(sum + 50, span, thresholds, [some])(warmth)).toBeGreaterThanOrEqual(cool);
      },
    ),
  );
});

test("starting later never ends sooner", () => {
  fc.assert(
    fc.property(
      anyWarmth,
      anySpan,
      anySum,
      anyThresholds,
      fc.nat({ max: 60 }),
      (warmth, { from }, sum, thresholds, days) => {
        const until = addDays(from, 900);
        const late = when(sum, { from: addDays(from, days), until }, thresholds)(warmth);
        expect(late).toBeGreaterThanOrEqual(when(sum, { from, until }, thresholds)(warmth));
      },
    ),
  );
});

test("a sum is that of its parts", () => {
  fc.assert(
    fc.property(
      anyWarmth,
      anySpan,
      fc.nat({ max: 800 }),
      anyThresholds,
      fc.array(anyWarmer, { maxLength: 2 }),
      (warmth, { from, to }, days, thresholds, warmer) => {
        const middle = addDays(from, days);
        if (middle >= to) return;
        const whole = warmth.sum({ from, to }, thresholds, warmer);
        const first = warmth.sum({ from, to: middle }, thresholds, warmer);
        const second = warmth.sum({ from: addDays(middle, 1), to }, thresholds, warmer);
        expect(first + second).toBeCloseTo(whole, 6);
      },
    ),
  );
});

test("the south has the north's warmth half a year on", () => {
  fc.assert(
    fc.property(anyMeans, anyThresholds, (means, thresholds) => {
      const year = { from: day("2026-01-01"), to: day("2026-12-31") };
      const southern = { from: day("2026-07-02"), to: day("2027-07-01") };
      const north = warmthOf(placeWeather(means)).sum(year, thresholds);
      const south = warmthOf(placeWeather(halfAYearOn(means))).sum(southern, thresholds);
      // Months that change places are a day or two longer or shorter.
      expect(Math.abs(south - north)).toBeLessThanOrEqual(2 + 0.02 * north);
    }),
  );
});

test("every year of means is like every other, but for the leap day", () => {
  fc.assert(
    fc.property(
      anyMeans,
      anyThresholds,
      fc.integer({ min: 1900, max: 2200 }),
      (means, thresholds, year) => {
        const warmth = warmthOf(placeWeather(means));
        const spring = (y: number): number =>
          warmth.sum({ from: day(`${y}-03-01`), to: day(`${y}-12-31`) }, thresholds);
        expect(spring(year)).toBeCloseTo(spring(2027), 6);
      },
    ),
  );
});
