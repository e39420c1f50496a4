// @ts-nocheck
import { describe, expect, it } from "vitest";
import { planEvents } from "../../src/calendar/plan-events.js";
import { day } from "../../src/dates.js";
import type { CalendarWishes } from "../../src/garden/garden.js";
import type { PlanGarden } from "../../src/season/season-plan.js";
import type { SeasonStock } from "../../src/season/stock-side.js";
import { aPlan } from "../support/a-plan.js";
import { aBatch, aDiscard, aRecipe, aSeasonStock } from "../support/a-stock.js";

const calendar: CalendarWishes = {
  group: "round",
  remindersMinBefore: [-480],
  color: "teal",
  refreshHours: 12,
};

function eventsOf(stock: SeasonStock, garden: Partial<PlanGarden> = {}) {
  return planEvents(aPlan({ rounds: [], stock, garden: { calendar, ...garden } }));
}

describe("a batch to make", () => {
  const events = eventsOf(aSeasonStock({ batches: [aBatch("2027-06-12")] }));
  const [dry, acid, strain] = events;

  it("has an event for each visit, on its day", () => {
    expect(events.map(({ key }) => key)).toEqual([
      "making/dry-shells/2027-06-08",
      "making/add-acid/2027-06-10",
      "making/strain/2027-06-12",
    ]);
  });

  it("says in the title what to do, and first in the text how much of everything", () => {
    expect(events.map(({ summary }) => summary)).toEqual([
      "Stock: boil shells, 1 L",
      "Stock: acid in, 1 L",
      "Stock: strain, 1 L",
    ]);
    expect(events.map(({ description }) => description[0])).toEqual([
      "Boil 12 eggshells and set them out to dry, for 1 L of stock",
      "Start 1 L of stock: 62 g of shell, 58 g of citric acid, 1.01 L of water",
      "Strain and bottle 1 L of stock: 2 bottles, use by 10 September 2027",
    ]);
  });

  it("tells each step of the recipe at the visit it belongs to, with its own cautions", () => {
    const steps = events.map(({ description }) =>
      description.flatMap((line) => /^- do (.*)/.exec(line)?.[1] ?? []),
    );
    const cautions = events.map(({ description }) =>
      description.flatMap((line) => /^Mind: mind (.*)/.exec(line)?.[1] ?? []),
    );
    expect(steps).toEqual([
      ["dry-shells"],
      ["grind", "mix", "wait"],
      ["check", "strain", "store", "use"],
    ]);
    expect(cautions).toEqual(steps);
  });

  it("names the days to come, and what goes on the label", () => {
    expect(dry?.description).toContain("- Add the acid on Thu 10 Jun, strain on Sat 12 Jun.");
    expect(acid?.description).toContain("- Strain and bottle it on Sat 12 Jun.");
    expect(strain?.description).toContain(
      "- On the label: Batch 12 Jun, use by 10 September 2027. It is poured from Sat 12 Jun to Sat 26 Jun.",
    );
  });

  it("is in categories of its own", () => {
    expect(new Set(events.flatMap(({ categories }) => categories))).toEqual(new Set(["Making"]));
  });

  it("tells vinegar in place of acid and water", () => {
    const { batch, vesselL, steps } = aRecipe();
    const recipes = [{ batch, vesselL, steps, vinegarMl: 1400, waterMl: 0 }];
    const stock = aSeasonStock({ batches: [aBatch("2027-06-12")] }, { acid: "vinegar", recipes });
    expect(eventsOf(stock)[1]?.description[0]).toBe(
      "Start 1 L of stock: 62 g of shell, 1.4 L of vinegar",
    );
  });
});

describe("batches made together", () => {
  const second = aBatch("2027-06-12", { id: "batch-2027-06-12-2", volumeMl: 500, eggs: 6 });
  const events = eventsOf(aSeasonStock({ batches: [aBatch("2027-06-12"), second] }));

  it("share the event of each step, with amounts in all and each batch by itself", () => {
    expect(events).toHaveLength(3);
    expect(events[0]?.summary).toBe("Stock: boil shells, 1.5 L");
    expect(events[0]?.description[0]).toBe(
      "Boil 18 eggshells and set them out to dry, for 2 batches, 1.5 L",
    );
    expect(events[0]?.description).toContain("Batch 12 Jun (1 L):");
    expect(events[0]?.description).toContain("Batch 12 Jun (2) (500 mL):");
  });

  it("tell a caution once", () => {
    const cautions = events[1]?.description.filter((line) => line.startsWith("Mind:"));
    expect(cautions).toEqual(["Mind: mind grind", "Mind: mind mix", "Mind: mind wait"]);
  });

  it("each have an event where only their days differ", () => {
    const apart = aSeasonStock({ batches: [aBatch("2027-06-12"), aBatch("2027-06-14")] });
    expect(eventsOf(apart).map(({ key }) => key)).toEqual([
      "making/dry-shells/2027-06-08",
      "making/add-acid/2027-06-10",
      "making/dry-shells/2027-06-10",
      "making/add-acid/2027-06-12",
      "making/strain/2027-06-12",
      "making/strain/2027-06-14",
    ]);
  });
});

describe("events of making", () => {
  const stock = aSeasonStock({
    batches: [aBatch("2027-06-12")],
    discards: [aDiscard("2027-09-10")],
  });
  const reminders = (garden: Partial<PlanGarden>) =>
    new Set(eventsOf(stock, garden).map((event) => event.remindersMinBefore.join()));

  it("last all day even where feedings have a time", () => {
    expect(eventsOf(stock, { timeOfDay: "18:30" }).every(({ time }) => time === undefined)).toBe(
      true,
    );
  });

  it("remind as the grower wishes in an all-day garden", () => {
    const wishes = { ...calendar, remindersMinBefore: [360, -600] };
    expect(reminders({ calendar: wishes })).toEqual(new Set(["360,-600"]));
  });

  it("remind at 08:00 where the garden's reminders count from its time of day", () => {
    const wishes = { ...calendar, remindersMinBefore: [30] };
    expect(reminders({ calendar: wishes, timeOfDay: "18:30" })).toEqual(new Set(["-480"]));
  });

  it("do not remind where the grower wants no reminders", () => {
    const wishes = { ...calendar, remindersMinBefore: [] };
    expect(reminders({ calendar: wishes, timeOfDay: "18:30" })).toEqual(new Set([""]));
  });
});

describe("stock to use up", () => {
  it("has an event on its last day", () => {
    const [event] = eventsOf(aSeasonStock({ discards: [aDiscard("2027-09-10")] }));
    expect(event).toMatchObject({
      key: "use-up//2027-09-10",
      summary: "Stock: use up 145 mL",
      categories: ["Making", "Use up"],
    });
    expect(event?.description[0]).toBe(
      "Batch B1: 145 mL left; Fri 10 Sep is its last day. Use it up, or throw it away.",
    );
  });

  it("is thrown away on the first day back where the grower was not there", () => {
    const discards = [aDiscard("2027-07-15", { doOn: day("2027-07-25") })];
    const [event] = eventsOf(aSeasonStock({ discards }));
    expect(event).toMatchObject({ day: "2027-07-25", summary: "Stock: bin 145 mL" });
    expect(event?.description[0]).toMatch(/its last day was Thu 15 Jul, so throw it away/);
  });

  it("shares an event with other bottles of the day", () => {
    const discards = [aDiscard("2027-09-10"), aDiscard("2027-09-10", { batch: "B2", ml: 20 })];
    expect(eventsOf(aSeasonStock({ discards })).map(({ summary }) => summary)).toEqual([
      "Stock: use up 165 mL",
    ]);
  });
});

describe("saving shells", () => {
  const batches = [aBatch("2027-06-12"), aBatch("2027-09-01")];
  const saving = (shells: Partial<SeasonStock["making"]["shells"]>, more = {}) =>
    eventsOf(
      aSeasonStock({ batches, shells: { eggs: 24, shellG: 124, ...shells }, ...more }),
    ).filter(({ key }) => key.startsWith("making/save-shells/"));
  const unkept = {
    missingShells: 7,
    lostMl: 80,
    needs: ["n2"],
    message: "7 eggshells short",
    mend: "keep more",
  };
  const shortage = { ...unkept, neededFrom: day("2027-04-20") };

  it("has an event on the day it has to begin, with what the shells are for", () => {
    const [event] = saving({ saveFrom: day("2027-05-20") });
    expect(event).toMatchObject({
      day: "2027-05-20",
      summary: "Stock: keep 24 eggshells",
    });
    expect(event?.description.slice(0, 2)).toEqual([
      "Keep every eggshell from now on: 24 go into the stock",
      "- 12 eggshells by Tue 8 Jun for batch 12 Jun (1 L)",
    ]);
  });

  it("has none where shells in hand are enough", () => {
    expect(saving({})).toEqual([]);
  });

  it("tells of a shortage where shells are kept", () => {
    const [event] = saving({ saveFrom: day("2027-05-20"), shortage });
    expect(event?.summary).toBe("! Stock: keep eggshells, 7 short");
    expect(event?.description).toContain("Warning: 7 eggshells short");
    expect(event?.description).toContain("What helps: keep more");
  });

  it("tells of a shortage on the day saving had to begin, where nothing can be made", () => {
    const [event] = saving({ shortage });
    expect(event).toMatchObject({ day: "2027-04-20", summary: "! Stock: 7 eggshells short" });
  });

  it("tells of a shortage on the day of the first loss where no shells are kept", () => {
    const shortages = [
      {
        need: "n2",
        day: day("2027-06-26"),
        ml: 80,
        reason: "shells" as const,
        message: "m",
        mend: "",
      },
    ];
    expect(saving({ shortage: unkept }, { shortages })[0]?.day).toBe("2027-06-26");
  });
});
