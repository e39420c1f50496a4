import { Temporal } from "@js-temporal/polyfill";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isShownTwice, momentOf, offsetChanges } from "../../src/calendar/zone-time.js";
import { day, dayFromNumber, dayNumber } from "../../src/dates.js";

const zones = [
  "Europe/Dublin",
  "America/New_York",
  "Australia/Lord_Howe",
  "Pacific/Auckland",
  "Africa/Casablanca",
  "Asia/Kolkata",
  "America/St_Johns",
  "UTC",
];

const aTime = fc
  .tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
  .map(([h, m]) => `${String(h).padStart(2, "0")}:${String(m).padStart(2, "0")}`);

describe("the moment of a wall-clock time", () => {
  it("is Temporal's with 'compatible' disambiguation, in any zone on any day", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: dayNumber(day("2026-01-01")), max: dayNumber(day("2030-12-31")) }),
        aTime,
        (zone, n, time) => {
          const wall = Temporal.PlainDateTime.from(`${dayFromNumber(n)}T${time}`);
          expect(momentOf(dayFromNumber(n), time, zone)).toBe(
            wall.toZonedDateTime(zone, { disambiguation: "compatible" }).epochMilliseconds,
          );
        },
      ),
      { numRuns: 500 },
    );
  });

  it.each([
    ["Europe/Dublin", "2027-03-28", "01:30", "2027-03-28T01:30:00Z", "moves forward over the gap"],
    ["Europe/Dublin", "2027-10-31", "01:30", "2027-10-31T00:30:00Z", "is the first of two"],
    [
      "Australia/Lord_Howe",
      "2027-10-03",
      "02:10",
      "2027-10-02T15:40:00Z",
      "moves forward over half an hour",
    ],
  ])("in %s on %s at %s is %s: it %s", (zone, on, time, expected) => {
    expect(new Date(momentOf(day(on), time, zone)).toISOString().slice(0, 19)).toBe(
      expected.slice(0, 19),
    );
  });

  it("does not depend on what time it is now", () => {
    // luxon's own DateTime.fromObject does: it starts from the present offset.
    const expected = momentOf(day("2027-10-31"), "01:30", "Europe/Dublin");
    expect(new Date(expected).toISOString()).toBe("2027-10-31T00:30:00.000Z");
  });
});

describe("changes of a zone's offset", () => {
  it.each(zones)("in %s are Temporal's", (zone) => {
    const changes = offsetChanges(zone, day("2026-01-01"), day("2031-01-01"));
    const expected: number[] = [];
    let at = Temporal.Instant.from("2026-01-01T00:00Z").toZonedDateTimeISO(zone);
    for (;;) {
      const next = at.getTimeZoneTransition("next");
      if (!next || next.epochMilliseconds > Date.UTC(2031, 0, 1)) break;
      if (next.offsetNanoseconds !== next.subtract({ seconds: 1 }).offsetNanoseconds) {
        expected.push(next.epochMilliseconds);
      }
      at = next;
    }
    expect(changes.map(({ atMs }) => atMs)).toEqual(expected);
  });
});

describe("a moment whose time on the clock comes twice", () => {
  it("is one for which Temporal finds another, in any zone on any day of a change", () => {
    const changes = zones.flatMap((zone) =>
      offsetChanges(zone, day("2026-01-01"), day("2031-01-01")).map(({ atMs }) => ({ zone, atMs })),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...changes),
        fc.integer({ min: -180, max: 180 }),
        ({ zone, atMs }, minutes) => {
          const at = Temporal.Instant.fromEpochMilliseconds(atMs + minutes * 60_000);
          const wall = at.toZonedDateTimeISO(zone).toPlainDateTime();
          const both = (["earlier", "later"] as const).map(
            (disambiguation) => wall.toZonedDateTime(zone, { disambiguation }).epochMilliseconds,
          );
          expect(isShownTwice(at.epochMilliseconds, zone)).toBe(both[0] !== both[1]);
        },
      ),
      { numRuns: 500 },
    );
  });

  it.each([1900, 2200])("is told in %i, at an end of the years that gardens lie in", (year) => {
    expect(isShownTwice(Date.UTC(year, 5, 1, 18), "Europe/Dublin")).toBe(false);
  });
});
