// @ts-nocheck
import { describe, expect, test } from "vitest";
import { type DayWeather, type Thresholds, warmthOf, weatherOn } from "../../src/climate/index.js";
import { degreeDays } from "../../src/climate/degree-days.js";
import { addDays, type Day, day, type DaySpan, eachDay } from "../../src/dates.js";
import { cruPoints, placeWeather } from "../support/a-place.js";

const thresholds: Thresholds = { method: "single-sine", baseC: 7, upperC: 28 };
const flat = { maxC: Array<number>(12).fill(20), minC: Array<number>(12).fill(10) };
const simple: Thresholds = { method: "simple", baseC: 5 };
const hot: DayWeather = { minC: 20, maxC: 30, from: "seen" };

const span = (from: string, to: string): DaySpan => ({ from: day(from), to: day(to) });

describe("sum", () => {
  test("adds up the days, one by one, over New Years and leap days", () => {
    const place = placeWeather(cruPoints.eugene, [[day("2028-01-03"), hot]], 0);
    const warmth = warmthOf(place);
    for (const days of [
      span("2027-05-01", "2027-05-01"),
      span("2027-11-20", "2028-03-10"),
      span("2027-01-01", "2028-12-31"),
    ]) {
      const oneByOne = [...eachDay(days)]
        .map((d) => degreeDays(weatherOn(place, d), thresholds))
        .reduce((sum, x) => sum + x, 0);
      expect(warmth.sum(days, thresholds)).toBeCloseTo(oneByOne, 6);
    }
  });

  test("is 0 for no days", () => {
    expect(warmthOf(placeWeather(flat)).sum(span("2027-05-02", "2027-05-01"), simple)).toBe(0);
  });

  test("reaches from 1900 to 2200", () => {
    const sum = warmthOf(placeWeather(flat)).sum(span("1900-01-01", "2200-12-31"), simple);
    expect(sum).toBeCloseTo(10 * 109_938, 3);
  });

  test("knows one method from another, and a limit from none", () => {
    const warmth = warmthOf(placeWeather(cruPoints.cordoba));
    const [july] = [span("2027-07-01", "2027-07-31")];
    const sums = [
      thresholds,
      { ...thresholds, method: "simple" },
      { ...thresholds, baseC: 6 },
      { method: thresholds.method, baseC: 7 },
    ].map((some) => warmth.sum(july, some as Thresholds));
    expect(new Set(sums).size).toBe(sums.length);
  });
});

describe("spread", () => {
  // Own figures: base 5, sd 3.5 adds 74 % at Helsinki. Means: CRU CL 2.0, 60.26 N 25.04 E, with 0.7 degC.
  test("wakes a cold spring: March and April in Helsinki gain more than half", () => {
    const rise = (months: readonly number[]): number[] => months.map((t) => t + 0.7);
    const helsinki = {
      maxC: rise([-3.8, -3.5, 0.7, 7, 14.8, 19.7, 21.2, 19.5, 14, 8.6, 2.9, -1.2]),
      minC: rise([-10.2, -10.4, -6.7, -0.8, 4.6, 9.5, 12, 11.1, 6.7, 2.7, -2, -7]),
    };
    const [spring, base] = [span("2027-03-01", "2027-04-30"), { ...thresholds, baseC: 5 }];
    const smooth = warmthOf(placeWeather(helsinki, [], 0)).sum(spring, base);
    const spread = warmthOf(placeWeather(helsinki)).sum(spring, base);
    expect(spread / smooth).toBeGreaterThan(1.6);
    expect(spread / smooth).toBeLessThan(1.9);
  });

  test("changes nothing far from the thresholds", () => {
    const june = span("2027-06-01", "2027-06-30");
    expect(warmthOf(placeWeather(flat)).sum(june, { method: "simple", baseC: 0 })).toBeCloseTo(
      30 * 15,
      9,
    );
  });

  test("is not put into days seen or forecast", () => {
    const cold: DayWeather = { minC: 2, maxC: 8, from: "forecast" };
    const place = placeWeather(flat, [[day("2027-06-01"), cold]]);
    const only = span("2027-06-01", "2027-06-01");
    expect(warmthOf(place).sum(only, simple)).toBe(0);
    const asMeans = placeWeather({ maxC: Array(12).fill(8), minC: Array(12).fill(2) });
    expect(warmthOf(asMeans).sum(only, simple)).toBeGreaterThan(1);
  });
});

describe("warmer", () => {
  const warmth = warmthOf(placeWeather(flat, [[day("2027-06-10"), hot]]));
  const june = span("2027-06-01", "2027-06-30");
  const plain = warmth.sum(june, simple);

  test("adds to all days, days of files too", () => {
    expect(warmth.sum(june, simple, [{ byC: 2 }])).toBeCloseTo(plain + 60, 6);
  });

  test("adds on its own days only, and over others", () => {
    const cover = { byC: 2, from: day("2027-06-05"), to: day("2027-06-14") };
    expect(warmth.sum(june, simple, [cover])).toBeCloseTo(plain + 20, 6);
    expect(warmth.sum(june, simple, [cover, { byC: 1 }])).toBeCloseTo(plain + 50, 6);
    expect(warmth.sum(june, simple, [{ byC: 2, from: day("2027-06-29") }])).toBeCloseTo(plain + 4);
    expect(warmth.sum(june, simple, [{ byC: 2, to: day("2027-05-31") }])).toBeCloseTo(plain, 9);
  });

  test("of the means' error leaves days of files as they are", () => {
    expect(warmth.sum(june, simple, [{ byC: 0.76, onMeansOnly: true }])).toBeCloseTo(
      plain + 29 * 0.76,
      6,
    );
  });
});

describe("reached", () => {
  const warmth = warmthOf(placeWeather(flat, [[day("2027-06-10"), hot]], 0));
  const season = { from: day("2027-06-01"), until: day("2028-03-31") };

  test.each([
    [0, "2027-06-01"],
    [10, "2027-06-01"],
    [10.1, "2027-06-02"],
    [90, "2027-06-09"],
    [110, "2027-06-10"],
    [120.1, "2027-06-12"],
    [2150, "2027-12-31"],
    [2151, "2028-01-01"],
    [2740, "2028-02-28"],
    [2750, "2028-02-29"],
  ])("%d degree days are reached by the evening of %s", (sum, reached) => {
    expect(warmth.reached(sum, season, simple)).toBe(reached);
  });

  test("what is not reached by the evening of the last day is not", () => {
    const whole = warmth.sum({ from: season.from, to: season.until }, simple);
    expect(warmth.reached(whole, season, simple)).toBe(season.until);
    expect(warmth.reached(whole + 0.001, season, simple)).toBeUndefined();
    expect(warmth.reached(0, { from: season.until, until: season.from }, simple)).toBeUndefined();
  });

  test("comes sooner under a cover, from the day it is put on", () => {
    const cover = { byC: 10, from: day("2027-06-11") };
    expect(warmth.reached(110, season, simple, [cover])).toBe("2027-06-10");
    expect(warmth.reached(150, season, simple, [cover])).toBe("2027-06-12");
  });
});

test("days of files are read once, however often they are asked for", () => {
  class CountingMap extends Map<Day, DayWeather> {
    asked = 0;
    override get(d: Day): DayWeather | undefined {
      this.asked++;
      return super.get(d);
    }
  }
  const from = day("2020-01-01");
  const days = new CountingMap(
    Array.from({ length: 3653 }, (_, i) => [addDays(from, i), hot] as const),
  );
  const warmth = warmthOf({ ...placeWeather(flat), days });
  for (let bed = 0; bed < 40; bed++)
    for (let year = 2020; year < 2030; year++) {
      const [sown, until] = [addDays(day(`${year}-03-01`), bed), day(`${year}-12-31`)];
      warmth.reached(700 + bed, { from: sown, until }, { ...simple, baseC: bed % 4 });
    }
  expect(days.asked).toBeLessThanOrEqual(3653);
});
