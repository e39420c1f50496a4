// @ts-nocheck
import { describe, expect, it } from "vitest";
import type { CalendarTextOptions } from "../../src/calendar/calendar-text.js";
import { addDays, day } from "../../src/dates.js";
import type { Plan } from "../../src/season/season-plan.js";
import {
  aBedRound,
  aFill,
  aMix,
  aPlan,
  aRound,
  aWarning,
  daysFrom,
  roundsOn,
} from "../support/a-plan.js";
import { earlierOf, textOf } from "../support/calendars.js";
import { eventsIn, readIcs, valueOf } from "../support/ics.js";

const stamp = "2027-05-20T08:00:00Z";
const stronger = [
  aBedRound({ mixes: [aMix({ fills: [aFill({ stockText: "45 mL", stockMl: 45 })] })] }),
];
const weekly = daysFrom(day("2027-06-01"), 6, 7);
const planOn = (days: readonly string[], differs: Parameters<typeof aPlan>[0] = {}) =>
  aPlan({ rounds: roundsOn(days), ...differs });

function after(previous: string, plan: Plan, options: CalendarTextOptions = {}): string {
  return textOf(plan, { previous, stamp, ...options });
}

function byDay(text: string) {
  return new Map(earlierOf(text).events.map((event) => [event.day as string, event]));
}

const uidsByDay = (text: string) =>
  Object.fromEntries(
    earlierOf(text)
      .events.filter((e) => !e.cancelled)
      .map((e) => [e.day, e.uid]),
  );

describe.each(["import", "subscription"] as const)("a calendar made again for %s", (use) => {
  const options = { for: use };

  it("is the same file when nothing changed, whatever the time is now", () => {
    const first = textOf(planOn(weekly));
    expect(after(first, planOn(weekly), options)).toBe(first);
    expect(after(first, planOn(weekly), { ...options, stamp: "2029-01-01T00:00:00Z" })).toBe(first);
  });

  it("changes only the event that changed: UID and CREATED stay, SEQUENCE and LAST-MODIFIED rise", () => {
    const first = textOf(planOn(weekly));
    const rounds = roundsOn(weekly).map((round, i) =>
      i === 2 ? aRound({ ...round, beds: stronger }) : round,
    );
    const next = after(first, aPlan({ rounds }), options);
    for (const [on, event] of byDay(next)) {
      const was = byDay(first).get(on);
      if (on !== weekly[2]) expect(event.text).toBe(was?.text);
      else {
        expect(event).toMatchObject({
          uid: was?.uid,
          created: was?.created,
          sequence: 1,
          modified: stamp,
        });
        expect(event.text).toContain("45 mL");
        expect(event.text).toContain("DTSTAMP:20270520T080000Z");
      }
    }
  });

  it("keeps the UID of an event that moves, and renames none when one is inserted", () => {
    const first = textOf(planOn(weekly));
    const moved = weekly.map((d, i) => (i === 3 ? addDays(d, 2) : d));
    const next = after(first, planOn([...moved, "2027-06-04"].sort()), options);
    const uids = uidsByDay(next);
    weekly.forEach((d, i) => {
      expect(uids[moved[i] ?? ""]).toBe(uidsByDay(first)[d]);
    });
    expect(Object.values(uidsByDay(first))).not.toContain(uids["2027-06-04"]);
    expect(byDay(next).get("2027-06-24")).toMatchObject({
      sequence: 1,
      key: "feeding//2027-06-24",
    });
  });

  it("keeps every UID when the whole season shifts", () => {
    const first = textOf(planOn(weekly));
    const next = after(first, planOn(weekly.map((d) => addDays(d, 3))), options);
    expect(Object.values(uidsByDay(next))).toEqual(Object.values(uidsByDay(first)));
  });

  it("takes an event more than two weeks off for another one", () => {
    const first = textOf(planOn(["2027-06-01"]));
    expect(uidsByDay(after(first, planOn(["2027-06-15"]), options))["2027-06-15"]).toBe(
      uidsByDay(first)["2027-06-01"],
    );
    expect(uidsByDay(after(first, planOn(["2027-06-16"]), options))["2027-06-16"]).not.toBe(
      uidsByDay(first)["2027-06-01"],
    );
  });

  it("does not mistake one bed's event for another's, or a notice for a feeding", () => {
    const garden = {
      calendar: { group: "bed", remindersMinBefore: [], color: "teal", refreshHours: 12 },
    } as const;
    const inBed = (bed: string, on: string) => aRound({ day: day(on), beds: [aBedRound({ bed })] });
    const first = textOf(
      aPlan({ rounds: [inBed("a", "2027-06-01"), inBed("b", "2027-06-01")], garden }),
    );
    const warnings = [aWarning({ day: day("2027-06-03") })];
    const next = after(
      first,
      aPlan({ rounds: [inBed("b", "2027-06-02")], warnings, garden }),
      options,
    );
    const uidOf = (text: string, key: string) =>
      earlierOf(text).events.find((e) => e.key === key)?.uid;
    expect(uidOf(next, "feeding/b/2027-06-02")).toBe(uidOf(first, "feeding/b/2027-06-01"));
    expect(earlierOf(first).events.map((e) => e.uid)).not.toContain(
      uidOf(next, "notice/window-missed//2027-06-03"),
    );
  });

  it("gives a new event a UID of its own when a moved one bears that of its day", () => {
    const first = textOf(planOn(["2027-06-01"]));
    const second = after(first, planOn(["2027-06-05"]), options);
    const third = after(second, planOn(["2027-06-01", "2027-06-05"]), options);
    expect(uidsByDay(third)["2027-06-05"]).toBe(uidsByDay(first)["2027-06-01"]);
    expect(new Set(Object.values(uidsByDay(third))).size).toBe(2);
    const all = earlierOf(third).events.map(({ uid }) => uid);
    expect(new Set(all).size).toBe(all.length);
  });

  it("sets a time that lies ahead to this one, once and in a revision of its own", () => {
    const first = textOf(planOn(weekly), { stamp: "2027-05-01T00:00:00Z" });
    const now = { ...options, stamp: "2027-04-01T00:00:00Z" };
    const next = after(first, planOn(weekly), now);
    const times = { created: now.stamp, modified: now.stamp };
    for (const event of earlierOf(next).events)
      expect(event).toMatchObject({ ...times, sequence: 1 });
    expect(next.replace(/^(?:SEQUENCE|CREATED|DTSTAMP|LAST-MODIFIED):.*\r\n/gm, "")).toBe(
      first.replace(/^(?:SEQUENCE|CREATED|DTSTAMP|LAST-MODIFIED):.*\r\n/gm, ""),
    );
    expect(after(next, planOn(weekly), now)).toBe(next);
    expect(after(next, planOn(weekly), { ...options, stamp: "2027-04-02T00:00:00Z" })).toBe(next);
  });

  it("needs no clock: without a stamp the same steps give the same bytes", () => {
    const rounds = roundsOn(weekly, { beds: stronger });
    const again = () => textOf(aPlan({ rounds }), { ...options, previous: textOf(planOn(weekly)) });
    expect(again()).toBe(again());
    expect(earlierOf(again()).events[0]).toMatchObject({
      sequence: 1,
      modified: "2027-03-01T00:00:00Z",
    });
  });

  it("goes on from the SEQUENCE of a UID that was gone and comes back", () => {
    const days = ["2027-06-01", "2027-06-20"];
    const changed = { rounds: roundsOn(days, { beds: stronger }) };
    const texts = [textOf(planOn(days))];
    for (const plan of [aPlan(changed), planOn(["2027-06-01"]), planOn(days)]) {
      texts.push(after(texts.at(-1) ?? "", plan, options));
    }
    const [first, second, , last] = texts.map((text) => byDay(text).get("2027-06-20"));
    expect(last?.uid).toBe(first?.uid);
    expect(last?.created).toBe(first?.created);
    expect(last?.sequence).toBeGreaterThan(second?.sequence ?? Infinity);
    expect(last?.cancelled).toBe(false);
    expect(last?.text).not.toMatch(/CANCELLED|Cancelled/);
  });

  it("refuses an earlier file of another garden", () => {
    const previous = textOf(aPlan({ garden: { id: "mill-house" } }));
    expect(() => after(previous, aPlan(), options)).toThrow(/belongs to the garden/);
  });

  it("is read by ical.js before and after with the same UIDs and their revisions", () => {
    const first = textOf(planOn(weekly));
    const next = after(first, planOn(weekly.map((d, i) => (i < 2 ? addDays(d, 1) : d))), options);
    const read = (text: string) =>
      eventsIn(text).map(({ uid, sequence, startDate }) => [uid, sequence, startDate.toString()]);
    expect(read(next).map(([uid]) => uid)).toEqual(read(first).map(([uid]) => uid));
    expect(read(next).map(([, sequence]) => sequence)).toEqual([1, 1, 0, 0, 0, 0]);
    expect(read(next)[0]?.[2]).toBe("2027-06-02");
  });
});

describe("an event that is no longer planned", () => {
  const first = textOf(
    planOn(weekly, {
      garden: {
        calendar: { group: "round", remindersMinBefore: [-480], color: "teal", refreshHours: 12 },
      },
    }),
  );
  const gone = weekly[5] ?? "";
  const without = planOn(weekly.slice(0, 5), {
    garden: {
      calendar: { group: "round", remindersMinBefore: [-480], color: "teal", refreshHours: 12 },
    },
  });

  it("is cancelled when the file is imported: higher SEQUENCE, no time blocked, no reminder", () => {
    const component = readIcs(after(first, without, { for: "import" }))
      .getAllSubcomponents("vevent")
      .find((vevent) => valueOf(vevent, "dtstart") === gone);
    const value = (name: string) => component && valueOf(component, name);
    expect(value("status")).toBe("CANCELLED");
    expect(value("sequence")).toBe("1");
    expect(value("transp")).toBe("TRANSPARENT");
    expect(value("summary")).toMatch(/^Cancelled: Feed 3 cans, 56 mL: toms$/);
    expect(value("last-modified")).toBe(stamp);
    expect(value("dtstamp")).toBe(stamp);
    expect(value("created")).toBe("2027-03-01T00:00:00Z");
    expect(component?.getAllSubcomponents("valarm")).toEqual([]);
  });

  it("stays cancelled, byte for byte, until 60 days after its day, then is dropped", () => {
    const cancelled = after(first, without, { for: "import" });
    const on = (today: string) => after(cancelled, without, { for: "import", today: day(today) });
    expect(on("2027-06-30")).toBe(cancelled);
    expect(on(addDays(day(gone), 60))).toBe(cancelled);
    expect(byDay(on(addDays(day(gone), 61))).has(gone)).toBe(false);
  });

  it("stays cancelled until 60 days after its cancelling when that is later", () => {
    const late = {
      for: "import",
      stamp: "2027-08-01T00:00:00Z",
      today: day(gone),
    } as const;
    const cancelled = after(first, without, late);
    const on = (today: string) => after(cancelled, without, { ...late, today: day(today) });
    expect(byDay(on("2027-09-30")).get(gone)?.cancelled).toBe(true);
    expect(byDay(on("2027-10-01")).has(gone)).toBe(false);
  });

  it("is dropped at once when its day is already more than 60 days past: last season stays done", () => {
    const next = after(first, planOn(["2028-06-01"]), { for: "import", today: day("2028-03-01") });
    expect(earlierOf(next).events.map((event) => event.day)).toEqual(["2028-06-01"]);
  });

  it("is absent when the file is subscribed to, and its UID remembered", () => {
    const next = after(first, without, { for: "subscription" });
    expect([...byDay(next).keys()]).toEqual(weekly.slice(0, 5));
    expect(next).not.toContain("CANCELLED");
    expect(earlierOf(next).retired).toEqual([
      {
        uid: byDay(first).get(gone)?.uid,
        sequence: 0,
        created: "2027-03-01T00:00:00Z",
        modified: stamp,
        day: gone,
      },
    ]);
  });

  it("is forgotten when it is over for more than 400 days", () => {
    const next = after(first, without, { for: "subscription" });
    const on = (today: string) =>
      earlierOf(after(next, without, { for: "subscription", today: day(today) })).retired;
    expect(on(addDays(day(gone), 400))).toHaveLength(1);
    expect(on(addDays(day(gone), 401))).toEqual([]);
  });

  it("leaves a subscription that was an import file before", () => {
    const cancelled = after(first, without, { for: "import" });
    const next = after(cancelled, without, { for: "subscription" });
    expect(next).not.toContain("CANCELLED");
    expect(earlierOf(next).retired.map(({ sequence }) => sequence)).toEqual([1]);
  });

  it("is no longer a former event when it comes back", () => {
    const absent = after(first, without, { for: "subscription" });
    const back = after(absent, planOn(weekly), { for: "subscription" });
    expect(byDay(back).get(gone)?.uid).toBe(byDay(first).get(gone)?.uid);
    expect(earlierOf(back).retired).toEqual([]);
  });

  it("is not taken for a new event near by once it is cancelled", () => {
    const cancelled = after(first, without, { for: "import" });
    const near = planOn([...weekly.slice(0, 5), addDays(day(gone), 2)], { garden: without.garden });
    const next = after(cancelled, near, { for: "import" });
    expect(byDay(next).get(gone)?.text).toBe(byDay(cancelled).get(gone)?.text);
    expect(byDay(next).get(addDays(day(gone), 2))?.sequence).toBe(0);
  });

  it("with an alarm cancelled and planned again has its alarm again", () => {
    const cancelled = after(first, without, { for: "import" });
    const back = after(cancelled, planOn(weekly, { garden: without.garden }), { for: "import" });
    expect(byDay(back).get(gone)).toMatchObject({ sequence: 2, cancelled: false });
    expect(byDay(back).get(gone)?.text).toContain("BEGIN:VALARM");
  });
});

it("a file whose lines are folded elsewhere is not changed for that", () => {
  const first = textOf(planOn(weekly));
  const refolded = first.replace(/(\r\nDESCRIPTION:56)( mL)/, "$1\r\n $2");
  expect(refolded).not.toBe(first);
  expect(after(refolded, planOn(weekly))).toBe(refolded);
});

it("a cancelled event keeps the VTIMEZONE it needs after the garden went all-day", () => {
  const first = textOf(
    aPlan({ rounds: roundsOn(["2027-06-01", "2027-08-01"], { timeOfDay: "18:30" }) }),
  );
  const next = after(first, planOn(["2027-06-01"]), { for: "import" });
  expect(next.match(/BEGIN:VTIMEZONE/g)).toHaveLength(1);
  expect(next).toContain("DTSTART;TZID=Europe/Dublin:20270801T183000");
});
