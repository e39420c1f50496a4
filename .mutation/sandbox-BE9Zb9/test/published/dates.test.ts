/** Days against @js-temporal/polyfill, the reference implementation of ECMAScript's Temporal. */
// @ts-nocheck

import { Temporal } from "@js-temporal/polyfill";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  addDays,
  day,
  type Day,
  dayFromNumber,
  dayNumber,
  daysBetween,
  eachDay,
  monthOf,
  parseDay,
  weekdayOf,
  weekdays,
} from "../../src/dates.js";

const epoch = Temporal.PlainDate.from("1970-01-01");
const anyDate = fc.integer({ min: -25_567, max: 84_370 }).map((days) => epoch.add({ days }));
const ours = (date: Temporal.PlainDate): Day => day(date.toString());

describe("Temporal.PlainDate agrees from 1900 to 2200", () => {
  test("on the days there are", () => {
    const part = (min: number, max: number): fc.Arbitrary<string> =>
      fc.integer({ min, max }).map((n) => String(n).padStart(2, "0"));
    fc.assert(
      fc.property(fc.integer({ min: 1900, max: 2200 }), part(0, 14), part(0, 33), (y, m, d) => {
        let theirs: string | undefined;
        try {
          theirs = Temporal.PlainDate.from(`${y}-${m}-${d}`, { overflow: "reject" }).toString();
        } catch {
          theirs = undefined;
        }
        expect(parseDay(`${y}-${m}-${d}`)).toBe(theirs);
      }),
      { numRuns: 2000 },
    );
  });

  test("on every 29 February", () => {
    for (let year = 1900; year <= 2200; year++) {
      const { inLeapYear } = Temporal.PlainDate.from({ year, month: 1, day: 1 });
      expect(parseDay(`${year}-02-29`) !== undefined, String(year)).toBe(inLeapYear);
    }
  });

  test("on weekdays and months", () => {
    fc.assert(
      fc.property(anyDate, (date) => {
        expect(weekdayOf(ours(date))).toBe(weekdays[date.dayOfWeek - 1]);
        expect(monthOf(ours(date))).toBe(date.month);
      }),
      { numRuns: 1000 },
    );
  });

  test("on adding days and counting between them", () => {
    fc.assert(
      fc.property(anyDate, fc.integer({ min: -800, max: 800 }), (date, days) => {
        const other = date.add({ days });
        expect(addDays(ours(date), days)).toBe(other.toString());
        if (other.year < 1900 || other.year > 2200) return;
        expect(daysBetween(ours(date), ours(other))).toBe(date.until(other).days);
      }),
      { numRuns: 1000 },
    );
  });

  test("on day numbers and order", () => {
    fc.assert(
      fc.property(anyDate, anyDate, (a, b) => {
        expect(dayNumber(ours(a))).toBe(epoch.until(a).days);
        expect(dayFromNumber(dayNumber(ours(a)))).toBe(a.toString());
        expect(Math.sign(Number(ours(a) > ours(b)) - Number(ours(a) < ours(b)))).toBe(
          Temporal.PlainDate.compare(a, b),
        );
      }),
      { numRuns: 1000 },
    );
  });

  test("on each day of a season over a leap day and New Year", () => {
    const span = { from: day("2027-09-01"), to: day("2028-05-31") };
    const from = Temporal.PlainDate.from(span.from);
    const all = Array.from({ length: 274 }, (_, days) => from.add({ days }).toString());
    expect([...eachDay(span)]).toEqual(all);
  });
});
