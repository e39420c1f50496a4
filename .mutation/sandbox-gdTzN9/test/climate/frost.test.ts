// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dailyFromMonthly } from "../../src/climate/daily-means.js";
import {
  type FrostDays,
  type FrostEstimate,
  frostOf,
  type SeasonFrost,
} from "../../src/climate/frost.js";
import { addDays, day, type Day, dayNumber, daysBetween } from "../../src/dates.js";
import { loadTables } from "../../src/tables.js";
import { placeClimate, temperate } from "./a-climate.js";

const newYear = day("2027-01-01");
const rules = loadTables().frost;
const north = { from: day("2027-03-01"), to: day("2027-10-31") };
const south = { from: day("2027-09-01"), to: day("2028-05-31") };
const shifted = [...temperate.slice(6), ...temperate.slice(0, 6)];
const iowa = { latitudeDeg: 42, longitudeDeg: -93 };

function around(
  climate: ReturnType<typeof placeClimate> | undefined,
  own?: FrostDays,
  span = north,
): SeasonFrost {
  return frostOf(climate, own, rules)?.around(span) ?? {};
}

describe("the estimate", () => {
  test.each([
    ["4.5 degC in Europe", { longitudeDeg: 10 }, 4.5],
    ["6.2 degC in North America east of 115 degrees west", iowa, 6.2],
    ["4.5 degC west of it", { latitudeDeg: 42, longitudeDeg: -115 }, 4.5],
    ["4.5 degC where nobody said how far east", { latitudeDeg: 42 }, 4.5],
  ])("is where the mean minimum passes %s", (_, where, thresholdC) => {
    const { lastSpring, firstAutumn } = around(placeClimate(where));
    const daily = dailyFromMonthly(temperate);
    const last = daily.findIndex((c) => c >= thresholdC) - 1;
    const first = daily.findLastIndex((c) => c >= thresholdC) + 1;
    expect(lastSpring).toMatchObject({ day: addDays(newYear, last), by: "estimate" });
    expect(firstAutumn).toMatchObject({ day: addDays(newYear, first), by: "estimate" });
  });

  test("has its one-in-ten day by the scatter from year to year and its own error", () => {
    // 1.28 times the root of 13 squared and 7.4 squared.
    const { lastSpring } = around(placeClimate(iowa));
    expect(
      daysBetween(lastSpring?.day ?? day("2027-01-01"), lastSpring?.oneInTen ?? day("2027-01-01")),
    ).toBe(19);
  });

  test("says that it is one, with its scatter and its error", () => {
    expect(around(placeClimate(iowa)).lastSpring?.why).toBe(
      "an estimate from simulation: the median, with 13 days of scatter from year to year, and 7 days off at 17 places with published dates (North America east of 115 degrees west)",
    );
  });

  test("ends a harvest only where it is within 14 days of published dates", () => {
    const ends = rules.regions.map(({ autumn }) => autumn.error_days <= 14);
    expect(ends).toEqual([true, false, false]);
    expect(around(placeClimate(iowa)).firstAutumn?.endsPicking).toBe(true);
    expect(around(placeClimate({ longitudeDeg: -6 })).firstAutumn?.endsPicking).toBe(false);
  });

  test("is none where no night is cold, and names frost in any month where all are", () => {
    const warm = placeClimate({ minC: temperate.map((c) => c + 20), latitudeDeg: -1 });
    expect(frostOf(warm, undefined, rules)).toBeUndefined();
    const polar = frostOf(placeClimate({ minC: temperate.map((c) => c - 12) }), undefined, rules);
    expect(polar?.allYear).toBe(true);
    expect(polar?.around(north)).toEqual({});
    expect(frostOf(undefined, undefined, rules)).toBeUndefined();
  });

  test("of the southern half is the north's, half a year later", () => {
    const here = around(placeClimate({ longitudeDeg: 145 }));
    const there = around(placeClimate({ latitudeDeg: -38, minC: shifted }), undefined, south);
    for (const key of ["lastSpring", "firstAutumn"] as const) {
      const [a, b] = [here[key]?.day, there[key]?.day];
      // Months are of unequal length.
      expect(Math.abs(daysBetween(a ?? north.from, b ?? north.from) - 184)).toBeLessThanOrEqual(3);
    }
  });

  test("is never later in spring, nor earlier in autumn, where it is warmer", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -20, max: 25, noNaN: true }), { minLength: 12, maxLength: 12 }),
        fc.double({ min: 0, max: 8, noNaN: true }),
        (minC, warmerC) => {
          const cold = frostOf(placeClimate({ minC }), undefined, rules);
          const warm = frostOf(
            placeClimate({ minC: minC.map((c) => c + warmerC) }),
            undefined,
            rules,
          );
          if (cold === undefined) expect(warm).toBeUndefined();
          if (warm === undefined || cold === undefined || cold.allYear) return;
          const warmest = dailyFromMonthly(minC);
          const summit = warmest.indexOf(Math.max(...warmest));
          const [before, after] = [cold, warm].map((frost) => aboutSummit(frost, summit));
          expect(after?.last).toBeGreaterThanOrEqual(before?.last as number);
          expect(after?.first).toBeGreaterThanOrEqual(before?.first as number);
        },
      ),
      { seed: 11, numRuns: 60 },
    );
  });
});

/** Days from the last frost to the warmest day, and from there to the first. */
function aboutSummit(frost: FrostEstimate, summit: number): { last: number; first: number } {
  const day = addDays(newYear, summit);
  const { lastSpring, firstAutumn } = frost.around({ from: day, to: day });
  const on = (date: { readonly day: Day } | undefined): number =>
    date === undefined ? NaN : dayNumber(date.day) - dayNumber(day);
  return { last: (365 - on(lastSpring)) % 365, first: (365 + on(firstAutumn)) % 365 };
}

describe("the grower's own days", () => {
  test("stand before the estimate, each for itself", () => {
    const { lastSpring, firstAutumn } = around(placeClimate(), { last: "05-12" });
    expect(lastSpring).toEqual({
      day: "2027-05-12",
      by: "own",
      why: "your own day, `frost:`",
      oneInTen: "2027-05-12",
    });
    expect(firstAutumn).toMatchObject({ by: "estimate" });
  });

  test("need no climate, and end the harvest", () => {
    const own = around(undefined, { last: "04-28", first: "10-20" });
    expect(own.lastSpring?.day).toBe("2027-04-28");
    expect(own.firstAutumn).toMatchObject({ day: "2027-10-20", endsPicking: true });
  });

  test.each<[FrostDays, typeof south, string | undefined, string | undefined]>([
    [{ last: "10-05", first: "05-03" }, south, "2027-10-05", "2028-05-03"],
    [{ first: "05-03" }, south, undefined, "2028-05-03"],
    [{ last: "10-05" }, south, "2027-10-05", undefined],
    [{ first: "10-20" }, north, undefined, "2027-10-20"],
    // A mild coast: the first frost of the autumn comes after New Year.
    [{ last: "03-01", first: "01-06" }, north, "2027-03-01", "2028-01-06"],
    // The leap day lies before the frost.
    [
      { last: "03-01" },
      { from: day("2028-03-01"), to: day("2028-10-31") },
      "2028-03-01",
      undefined,
    ],
  ])("%j are dated about the summer of the span", (own, span, last, first) => {
    const dated = around(undefined, own, span);
    expect(dated.lastSpring?.day).toBe(last);
    expect(dated.firstAutumn?.day).toBe(first);
  });
});
