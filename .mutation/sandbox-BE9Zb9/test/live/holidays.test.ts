/** A feeding that time away takes: told while the grower is still there to do something about it. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { gardenText } from "../support/a-garden.js";
import { eventsIn } from "../support/ics.js";
import { cli } from "../support/run-cli.js";

const away = { from: "2027-06-14", to: "2027-06-30" };

interface Told {
  readonly day: string;
  readonly categories: string;
  readonly description: string;
  readonly alarms: number;
}

/** The entries that tell of the feeding that is late. */
async function told(feeding: object): Promise<Told[]> {
  const stdin = gardenText({ feeding });
  const { code, stdout } = await cli(["calendar", "-"], { stdin });
  expect(code).toBe(0);
  return eventsIn(stdout)
    .map(({ component, startDate, description }) => ({
      day: startDate.toString().slice(0, 10),
      categories: String(component.getFirstPropertyValue("categories")),
      description,
      alarms: component.getAllSubcomponents("valarm").length,
    }))
    .filter(({ description }) => description.includes("Warning: toms"));
}

describe.each([
  ["an all-day garden", {}],
  ["a garden that feeds at half past six", { time: "18:30" }],
])("in %s a feeding that a holiday takes", (_, time) => {
  test("is told on the last feeding day before, with an alarm, and what to do", async () => {
    const [entry, ...others] = await told({ days: ["wed", "sat"], away: [away], ...time });
    expect(others).toEqual([]);
    expect(entry).toMatchObject({ day: "2027-06-12", categories: "Garden notice", alarms: 1 });
    expect(entry?.description).toContain("you are away from Mon 14 Jun to Wed 30 Jun");
    expect(entry?.description).toContain(
      "What helps: have someone feed it from Thu 17 Jun to Sun 27 Jun",
    );
  });

  test("is told in the entry of that day's feeding, where there is one", async () => {
    const later = { from: "2027-07-01", to: "2027-07-20" };
    const [entry, ...others] = await told({ days: ["wed", "sat"], away: [later], ...time });
    expect(others).toEqual([]);
    expect(entry).toMatchObject({ categories: "Feeding", alarms: 1 });
    expect(entry && entry.day < later.from).toBe(true);
    expect(entry?.description).toContain("or feed it as late as you can before you leave");
  });
});

test("a garden without reminders has none for a holiday either", async () => {
  const stdin = gardenText({
    feeding: { days: ["wed", "sat"], time: "18:30", away: [away] },
    calendar: { reminders: [] },
  });
  expect((await cli(["calendar", "-"], { stdin })).stdout).not.toContain("VALARM");
});

test("a window whose first days are before the holiday can be served on one of them", async () => {
  const [entry] = await told({ days: ["sat"], away: [{ from: "2027-06-19", to: "2027-06-27" }] });
  expect(entry).toMatchObject({ day: "2027-06-12", alarms: 1 });
  expect(entry?.description).toContain("feed it from Thu 17 Jun to Fri 18 Jun, before you leave");
});
