// @ts-nocheck
import { describe, expect, it } from "vitest";
import { planEvents } from "../../src/calendar/plan-events.js";
import { day } from "../../src/dates.js";
import type { CalendarWishes } from "../../src/garden/garden.js";
import {
  aBedRound,
  aMix,
  anOtherFeed,
  aPlan,
  aPlantingInPlan,
  aRound,
  aWarning,
  roundsOn,
} from "../support/a-plan.js";
import { aSeasonStock } from "../support/a-stock.js";

const wishes: CalendarWishes = {
  group: "round",
  remindersMinBefore: [-480],
  color: "teal",
  refreshHours: 12,
};
const byBed = { calendar: { ...wishes, group: "bed" as const } };
const north = aBedRound({ bed: "north", bedName: "North bed" });
const plantings = [
  aPlantingInPlan(),
  aPlantingInPlan({ id: "lett", bed: "north", bedName: "North bed" }),
];
const twoBeds = aRound({ beds: [aBedRound(), north] });

describe("events of a plan", () => {
  it("are one a round", () => {
    const events = planEvents(aPlan({ rounds: [twoBeds, aRound({ day: day("2027-06-19") })] }));
    expect(events.map((event) => [event.kind, event.key])).toEqual([
      ["feeding", "feeding//2027-06-12"],
      ["feeding", "feeding//2027-06-19"],
    ]);
  });

  it("are one a bed when the grower wishes so", () => {
    const events = planEvents(aPlan({ rounds: [twoBeds], garden: byBed }));
    expect(events.map(({ key, summary }) => [key, summary.split(": ")[1]])).toEqual([
      ["feeding/north/2027-06-12", "North bed"],
      ["feeding/south/2027-06-12", "South bed"],
    ]);
    expect(events[0]?.description.join()).toContain("North bed: ");
    expect(events[0]?.description.join()).not.toContain("South bed: ");
  });

  it("carry time, length and zone of the garden, or none for all day", () => {
    const [timed] = planEvents(aPlan({ rounds: [aRound({ timeOfDay: "18:30" })] }));
    expect(timed?.time).toEqual({ timeOfDay: "18:30", timezone: "Europe/Dublin", durationMin: 45 });
    expect(planEvents(aPlan())[0]).not.toHaveProperty("time");
  });

  it("carry the grower's colour and reminders, and categories by route", () => {
    const mixes = [aMix(), aMix({ route: "foliar" })];
    const rounds = [aRound({ beds: [aBedRound({ mixes })] })];
    const [event] = planEvents(aPlan({ rounds, garden: { calendar: wishes } }));
    expect(event).toMatchObject({
      color: "teal",
      remindersMinBefore: [-480],
      categories: ["Feeding", "Soil drench", "Leaf spray"],
    });
  });

  it("come by day whatever the order of the rounds", () => {
    const rounds = roundsOn(["2027-07-01", "2027-06-01"]);
    expect(planEvents(aPlan({ rounds })).map((event) => event.day)).toEqual([
      "2027-06-01",
      "2027-07-01",
    ]);
  });

  it("have none when nothing is fed", () => {
    expect(planEvents(aPlan({ rounds: [] }))).toEqual([]);
  });
});

describe("UIDs of events", () => {
  const uids = (plan: Parameters<typeof aPlan>[0]) => planEvents(aPlan(plan)).map(({ uid }) => uid);

  it("are version 5 UUIDs and say nothing of the garden", () => {
    expect(uids({})[0]).toMatch(
      /^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
    );
  });

  it("stay when other plantings come or go, amounts change, or the garden is renamed", () => {
    const [before] = uids({});
    expect(uids({ rounds: [twoBeds], garden: { name: "Mill House" } })[0]).toBe(before);
    expect(uids({ rounds: [aRound({ timeOfDay: "07:00" })], plantings })[0]).toBe(before);
    expect(uids({ rounds: roundsOn(["2027-05-01", "2027-06-12"]) })[1]).toBe(before);
  });

  it("differ between days, beds, kinds and gardens", () => {
    const all = [
      ...uids({ rounds: roundsOn(["2027-06-12", "2027-06-13"]) }),
      ...uids({ rounds: [twoBeds], garden: byBed }),
      ...uids({ rounds: [], warnings: [aWarning({ day: day("2027-06-12") })] }),
      ...uids({ garden: { id: "mill-house" } }),
    ];
    expect(new Set(all).size).toBe(all.length);
  });
});

describe("warnings in the calendar", () => {
  const onTheDay = aWarning({
    day: day("2027-06-12"),
    planting: "lett",
    message: "lettuce is late",
  });

  it("stand in the round of their day, whoever it feeds", () => {
    const events = planEvents(aPlan({ plantings, warnings: [onTheDay] }));
    expect(events).toHaveLength(1);
    expect(events[0]?.description).toContain("Warning: lettuce is late");
  });

  it("stand only in the event of their own bed when events are one a bed", () => {
    const events = planEvents(
      aPlan({ rounds: [twoBeds], plantings, warnings: [onTheDay], garden: byBed }),
    );
    const telling = events.filter(({ description }) =>
      description.includes("Warning: lettuce is late"),
    );
    expect(telling.map(({ key }) => key)).toEqual(["feeding/north/2027-06-12"]);
  });

  it("that concern the whole garden stand in every bed's event", () => {
    const warnings = [aWarning({ day: day("2027-06-12") })];
    const events = planEvents(aPlan({ rounds: [twoBeds], warnings, garden: byBed }));
    expect(events.every(({ description }) => description.includes("Warning: toms go unfed"))).toBe(
      true,
    );
    expect(events).toHaveLength(2);
  });

  it("get an event of their own on a day without a round", () => {
    const warnings = [aWarning({ day: day("2027-07-15"), planting: "toms" })];
    expect(planEvents(aPlan({ warnings }))[1]).toMatchObject({
      kind: "notice",
      key: "notice/window-missed/toms/2027-07-15",
      day: "2027-07-15",
      summary: "! Garden warning, toms",
      description: ["Warning: toms go unfed", "What helps: feed by hand"],
      categories: ["Garden notice"],
    });
  });

  it("get an event of their own when their bed is not fed that day and events are one a bed", () => {
    const events = planEvents(aPlan({ plantings, warnings: [onTheDay], garden: byBed }));
    expect(events.map(({ kind }) => kind)).toEqual(["feeding", "notice"]);
  });

  it("of one day, code and planting share an event", () => {
    const warning = aWarning({ day: day("2027-07-15"), planting: "toms" });
    const events = planEvents(
      aPlan({ rounds: [], warnings: [warning, { ...warning, message: "twice" }] }),
    );
    expect(events.map(({ description }) => description.length)).toEqual([4]);
  });

  it("remind as all-day entries do: in the morning where the garden has its own time", () => {
    const rest = { rounds: [], warnings: [aWarning({ day: day("2027-07-15") })] };
    const reminders = (garden: object) =>
      planEvents(aPlan({ ...rest, garden: { calendar: wishes, ...garden } }))[0]
        ?.remindersMinBefore;
    expect(reminders({})).toEqual([-480]);
    expect(reminders({ timeOfDay: "18:30" })).toEqual([-480]);
  });

  it("without a day are left to the plan", () => {
    expect(planEvents(aPlan({ rounds: [], warnings: [aWarning()] }))).toEqual([]);
  });
});

describe("other feeds", () => {
  const feeds = [anOtherFeed(), anOtherFeed({ bed: "north", bedName: "North bed" })];

  it("stand in the round of their day", () => {
    const events = planEvents(aPlan({ rounds: [aRound({ feeds: feeds.slice(0, 1) })] }));
    expect(events).toHaveLength(1);
    expect(events[0]?.summary).toBe("Feed 3 cans, 56 mL + other feed: toms");
    expect(events[0]?.categories).toEqual(["Feeding", "Soil drench", "Other feed"]);
  });

  it("have an event of their own on a day without calcium", () => {
    const events = planEvents(aPlan({ rounds: [aRound({ beds: [], feeds, timeOfDay: "07:00" })] }));
    expect(events).toMatchObject([
      {
        kind: "feed",
        key: "feed//2027-06-12",
        summary: "Feed 2 cans, 1.8 L: comfrey tea",
        categories: ["Other feed"],
        time: { timeOfDay: "07:00" },
      },
    ]);
  });

  it("stand with the calcium of their own bed when events are one a bed", () => {
    const events = planEvents(aPlan({ rounds: [aRound({ feeds })], garden: byBed }));
    expect(events.map(({ key, summary }) => [key, summary])).toEqual([
      ["feed/north/2027-06-12", "Feed 1 can, 900 mL: comfrey tea, …"],
      ["feeding/south/2027-06-12", "Feed 3 cans, 56 mL + other feed"],
    ]);
  });
});

describe("a round that the log holds", () => {
  const events = planEvents(
    aPlan({ rounds: [aRound({ given: true })], garden: { calendar: wishes } }),
  );

  it("is kept, and says that it was given", () => {
    expect(events.map(({ key }) => key)).toEqual(["feeding//2027-06-12"]);
    expect(events[0]?.summary).toBe("Given 3 cans, 56 mL: toms");
    expect(events[0]?.description[0]).toMatch(/^Given/);
  });

  it("reminds of nothing", () => {
    expect(events[0]?.remindersMinBefore).toEqual([]);
  });
});

describe("bottles", () => {
  const pouring = (batch: string) =>
    aBedRound({ mixes: [aMix({ pours: [{ batch, ml: 56, strengthGPerL: 17 }] })] });
  const change = { need: "n", day: day("2027-06-12"), to: "B2", strengthGPerL: 12 };
  const draw = {
    need: "m",
    day: day("2027-06-05"),
    batch: "B1",
    ml: 20,
    strengthGPerL: 17,
    calciumMg: 340,
  };

  it("that are new show in the description, with their strength and the one before", () => {
    const stock = aSeasonStock({
      changes: [{ ...change, from: "B1", wasGPerL: 17 }],
      draws: [draw],
    });
    const [event] = planEvents(aPlan({ rounds: [aRound({ beds: [pouring("B2")] })], stock }));
    expect(event?.description[0]).toBe("56 mL from batch B2 (new bottle), 3 cans");
    expect(event?.description).toContain(
      "New bottle: batch B2, 12 g of calcium to the litre, 17 g in the one before: mL differ",
    );
  });

  it("show no change at the first of all", () => {
    const stock = aSeasonStock({ changes: [change] });
    const [event] = planEvents(aPlan({ rounds: [aRound({ beds: [pouring("B2")] })], stock }));
    expect(event?.description.join()).not.toMatch(/new bottle/i);
  });

  it("show a change only in the bed that pours from the new one", () => {
    const stock = aSeasonStock({ changes: [{ ...change, from: "B1" }], draws: [draw] });
    const beds = [{ ...pouring("B1"), bed: "north", bedName: "North bed" }, pouring("B2")];
    const events = planEvents(aPlan({ rounds: [aRound({ beds })], stock, garden: byBed }));
    expect(events.map(({ description }) => description[0]?.includes("(new bottle)"))).toEqual([
      false,
      true,
    ]);
  });

  it("that do not reach mark the title, and show in the first line", () => {
    const rounds = [aRound({ beds: [aBedRound({ mixes: [aMix({ shortMl: 30 })] })] })];
    const [event] = planEvents(aPlan({ rounds }));
    expect(event?.summary).toBe("! Feed 3 cans, 56 mL: toms");
    expect(event?.description[0]).toMatch(/; too little stock: 30 mL missing$/);
  });

  it("that do not reach show in the entry of their bed alone", () => {
    const short = aBedRound({ mixes: [aMix({ shortMl: 30 })] });
    const beds = [aBedRound({ bed: "north", bedName: "North bed" }), short];
    const warnings = [aWarning({ code: "stock-short-away", day: day("2027-06-12") })];
    const events = planEvents(aPlan({ rounds: [aRound({ beds })], warnings, garden: byBed }));
    for (const { summary, description } of events) {
      const isShort = summary.includes("South bed");
      expect(summary.startsWith("! ")).toBe(isShort);
      expect(description.some((line) => line.startsWith("Warning: "))).toBe(isShort);
    }
  });

  it("are shaken or poured clear, as the garden does", () => {
    const stock = aSeasonStock({}, { pour: "clear" });
    expect(planEvents(aPlan({ stock }))[0]?.description.join("\n")).toMatch(/Do not shake/);
  });
});

describe("notes", () => {
  const note = {
    code: "sign" as const,
    sign: "blossom-end rot",
    planting: "toms",
    day: day("2027-06-12"),
    message: "toms: blossom-end rot seen",
    advice: ["water evenly"],
  };

  it("stand in the event of their day, with what to do first", () => {
    const [event] = planEvents(aPlan({ notes: [note] }));
    expect(event?.description).toContain("Note: toms: blossom-end rot seen");
    expect(event?.description).toContain("First: water evenly");
  });

  it("get an event of their own on another day", () => {
    const events = planEvents(aPlan({ rounds: [], notes: [{ ...note, day: day("2027-06-13") }] }));
    expect(events).toMatchObject([
      { key: "notice/sign/toms/2027-06-13", summary: "Look: blossom-end rot, toms" },
    ]);
  });

  it("show the sign in the title of their event, and all in the description", () => {
    const message = "toms: the rate rises to 2.5 mL. It passes. Mostly.";
    const [event] = planEvents(aPlan({ rounds: [], notes: [{ ...note, message }] }));
    expect(event?.summary).toBe("Look: blossom-end rot, toms");
    expect(event?.description).toContain(`Note: ${message}`);
  });
});
