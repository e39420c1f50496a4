// @ts-nocheck
import { Temporal } from "@js-temporal/polyfill";
import { describe, expect, it } from "vitest";
import {
  foldedLines,
  textOfValue,
  textValue,
  unfoldedLines,
} from "../../src/calendar/content-line.js";
import { vtimezoneLines } from "../../src/calendar/vtimezone.js";
import { momentOf } from "../../src/calendar/zone-time.js";
import { day } from "../../src/dates.js";
import { aBedRound, aPlan, aRound, roundsOn } from "../support/a-plan.js";
import { textOf } from "../support/calendars.js";
import { contentLines, eventsIn, linesOf, octets } from "../support/ics.js";

// RFC 5545, Internet Calendaring and Scheduling Core Object Specification, September 2009.
// Examples are the RFC's own.
const file = (plan = aPlan({ rounds: roundsOn(["2027-06-12"], { timeOfDay: "18:30" }) })) =>
  textOf(plan);

const count = (lines: readonly string[], name: string) =>
  lines.filter((line) => line.split(/[:;]/)[0] === name).length;

describe("RFC 5545", () => {
  it("section 3.1: unfolding the example gives 'DESCRIPTION:This is a long description that exists on a long line.'", () => {
    expect(
      unfoldedLines(
        "DESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.\r\n",
      ),
    ).toEqual(["DESCRIPTION:This is a long description that exists on a long line."]);
  });

  it("section 3.1: lines are no longer than 75 octets without the line break, and each ends in CRLF", () => {
    const plan = aPlan({
      rounds: [aRound({ beds: [aBedRound({ bedName: "Südbeet 水 ".repeat(30) })] })],
    });
    const longest = Math.max(...linesOf(file(plan)).map(octets));
    expect(longest).toBeLessThanOrEqual(75);
    expect(longest).toBeGreaterThan(70);
    expect(linesOf(foldedLines(["X".repeat(150)])).map(octets)).toEqual([74, 75, 3]);
  });

  it("section 3.3.11: the three lines of the example are 'Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.'", () => {
    const lines = "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.";
    const value = String.raw`Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`;
    expect(textValue(lines)).toBe(value);
    expect(textOfValue(value)).toBe(lines);
  });

  it("section 3.3.11: backslash, semicolon and comma are escaped, colon and quote are not; \\N is a line break too", () => {
    expect(textValue('a\\b;c,d:e"f')).toBe(String.raw`a\\b\;c\,d:e"f`);
    expect(textOfValue(String.raw`a\Nb`)).toBe("a\nb");
  });

  it("section 3.8.1.7: the example place 'Conference Room - F123, Bldg. 002' is written with an escaped comma", () => {
    expect(textValue("Conference Room - F123, Bldg. 002")).toBe(
      String.raw`Conference Room - F123\, Bldg. 002`,
    );
  });

  it("section 3.3.5: 1:30 in New York on 4 November 2007 is the first of two, EDT (UTC-04:00)", () => {
    const moment = momentOf(day("2007-11-04"), "01:30", "America/New_York");
    expect(moment).toBe(Date.parse("2007-11-04T01:30:00-04:00"));
  });

  it("section 3.3.5: 2:30 in New York on 11 March 2007, which does not occur, is 3:30 EDT (UTC-04:00)", () => {
    const moment = momentOf(day("2007-03-11"), "02:30", "America/New_York");
    expect(moment).toBe(Date.parse("2007-03-11T03:30:00-04:00"));
  });

  it("section 3.3.5: 13:30 in New York on 14 July 1997 is 17:30 UTC, written in form 3", () => {
    const plan = aPlan({
      rounds: roundsOn(["1997-07-14"], { timeOfDay: "13:30" }),
      garden: { timezone: "America/New_York" },
    });
    expect(file(plan)).toContain("DTSTART;TZID=America/New_York:19970714T133000\r\n");
    const start = eventsIn(file(plan))[0]?.startDate;
    expect((start?.toUnixTime() ?? 0) * 1000).toBe(
      Temporal.Instant.from("1997-07-14T17:30:00Z").epochMilliseconds,
    );
  });

  it("section 3.6.1: DTEND is the non-inclusive end, so one day on 28 June 2007 ends on 29 June", () => {
    expect(file(aPlan({ rounds: roundsOn(["2007-06-28"]) }))).toContain(
      "DTSTART;VALUE=DATE:20070628\r\nDTEND;VALUE=DATE:20070629\r\n",
    );
  });

  it("section 3.6.1: UID and DTSTAMP stand once in an event, the other single properties at most once, alarms last", () => {
    const lines = contentLines(file());
    const event = lines.slice(lines.indexOf("BEGIN:VEVENT") + 1, lines.indexOf("END:VEVENT"));
    for (const name of ["UID", "DTSTAMP"]) expect(count(event, name)).toBe(1);
    for (const name of [
      "CREATED",
      "DESCRIPTION",
      "DTSTART",
      "DTEND",
      "LAST-MODIFIED",
      "SEQUENCE",
      "SUMMARY",
      "TRANSP",
    ]) {
      expect(count(event, name)).toBe(1);
    }
    expect(count(event, "DURATION")).toBe(0);
  });

  it("sections 3.6 and 3.7: VERSION:2.0 and PRODID once, calendar properties before any component", () => {
    const lines = contentLines(file());
    expect(lines.filter((line) => line === "VERSION:2.0")).toHaveLength(1);
    expect(count(lines, "PRODID")).toBe(1);
    const firstComponent = lines.findIndex((line, i) => i > 0 && line.startsWith("BEGIN:"));
    const outside = lines.slice(firstComponent).reduce(
      ({ depth, loose }, line) => ({
        depth: depth + (line.startsWith("BEGIN:") ? 1 : line.startsWith("END:") ? -1 : 0),
        loose: loose + (depth === 0 && !/^(BEGIN|END):/.test(line) ? 1 : 0),
      }),
      { depth: 0, loose: 0 },
    );
    expect(outside.loose).toBe(0);
  });

  it("section 3.6.5: the example 'using only the DTSTART property' gives New York's two changes of 2007", () => {
    const lines = vtimezoneLines("America/New_York", {
      from: day("2007-06-01"),
      to: day("2007-12-31"),
    });
    const text = lines.join("\n");
    expect(text).toContain(
      [
        "BEGIN:STANDARD",
        "DTSTART:20071104T020000",
        "TZOFFSETFROM:-0400",
        "TZOFFSETTO:-0500",
        "END:STANDARD",
      ].join("\n"),
    );
    expect(text).toContain(
      [
        "BEGIN:DAYLIGHT",
        "DTSTART:20070311T020000",
        "TZOFFSETFROM:-0500",
        "TZOFFSETTO:-0400",
        "END:DAYLIGHT",
      ].join("\n"),
    );
  });

  it("section 3.6.5: Standard Time took effect in New York in Fall 1967 at DTSTART:19671029T020000, TZOFFSETFROM:-0400", () => {
    const lines = vtimezoneLines("America/New_York", {
      from: day("1967-06-01"),
      to: day("1967-12-31"),
    });
    const at = lines.indexOf("DTSTART:19671029T020000");
    expect(lines.slice(at - 1, at + 3)).toEqual([
      "BEGIN:STANDARD",
      "DTSTART:19671029T020000",
      "TZOFFSETFROM:-0400",
      "TZOFFSETTO:-0500",
    ]);
  });

  it("section 4: the example's 8:30 to 9:30 in New York on 12 March 1998 needs its zone's changes of 1998", () => {
    const lines = vtimezoneLines("America/New_York", {
      from: day("1998-03-12"),
      to: day("1998-03-12"),
    });
    expect(lines).toContain("DTSTART:19981025T020000");
    const moment = momentOf(day("1998-03-12"), "08:30", "America/New_York");
    expect(moment).toBe(Date.parse("1998-03-12T08:30:00-05:00"));
  });

  it("section 3.3.14: '-0000' is not allowed; New York's standard time is -0500, Geneva's +0100", () => {
    const offset = (zone: string) =>
      vtimezoneLines(zone, { from: day("2027-01-01"), to: day("2027-01-02") }).join("\n");
    expect(offset("America/New_York")).toContain("TZOFFSETTO:-0500");
    expect(offset("Europe/Zurich")).toContain("TZOFFSETTO:+0100");
    expect(offset("Europe/London")).toContain("TZOFFSETTO:+0000");
    expect(offset("Europe/London")).not.toContain("-0000");
  });

  it.each([
    [30, "-PT30M", "3.6.6: a display alarm 30 minutes before the start is -PT30M"],
    [15, "-PT15M", "3.8.6.3: a trigger 15 minutes before the start is -PT15M"],
    [2880, "-P2D", "3.6.6: 2 days before is -P2D"],
  ])("alarm of %i minutes, %s: section %s", (minutes, duration) => {
    const plan = aPlan({
      garden: {
        calendar: {
          group: "round",
          remindersMinBefore: [minutes],
          color: "teal",
          refreshHours: 12,
        },
      },
    });
    expect(file(plan)).toContain(`ACTION:DISPLAY\r\nTRIGGER;RELATED=START:${duration}\r\n`);
  });

  it("section 3.6.6: a display alarm has ACTION, TRIGGER and DESCRIPTION once each", () => {
    const plan = aPlan({
      garden: {
        calendar: { group: "round", remindersMinBefore: [30], color: "teal", refreshHours: 12 },
      },
    });
    const lines = contentLines(file(plan));
    const alarm = lines.slice(lines.indexOf("BEGIN:VALARM") + 1, lines.indexOf("END:VALARM"));
    expect(alarm.map((line) => line.split(/[:;]/)[0])).toEqual([
      "ACTION",
      "TRIGGER",
      "DESCRIPTION",
    ]);
  });

  it("section 3.8.7.2: without METHOD, DTSTAMP is LAST-MODIFIED; both and CREATED are in UTC", () => {
    const text = file();
    expect(text).not.toMatch(/^METHOD/m);
    const stamp = (name: string) =>
      contentLines(text)
        .filter((l) => l.startsWith(`${name}:`))
        .pop()
        ?.split(":")[1];
    expect(stamp("DTSTAMP")).toMatch(/^\d{8}T\d{6}Z$/);
    expect(stamp("DTSTAMP")).toBe(stamp("LAST-MODIFIED"));
    expect(stamp("CREATED")).toMatch(/^\d{8}T\d{6}Z$/);
  });

  it("section 3.8.7.4: the sequence number of a component just created is 0", () => {
    expect(file()).toContain("\r\nSEQUENCE:0\r\n");
  });
});
