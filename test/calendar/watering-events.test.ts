import { describe, expect, it } from "vitest";
import { planEvents } from "../../src/calendar/plan-events.js";
import { day } from "../../src/dates.js";
import cssColors from "../../src/compiled/css-colors.js";
import type { PlanGarden } from "../../src/season/season-plan.js";
import type { PlanWatering } from "../../src/season/water-side.js";
import { aPlan } from "../support/a-plan.js";

const [tuesday, friday] = [day("2027-06-08"), day("2027-06-11")];

function aBed(bedName: string, ...liters: [number, number?]): PlanWatering {
  const days = liters.flatMap((waterL = 0, i) =>
    waterL === 0 ? [] : [{ day: i === 0 ? tuesday : friday, waterL }],
  );
  const leftL = days.reduce((sum, { waterL }) => sum + waterL, 0);
  const week = { waterL: leftL + 12, roundL: 12, leftL, usualL: 80 };
  return {
    bed: bedName.toLowerCase(),
    bedName,
    by: "weather",
    weeks: [{ from: day("2027-06-07"), to: day("2027-06-13"), ...week }],
    days,
    unknown: [],
  };
}

const beds = [aBed("South", 30.4, 30.4), aBed("Glass", 0, 54)];
const wishes = { remindersMinBefore: [-420] };

function eventsOf(
  watering: readonly PlanWatering[],
  garden: Partial<PlanGarden> = {},
  today = "2027-01-01",
) {
  return planEvents(
    aPlan({ rounds: [], watering, today: day(today), garden: { watering: wishes, ...garden } }),
  );
}

describe("watering days", () => {
  it("are one event a day, with the beds of that day by falling amounts", () => {
    const events = eventsOf(beds);
    expect(events.map(({ key, summary }) => [key, summary])).toEqual([
      ["watering//2027-06-08", "Water 30 L: South"],
      ["watering//2027-06-11", "Water 85 L: Glass, South"],
    ]);
    expect(events[1]?.description).toEqual([
      "Glass: 55 L of this week's 67 L, 12 L of it in the rounds",
      "South: 30 L of this week's 72 L, 12 L of it in the rounds",
    ]);
  });

  it("stand in no calendar that does not wish for them", () => {
    expect(planEvents(aPlan({ rounds: [], watering: beds }))).toEqual([]);
  });

  it("are told from today on", () => {
    expect(eventsOf(beds, {}, "2027-06-09").map(({ day: on }) => on)).toEqual([friday]);
  });

  it("have reminders, a time and a category of their own", () => {
    const allDay = eventsOf(beds)[0];
    expect(allDay).toMatchObject({ remindersMinBefore: [-420], categories: ["Watering"] });
    expect(allDay?.time).toBeUndefined();
    const watering = { timeOfDay: "07:00", remindersMinBefore: [30] };
    expect(eventsOf(beds, { timeOfDay: "18:30", watering })[0]).toMatchObject({
      time: { timeOfDay: "07:00", timezone: "Europe/Dublin" },
      remindersMinBefore: [30],
    });
  });

  it("are never of the feedings' colour, and of one that RFC 7986 section 5.9 knows", () => {
    for (const color of ["steelblue", "teal", "seagreen"]) {
      const calendar = { group: "round", remindersMinBefore: [], color, refreshHours: 12 } as const;
      const own = eventsOf(beds, { calendar })[0]?.color ?? "";
      expect(own).not.toBe(color);
      expect(cssColors().names).toContain(own);
    }
  });

  it("are told in gallons to a US grower", () => {
    const [, both] = eventsOf(beds, { amounts: "us" });
    expect(both?.summary).toBe("Water 22 gal: Glass, South");
    expect(both?.description.join("\n")).not.toMatch(/\d L\b/);
  });

  it("are none where a week leaves less than a can can measure", () => {
    expect(eventsOf([aBed("South", 0.2, 0.2)])).toEqual([]);
    expect(eventsOf([aBed("South", 0.3, 0.3)])).toHaveLength(2);
  });
});
