import ical, { ICalAlarmType, ICalCalendar, ICalEvent, type ICalEventData } from "ical-generator";
import { DateTime } from "luxon";
import { describe, expect, it } from "vitest";
import { day } from "../../src/dates.js";
import { aBedRound, aPlan, aRound, aWarning } from "../support/a-plan.js";
import { textOf } from "../support/calendars.js";
import { contentLines } from "../support/ics.js";

/**
 * What ical-generator 11.1.2 does by itself, each time beside what our files hold. When the first half
 * of such a test fails after an update, its guard in src/calendar may go.
 */
const whole = { start: "2027-06-12T00:00:00Z", end: "2027-06-13T00:00:00Z", allDay: true };
const fixed = { stamp: "2027-03-01T00:00:00Z", id: "one" };

function raw(event: ICalEventData, calendar = ical()): string {
  calendar.createEvent(event);
  return calendar.toString();
}

function ours(garden: object = {}, timeOfDay?: string): string {
  const rounds = [aRound(timeOfDay === undefined ? {} : { timeOfDay })];
  return textOf(aPlan({ rounds, garden }));
}

const withReminder = {
  calendar: { group: "round", remindersMinBefore: [-480], color: "teal", refreshHours: 12 },
};

describe("ical-generator leaves to us", () => {
  it("the last CRLF", () => {
    expect(raw(whole)).toMatch(/END:VCALENDAR$/);
    expect(ours()).toMatch(/END:VCALENDAR\r\n$/);
  });

  it("UID and DTSTAMP that stay", () => {
    const uid = /^UID:.*$/m;
    expect(uid.exec(raw(whole))?.[0]).not.toBe(uid.exec(raw(whole))?.[0]);
    expect(ours()).toBe(ours());
  });

  it("stamps in UTC: a calendar time zone takes the Z from them and the TZID from the start", () => {
    const start = DateTime.fromISO("2027-06-12T18:30", { zone: "Europe/Dublin" });
    const text = raw({ ...fixed, start }, ical({ timezone: "Europe/Dublin" }));
    expect(text).toContain("DTSTAMP:20270301T000000\r\n");
    expect(text).toContain("DTSTART:20270612T183000\r\n");
    expect(text).toContain("TIMEZONE-ID:");
    const file = ours({}, "18:30");
    expect(file).toMatch(/DTSTAMP:\d{8}T\d{6}Z\r\n/);
    expect(file).toContain("DTSTART;TZID=Europe/Dublin:20270612T183000\r\n");
    expect(file).not.toContain("TIMEZONE-ID");
  });

  it("the VTIMEZONE of a TZID", () => {
    const start = DateTime.fromISO("2027-06-12T18:30", { zone: "Europe/Dublin" });
    const text = raw({ start, timezone: "Europe/Dublin" });
    expect(text).toContain("TZID=Europe/Dublin");
    expect(text).not.toContain("VTIMEZONE");
    expect(ours({}, "18:30").match(/BEGIN:VTIMEZONE\r\nTZID:Europe\/Dublin\r\n/g)).toHaveLength(1);
  });

  it("alarms that count from the start", () => {
    const alarms = [{ type: ICalAlarmType.display, trigger: -28_800, relatesTo: "START" as const }];
    expect(raw({ ...whole, alarms })).toContain("TRIGGER;RELATED=END:PT8H");
    expect(ours(withReminder)).toContain("TRIGGER;RELATED=START:PT8H");
  });

  it("escaping of the calendar's name", () => {
    const name = "a, b\nX-INJECTED:yes";
    expect(
      contentLines(
        `${ical({ name })
          .toString()
          .replace(/(?<!\r)\n/g, "\r\n")}\r\n`,
      ),
    ).toContain("X-INJECTED:yes");
    expect(contentLines(ours({ name }))).toContain("NAME:a\\, b\\nX-INJECTED:yes: feedings");
  });

  it("escaping of a UID: ours is a UUID", () => {
    expect(raw({ ...whole, id: "a\r\nX-INJECTED:yes" })).toContain("\r\nX-INJECTED:yes\r\n");
    expect(ours({ id: "a\r\nX-INJECTED:yes" })).not.toContain("\r\nX-INJECTED");
  });

  it("URLs: it escapes them as text, so we write none", () => {
    expect(raw({ ...whole, url: "https://example.org/a,b" })).toContain(
      "https://example.org/a\\,b",
    );
    expect(ours()).not.toMatch(/^URL/m);
  });

  it("control characters and lone surrogates", () => {
    const bad = "a\u0007b\ud800c";
    expect(raw({ ...whole, summary: bad })).toContain(`SUMMARY:${bad}`);
    const plan = aPlan({
      rounds: [aRound({ beds: [aBedRound({ bedName: bad, bed: bad })] })],
      warnings: [aWarning({ message: bad, day: day("2027-07-15"), planting: bad })],
      garden: { id: bad, name: bad, calendar: { ...withReminder.calendar, group: "bed" } },
    });
    const file = textOf(plan);
    expect(file).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/);
    expect(file).not.toMatch(/\p{Surrogate}/u);
    expect(file).toContain("SUMMARY:Feed 3 cans\\, 56 mL: a\\\\u0007b\\\\ud800c");
  });

  it("the order of start and end, which it swaps or lets be equal without a word", () => {
    const same = raw({ ...whole, end: whole.start });
    expect(same).toContain("DTSTART;VALUE=DATE:20270612\r\nDTEND;VALUE=DATE:20270612");
    const file = ours({ durationMin: 0 }, "18:30");
    expect(file).toContain("DTEND;TZID=Europe/Dublin:20270612T183100");
  });

  it("days that there are not, and UIDs used twice", () => {
    expect(raw({ ...whole, start: "2026-02-30" })).toContain("DTSTART;VALUE=DATE:20260302");
    expect(() => day("2026-02-30")).toThrow(RangeError);
    const calendar = ical();
    raw({ ...whole, id: "one" }, calendar);
    expect(raw({ ...whole, id: "one" }, calendar).match(/UID:one/g)).toHaveLength(2);
    const plan = aPlan({ rounds: [aRound(), aRound()] });
    expect(() => textOf(plan)).toThrow(RangeError);
  });

  it("COLOR, and the calendar's DESCRIPTION, UID and LAST-MODIFIED", () => {
    expect(() => ical({ color: "teal" })).toThrow("malformed");
    const text = raw(whole, ical({ color: "#008080", description: "d" }));
    expect(text).not.toMatch(/^COLOR:/m);
    expect(text).not.toMatch(/^DESCRIPTION:/m);
    const [head = ""] = ours().split("BEGIN:VEVENT");
    for (const name of ["COLOR", "DESCRIPTION", "UID", "LAST-MODIFIED"]) {
      expect(head.match(new RegExp(`^${name}:`, "gm"))).toHaveLength(1);
    }
  });

  it("whole seconds in the refresh interval", () => {
    expect(ical({ ttl: 1.5 }).toString()).toContain("PT1.5S");
    const refreshHours = 1 / 7;
    expect(ours({ calendar: { ...withReminder.calendar, refreshHours } })).toContain(
      "REFRESH-INTERVAL;VALUE=DURATION:PT8M34S",
    );
  });

  it("X- properties of the calendar before its events", () => {
    const text = raw(whole, ical({ x: [["X-OURS", "1"]] }));
    expect(text.indexOf("X-OURS")).toBeGreaterThan(text.indexOf("END:VEVENT"));
    expect(ours().indexOf("X-FEEDROUND-GARDEN")).toBeLessThan(ours().indexOf("BEGIN:VEVENT"));
  });

  it("properties of an event before its alarms", () => {
    const text = raw({ ...whole, alarms: [{ trigger: 60 }], categories: [{ name: "c" }] });
    expect(text.indexOf("CATEGORIES")).toBeGreaterThan(text.indexOf("END:VALARM"));
    const file = ours(withReminder);
    expect(file.indexOf("CATEGORIES")).toBeLessThan(file.indexOf("BEGIN:VALARM"));
  });

  it("the hyphen of the product's name, which it doubles", () => {
    expect(ical({ prodId: "-//a//b//EN" }).toString()).toContain("PRODID:--//a//b//EN");
    expect(ours()).toContain("PRODID:-//Feedround//Feedround//EN\r\n");
  });

  it("dates and times free of the machine's zone", () => {
    const zone = process.env["TZ"];
    process.env["TZ"] = "Asia/Tokyo";
    try {
      // Local midnight in Tokyo is the day before in UTC.
      const event = new ICalEvent(
        { start: new Date(2027, 5, 12), allDay: true },
        new ICalCalendar(),
      );
      expect(event.toString()).toContain("DTSTART;VALUE=DATE:20270611");
      expect(ours()).toContain("DTSTART;VALUE=DATE:20270612\r\nDTEND;VALUE=DATE:20270613\r\n");
    } finally {
      if (zone === undefined) delete process.env["TZ"];
      else process.env["TZ"] = zone;
    }
  });
});
