// @ts-nocheck
import fc from "fast-check";
import { expect, test } from "vitest";
import { dayLengthH } from "../../src/climate/index.js";
import { extraterrestrialMjM2 } from "../../src/climate/sun.js";
import { addDays, day } from "../../src/dates.js";

const anyDay = fc.nat({ max: 365 }).map((n) => addDays(day("2028-01-01"), n));
const anyLatitude = fc.double({ min: -90, max: 90, noNaN: true });

test("everywhere, day and sun are finite, and no day is longer than 24 hours", () => {
  fc.assert(
    fc.property(anyDay, fc.oneof(anyLatitude, fc.constantFrom(-90, 90, 0)), (d, latitude) => {
      expect(dayLengthH(d, latitude)).toBeGreaterThanOrEqual(0);
      expect(dayLengthH(d, latitude)).toBeLessThanOrEqual(24);
      expect(extraterrestrialMjM2(d, latitude)).toBeGreaterThanOrEqual(-1e-9);
      expect(extraterrestrialMjM2(d, latitude)).toBeLessThan(50);
    }),
  );
});

test("north and south share the day between them", () => {
  fc.assert(
    fc.property(anyDay, anyLatitude, (d, latitude) => {
      expect(dayLengthH(d, latitude) + dayLengthH(d, -latitude)).toBeCloseTo(24, 9);
    }),
  );
});

test("in Tromso the sun does not set at midsummer and does not rise at Christmas", () => {
  expect(dayLengthH(day("2027-06-21"), 69.65)).toBe(24);
  expect(dayLengthH(day("2027-12-24"), 69.65)).toBe(0);
  expect(extraterrestrialMjM2(day("2027-12-24"), 69.65)).toBeCloseTo(0, 9);
});

test("on the equator every day has 12 hours", () => {
  fc.assert(
    fc.property(anyDay, (d) => {
      expect(dayLengthH(d, 0)).toBeCloseTo(12, 9);
    }),
  );
});
