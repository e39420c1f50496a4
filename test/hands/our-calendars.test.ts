/** What other programs read in our calendars is what the plan says: every event, its day, time and title. */
import { readFileSync } from "node:fs";
import { Temporal } from "@js-temporal/polyfill";
import { describe, expect, it } from "vitest";
import { type CalendarEvent } from "../../src/calendar/calendar-event.js";
import { planEvents } from "../../src/calendar/plan-events.js";
import { addDays } from "../../src/dates.js";
import type { Plan } from "../../src/season/season-plan.js";
import { cli, examplePath, examples } from "../support/run-cli.js";
import { type EventRead, inOrder, readers } from "./readers.js";

async function printed(...argv: readonly string[]): Promise<string> {
  const { code, stdout, stderr } = await cli(argv);
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return stdout;
}

function said({ uid, day, time, summary }: CalendarEvent): EventRead {
  if (time === undefined) return { uid, start: day, end: addDays(day, 1), title: summary };
  const { timeOfDay, timezone, durationMin } = time;
  const start = Temporal.ZonedDateTime.from(`${day}T${timeOfDay}[${timezone}]`);
  const [from, to] = [start, start.add({ minutes: durationMin })].map(
    ({ epochMilliseconds }) => epochMilliseconds / 1000,
  );
  return { uid, start: from ?? NaN, end: to ?? NaN, title: summary };
}

const gardens = [
  ...examples.map((name) => ({ name, options: [] })),
  { name: "mid-season", options: ["--today", "2027-07-05"] },
];

const calendars = await Promise.all(
  gardens.map(async ({ name, options }) => {
    const garden = [examplePath(name), ...options];
    const plan = JSON.parse(await printed("plan", "--json", ...garden)) as Plan;
    const events = inOrder(planEvents(plan).map(said));
    return { name, events, text: await printed("calendar", ...garden) };
  }),
);

function golden(name: string): string {
  return readFileSync(new URL(`../golden/${name}.ics`, import.meta.url), "utf8");
}

describe.each(readers)("$name", ({ there, read }) => {
  it.skipIf(!there).each(calendars)("reads the calendar of $name", ({ text, events }) => {
    expect(events.length).toBeGreaterThan(10);
    expect(inOrder(read(text))).toEqual(events);
  });

  it.skipIf(!there).each(examples)("reads the golden calendar of %s", (example) => {
    const events = calendars.find(({ name }) => name === example)?.events;
    expect(inOrder(read(golden(example)))).toEqual(events);
  });
});
