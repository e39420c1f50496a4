import { Temporal } from "@js-temporal/polyfill";
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import { textOfValue } from "../../src/calendar/content-line.js";
import { planEvents } from "../../src/calendar/plan-events.js";
import { addDays, day } from "../../src/dates.js";
import type { Plan } from "../../src/season/season-plan.js";
import { aBedRound, aPlan, aRound, aWarning, daysFrom, roundsOn } from "../support/a-plan.js";
import { textOf } from "../support/calendars.js";
import { contentLines, eventsIn, linesOf, octets, readIcs, valueOf } from "../support/ics.js";

const wishes = {
  group: "round",
  remindersMinBefore: [],
  color: "seagreen",
  refreshHours: 12,
} as const;

const timedPlan = aPlan({
  rounds: roundsOn(["2027-03-20", "2027-06-12", "2027-11-03"], { timeOfDay: "18:30" }),
});

describe("the calendar file", () => {
  it("tells what the plan tells, event for event, as ical.js reads it", () => {
    const plan = aPlan({
      rounds: roundsOn(daysFrom(day("2027-05-01"), 20, 7)),
      warnings: [aWarning({ day: day("2027-05-02") })],
    });
    const events = planEvents(plan);
    const read = eventsIn(textOf(plan));
    expect(
      read.map((event) => ({
        uid: event.uid,
        start: event.startDate.toString(),
        end: event.endDate.toString(),
        summary: event.summary,
        description: event.description.split("\n"),
        categories: event.component.getFirstProperty("categories")?.getValues(),
        key: valueOf(event.component, "x-feedround-key"),
      })),
    ).toEqual(
      events.map((event) => ({
        uid: event.uid,
        start: event.day,
        end: addDays(event.day, 1),
        summary: event.summary,
        description: event.description,
        categories: event.categories,
        key: event.key,
      })),
    );
  });

  it("is the same for the same plan, byte for byte", () => {
    expect(textOf(timedPlan)).toBe(textOf(structuredClone(timedPlan)));
  });

  it("bears the season's first day as its stamp, or the stamp it is given", () => {
    const [event] = eventsIn(textOf(aPlan()));
    expect(event && valueOf(event.component, "dtstamp")).toBe("2027-03-01T00:00:00Z");
    const stamped = readIcs(textOf(aPlan(), { stamp: "2027-04-05T06:07:08.999Z" }));
    const vevent = stamped.getFirstSubcomponent("vevent");
    for (const name of ["dtstamp", "created", "last-modified"]) {
      expect(vevent && valueOf(vevent, name)).toBe("2027-04-05T06:07:08Z");
    }
    expect(valueOf(stamped, "last-modified")).toBe("2027-04-05T06:07:08Z");
  });

  it.each([
    "2027-04-05",
    "2027-04-05T06:07:08",
    "2027-04-05T06:07:08+01:00",
    "2027-02-30T00:00:00Z",
    "2027-01-01T24:00:00Z",
  ])("refuses the stamp %s", (stamp) => {
    expect(() => textOf(aPlan(), { stamp })).toThrow(RangeError);
  });

  it("begins each event's history at SEQUENCE 0", () => {
    expect(contentLines(textOf(timedPlan)).filter((line) => line === "SEQUENCE:0")).toHaveLength(3);
  });

  it("refuses two events with one UID", () => {
    const plan = aPlan({ rounds: [aRound(), aRound()] });
    expect(() => textOf(plan)).toThrow(/two events have the UID/);
  });

  it("is legible when there is nothing to feed", () => {
    expect(eventsIn(textOf(aPlan({ rounds: [] })))).toEqual([]);
  });

  it("blocks nobody's time", () => {
    for (const { component } of eventsIn(textOf(aPlan()))) {
      expect(valueOf(component, "transp")).toBe("TRANSPARENT");
      expect(valueOf(component, "x-microsoft-cdo-busystatus")).toBe("FREE");
    }
  });

  it("has name, colour and refresh interval for old and new clients", () => {
    const calendar = readIcs(textOf(aPlan({ garden: { name: "Row, 1; \\ end\nBEGIN:VEVENT" } })));
    const name = "Row, 1; \\ end\nBEGIN:VEVENT: feedings";
    // ical.js knows neither as text, so it leaves the escapes in.
    for (const property of ["name", "x-wr-calname"]) {
      expect(textOfValue(valueOf(calendar, property) ?? "")).toBe(name);
    }
    expect(valueOf(calendar, "color")).toBe("seagreen");
    expect(valueOf(calendar, "refresh-interval")).toBe("PT12H");
    expect(valueOf(calendar, "x-published-ttl")).toBe("PT12H");
    expect(calendar.getAllSubcomponents("vevent")).toHaveLength(1);
  });

  it("keeps legal whatever names the grower chooses", () => {
    const anyName = fc.string({ unit: "binary", maxLength: 80 });
    fc.assert(
      fc.property(anyName, anyName, anyName, (name, bedName, message) => {
        const rounds = [aRound({ beds: [aBedRound({ bedName, bed: bedName })] })];
        const plan = aPlan({
          rounds,
          warnings: [aWarning({ message, planting: name, day: day("2027-07-15") })],
          garden: { name, id: name, calendar: { ...wishes, group: "bed" } },
        });
        const text = textOf(plan);
        for (const line of linesOf(text)) expect(octets(line)).toBeLessThanOrEqual(75);
        expect(eventsIn(text)).toHaveLength(2);
      }),
    );
  });
});

describe("timed events", () => {
  const read = () => eventsIn(textOf(timedPlan));

  it("stand at the garden's time in the garden's zone and last as long as asked", () => {
    const line = /^DTSTART;TZID=Europe\/Dublin:20270612T183000$/;
    expect(contentLines(textOf(timedPlan)).some((l) => line.test(l))).toBe(true);
    expect(read().map(({ duration }) => duration.toString())).toEqual(["PT45M", "PT45M", "PT45M"]);
  });

  it("happen when Temporal says they do, by the file's own VTIMEZONE", () => {
    const starts = read().map(({ startDate }) => startDate);
    const moments = starts.map((start) => start.toUnixTime());
    expect(new Set(starts.map(({ zone }) => zone.tzid))).toEqual(new Set(["Europe/Dublin"]));
    const expected = ["2027-03-20", "2027-06-12", "2027-11-03"].map(
      (on) => Temporal.ZonedDateTime.from(`${on}T18:30[Europe/Dublin]`).epochMilliseconds / 1000,
    );
    expect(moments).toEqual(expected);
  });

  it("use one VTIMEZONE for each zone, and none without timed events", () => {
    const zones = (plan: Plan) => readIcs(textOf(plan)).getAllSubcomponents("vtimezone");
    expect(zones(timedPlan).map((zone) => valueOf(zone, "tzid"))).toEqual(["Europe/Dublin"]);
    expect(zones(aPlan())).toEqual([]);
  });

  it("move forward when the clocks leave their hour out", () => {
    const text = textOf(aPlan({ rounds: roundsOn(["2027-03-28"], { timeOfDay: "01:15" }) }));
    expect(text).toContain(
      "DTSTART;TZID=Europe/Dublin:20270328T021500\r\nDTEND;TZID=Europe/Dublin:20270328T030000",
    );
  });

  it.each([
    ["01:30", "20271031T003000Z", "20271031T011500Z", "from the first of two to the second"],
    ["00:30", "20271030T233000Z", "20271031T001500Z", "into an hour that comes twice"],
  ])("beginning at %s are in UTC form, %s to %s: %s", (timeOfDay, start, end) => {
    const text = textOf(aPlan({ rounds: roundsOn(["2027-10-31"], { timeOfDay }) }));
    expect(text).toContain(`DTSTART:${start}\r\nDTEND:${end}\r\n`);
    expect(text).not.toMatch(/TZID|VTIMEZONE/);
  });

  it("keep the clock's time on that day outside of the repeated hour", () => {
    const text = textOf(aPlan({ rounds: roundsOn(["2027-10-31"], { timeOfDay: "02:00" }) }));
    expect(text).toContain("DTSTART;TZID=Europe/Dublin:20271031T020000\r\n");
  });

  it("are in UTC form in a UTC garden, which needs no VTIMEZONE", () => {
    const text = textOf(
      aPlan({
        rounds: roundsOn(["2027-06-12"], { timeOfDay: "18:30" }),
        garden: { timezone: "UTC" },
      }),
    );
    expect(text).toContain("DTSTART:20270612T183000Z\r\nDTEND:20270612T191500Z");
    expect(text).not.toMatch(/TZID|VTIMEZONE/);
  });
});

describe("reminders", () => {
  const alarms = (minutes: number[], timeOfDay?: string) => {
    const rounds = [aRound(timeOfDay === undefined ? {} : { timeOfDay })];
    const plan = aPlan({
      rounds,
      garden: { calendar: { ...wishes, remindersMinBefore: minutes } },
    });
    return eventsIn(textOf(plan)).flatMap(({ component }) =>
      component.getAllSubcomponents("valarm"),
    );
  };
  const triggers = (minutes: number[], timeOfDay?: string) =>
    alarms(minutes, timeOfDay).map((alarm) => alarm.getFirstProperty("trigger")?.toICALString());

  it("are none unless the grower wishes them", () => {
    expect(alarms([])).toEqual([]);
  });

  it.each([
    [-480, "PT8H", "08:00 on the day"],
    [360, "-PT6H", "18:00 the evening before"],
    [960, "-PT16H", "08:00 the day before"],
    [0, "PT0S", "at midnight"],
  ])("of an all-day event at %i minutes are %s: %s", (minutes, duration) => {
    expect(triggers([minutes])).toEqual([`TRIGGER;RELATED=START:${duration}`]);
  });

  it("of a timed event count from its start", () => {
    expect(triggers([30, -10, 1500], "18:30")).toEqual([
      "TRIGGER;RELATED=START:-PT30M",
      "TRIGGER;RELATED=START:PT10M",
      "TRIGGER;RELATED=START:-P1DT1H",
    ]);
  });

  it("show the summary", () => {
    const [alarm] = alarms([30], "18:30");
    expect(alarm && valueOf(alarm, "action")).toBe("DISPLAY");
    expect(alarm && valueOf(alarm, "description")).toBe("Feed 3 cans, 56 mL: toms");
  });

  it("stand after all properties of their event", () => {
    const plan = aPlan({ garden: { calendar: { ...wishes, remindersMinBefore: [-480, 30] } } });
    const lines = contentLines(textOf(plan));
    const tail = lines.slice(lines.indexOf("BEGIN:VALARM"));
    expect(tail.map((line) => line.split(/[:;]/)[0])).toEqual([
      ...["BEGIN", "ACTION", "TRIGGER", "DESCRIPTION", "END"],
      ...["BEGIN", "ACTION", "TRIGGER", "DESCRIPTION", "END"],
      ...["END", "END"],
    ]);
  });
});

describe("the machine's own zone", () => {
  const zone = process.env["TZ"];
  afterAll(() => {
    if (zone === undefined) delete process.env["TZ"];
    else process.env["TZ"] = zone;
  });

  it("changes no byte", () => {
    const plan = aPlan({
      rounds: [aRound(), aRound({ day: day("2027-06-19"), timeOfDay: "18:30" })],
    });
    const expected = textOf(plan);
    for (const tz of ["Pacific/Kiritimati", "Europe/Berlin", "America/Los_Angeles", "Asia/Tokyo"]) {
      process.env["TZ"] = tz;
      expect(textOf(plan)).toBe(expected);
    }
  });
});
