/** A garden that names its calendar has one state, whoever publishes it. */
// @ts-nocheck

import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { cli, scratchFolder } from "../support/run-cli.js";
import { gatePlot, keptGarden } from "./a-kept-garden.js";

const record = (calendar: string): string[] =>
  calendar.replace(/\r\n[ \t]/g, "").match(/^X-FEEDROUND-(ROUND|BATCH):.*$/gm) ?? [];

async function publishTo(folder: string, garden: string, today: string): Promise<string> {
  const now = `${today}T08:00:00Z`;
  const told = await cli(["publish", folder, garden], { today, now });
  expect(told).toMatchObject({ code: 0 });
  return readFileSync(join(folder, "garden.ics"), "utf8");
}

test("publish writes the calendar that the garden names, and goes on from it", async () => {
  const garden = keptGarden(gatePlot);
  const folder = join(scratchFolder(), "public");
  const first = await publishTo(folder, garden.file, "2027-03-01");
  expect(readFileSync(garden.calendar, "utf8")).toBe(first);
  // Written by hand in between.
  garden.edit("days: [sat, sun]", "days: [wed]");
  const second = await garden.publish("2027-07-04", "--for", "subscription");
  expect(record(second)).not.toEqual(record(first));
  expect(await publishTo(folder, garden.file, "2027-07-04")).toBe(second);
});

test("a calendar beside the one that the garden names is a copy", async () => {
  const garden = keptGarden(gatePlot);
  const own = await garden.publish("2027-03-01");
  const copy = join(scratchFolder(), "copy.ics");
  expect(await garden.run("2027-03-02", "calendar", "--out", copy)).toMatchObject({ code: 0 });
  expect(record(readFileSync(copy, "utf8"))).toEqual([]);
  expect(readFileSync(garden.calendar, "utf8")).toBe(own);
});

test("publish refuses a damaged calendar, which stays as it is", async () => {
  const garden = keptGarden(gatePlot);
  writeFileSync(garden.calendar, "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n");
  const folder = join(scratchFolder(), "public");
  const { code, stderr } = await cli(["publish", folder, garden.file]);
  expect(code).toBe(1);
  expect(stderr).toContain("gate.ics");
  expect(readFileSync(garden.calendar, "utf8")).toBe("BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n");
  expect(existsSync(join(folder, "garden.ics"))).toBe(false);
});
