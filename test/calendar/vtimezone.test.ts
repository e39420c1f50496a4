import { Temporal } from "@js-temporal/polyfill";
import fc from "fast-check";
import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import { foldedLines } from "../../src/calendar/content-line.js";
import { vtimezoneLines } from "../../src/calendar/vtimezone.js";
import { day, dayFromNumber, dayNumber } from "../../src/dates.js";
import { readIcs } from "../support/ics.js";

const span = { from: day("2027-03-01"), to: day("2028-02-29") };
const zones = [
  "Europe/Dublin",
  "America/New_York",
  "Australia/Lord_Howe",
  "Pacific/Auckland",
  "Africa/Casablanca",
  "Asia/Kolkata",
  "America/St_Johns",
  "Etc/GMT+5",
];

function zoneOf(name: string): ICAL.Timezone {
  return new ICAL.Timezone(readIcs(foldedLines(vtimezoneLines(name, span))));
}

describe("a VTIMEZONE", () => {
  it.each(zones)(
    "for %s gives ical.js the offsets that Temporal has, over the whole span",
    (name) => {
      const zone = zoneOf(name);
      fc.assert(
        fc.property(
          fc.integer({ min: dayNumber(span.from), max: dayNumber(span.to) }),
          fc.integer({ min: 0, max: 23 }),
          (n, hour) => {
            const wall = Temporal.PlainDateTime.from(dayFromNumber(n)).with({ hour, minute: 30 });
            const moments = ["earlier", "later"].map((disambiguation) =>
              wall.toZonedDateTime(name, { disambiguation } as { disambiguation: "earlier" }),
            );
            // Times that a clock change repeats or leaves out are never written (see zone-time).
            fc.pre(moments[0]?.epochMilliseconds === moments[1]?.epochMilliseconds);
            const time = ICAL.Time.fromData({
              year: wall.year,
              month: wall.month,
              day: wall.day,
              hour,
              minute: 30,
            });
            expect(zone.utcOffset(time) * 1e9).toBe(moments[0]?.offsetNanoseconds);
          },
        ),
        { numRuns: 300 },
      );
    },
  );

  it.each(zones)("for %s has an observance that began before the span", (name) => {
    const onsets = vtimezoneLines(name, span).filter((line) => line.startsWith("DTSTART:"));
    expect(onsets.some((line) => line < "DTSTART:20270228")).toBe(true);
  });

  it("calls the greater offset daylight time, south of the equator too", () => {
    const lines = vtimezoneLines("Pacific/Auckland", span);
    const first = lines.slice(2, 7);
    expect(first).toEqual([
      "BEGIN:STANDARD",
      "DTSTART:20260405T030000",
      "TZOFFSETFROM:+1300",
      "TZOFFSETTO:+1200",
      "END:STANDARD",
    ]);
  });

  it("needs one observance only where clocks never change", () => {
    expect(vtimezoneLines("Asia/Kolkata", span)).toEqual([
      "BEGIN:VTIMEZONE",
      "TZID:Asia/Kolkata",
      "BEGIN:STANDARD",
      "DTSTART:19700101T000000",
      "TZOFFSETFROM:+0530",
      "TZOFFSETTO:+0530",
      "END:STANDARD",
      "END:VTIMEZONE",
    ]);
  });

  it("writes offsets west of Greenwich with a minus, minutes too", () => {
    expect(vtimezoneLines("America/St_Johns", span).join("\n")).toContain(
      "TZOFFSETFROM:-0230\nTZOFFSETTO:-0330",
    );
  });

  it.each([1900, 2200])("is written for the first and the last year of all: %i", (year) => {
    const [from, to] = [day(`${year}-03-01`), day(`${year}-09-30`)];
    const lines = vtimezoneLines("Europe/Dublin", { from, to });
    expect(lines.at(0)).toBe("BEGIN:VTIMEZONE");
    expect(lines.join("\n")).toMatch(/TZOFFSETTO:[+-]\d{4}/);
  });
});
