// @ts-nocheck
import { describe, expect, it } from "vitest";
import { calendarChanges } from "../../src/calendar/calendar-changes.js";
import { day } from "../../src/dates.js";
import type { Plan } from "../../src/season/season-plan.js";
import { aBedRound, aFill, aMix, aPlan, aRound, roundsOn } from "../support/a-plan.js";
import { earlierOf, textOf } from "../support/calendars.js";

const stronger = [
  aBedRound({ mixes: [aMix({ fills: [aFill({ stockText: "45 mL", stockMl: 45 })] })] }),
];
const was = aPlan({ rounds: roundsOn(["2027-06-01", "2027-06-08", "2027-06-15"]) });

function changes(plan: Plan, previous = textOf(was)) {
  return calendarChanges(earlierOf(previous), plan, plan.today);
}

describe("changes of a calendar", () => {
  it("are none for the same plan", () => {
    expect(changes(was)).toEqual([]);
  });

  it("tell what is new, moved, changed and gone, by day", () => {
    const plan = aPlan({
      rounds: [
        aRound({ day: day("2027-06-03") }),
        aRound({ day: day("2027-06-08"), beds: stronger }),
        aRound({ day: day("2027-07-20") }),
      ],
    });
    const summary = "Feed 3 cans, 56 mL: toms";
    expect(changes(plan)).toMatchObject([
      {
        change: "moved",
        event: { day: "2027-06-03" },
        was: { day: "2027-06-01", summary },
        properties: [],
      },
      {
        change: "changed",
        event: { summary: "Feed 1 can, 45 mL: toms" },
        was: { day: "2027-06-08", summary },
        properties: ["SUMMARY", "DESCRIPTION"],
      },
      { change: "gone", was: { day: "2027-06-15", summary } },
      { change: "new", event: { day: "2027-07-20" } },
    ]);
  });

  it("name what else differs in an event that moved", () => {
    const plan = aPlan({
      rounds: [aRound({ day: day("2027-06-16"), beds: stronger }), ...was.rounds.slice(0, 2)],
    });
    expect(changes(plan)).toMatchObject([
      { change: "moved", properties: ["SUMMARY", "DESCRIPTION"] },
    ]);
  });

  it("name the start of an event that has another time on the same day", () => {
    const [change] = changes(
      aPlan({
        rounds: roundsOn(["2027-06-01", "2027-06-08", "2027-06-15"], { timeOfDay: "07:00" }),
      }),
    );
    expect(change).toMatchObject({ change: "changed" });
    expect(change && "properties" in change && change.properties).toContain("DTSTART");
  });

  it("call a cancelled event new when it comes back, and do not call it gone again", () => {
    const fewer = aPlan({ rounds: was.rounds.slice(0, 2) });
    const cancelled = textOf(fewer, { previous: textOf(was), for: "import" });
    expect(changes(fewer, cancelled)).toEqual([]);
    expect(changes(was, cancelled)).toMatchObject([
      { change: "new", event: { day: "2027-06-15" } },
    ]);
  });

  it("are those that the next file makes", () => {
    const plan = aPlan({ rounds: [aRound({ day: day("2027-06-02") }), ...was.rounds.slice(1)] });
    const next = textOf(plan, { previous: textOf(was) });
    expect(changes(plan)).toHaveLength(1);
    expect(earlierOf(next).events.map(({ sequence }) => sequence)).toEqual([1, 0, 0]);
    expect(changes(plan, next)).toEqual([]);
  });
});

describe("reminders", () => {
  const calendar = { group: "round", color: "teal", refreshHours: 12 } as const;
  const reminding = (minutes: readonly number[], summaryFrom = aRound()) =>
    aPlan({
      rounds: [summaryFrom],
      garden: { calendar: { ...calendar, remindersMinBefore: minutes } },
    });
  const properties = (before: Plan, after: Plan) =>
    changes(after, textOf(before)).flatMap((change) =>
      "properties" in change ? change.properties : [],
    );

  it("that differ are named once, and not as a change of the details", () => {
    expect(properties(reminding([30]), reminding([60, 30]))).toEqual(["VALARM"]);
    expect(properties(reminding([30]), reminding([]))).toEqual(["VALARM"]);
  });

  it("are no change of their own where only the summary that they repeat differs", () => {
    const given = aRound({ beds: stronger });
    expect(properties(reminding([30]), reminding([30], given))).toEqual(["SUMMARY", "DESCRIPTION"]);
  });
});
