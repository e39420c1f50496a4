/** A past entry says what it said, until the log says something else of it. */
// @ts-nocheck

import { writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { gatePlot, type KeptGarden, keptGarden } from "./a-kept-garden.js";

function entriesOf(calendar: string, day: string): string[] {
  return calendar
    .split("BEGIN:VEVENT")
    .filter((event) => new RegExp(`X-FEEDROUND-KEY:feed.*/${day}\r`).test(event));
}

function write(garden: KeptGarden, more: string): void {
  writeFileSync(garden.file, garden.text() + more);
}

const twoBeds = gatePlot.replace(
  "      - { id: cukes",
  "  - id: north\n    plantings:\n      - { id: cukes",
);
const eachBed = twoBeds.replace("{ file: gate.ics }", "{ file: gate.ics, group: bed }");

test("the past day of another feed stands as it was", async () => {
  const garden = keptGarden(gatePlot);
  write(garden, "feeds: [{ name: nettle, rate: 5 mL per L, days: [sat] }]\n");
  const before = await garden.publish("2027-04-20");
  const after = await garden.publish("2027-04-26");
  expect(entriesOf(before, "2027-04-24").join()).toContain("KEY:feed//");
  expect(after).toBe(before);
});

describe("an entry that the log has told of", () => {
  const entry = "log: [{ on: 2027-06-05, planting: cukes, stock: 9 mL }]\n";
  test.each([
    ["another amount of water", /(id: cukes.*)water: 2 L/, "$1water: 3 L"],
    ["another name", "id: cukes, crop", "id: cukes, name: Gherkins, crop"],
    ["another grouping", "file: gate.ics", "file: gate.ics, group: bed"],
  ])("stands after %s", async (_, from, to) => {
    const garden = keptGarden(gatePlot);
    await garden.publish("2027-03-01");
    write(garden, entry);
    const told = entriesOf(await garden.publish("2027-06-07"), "2027-06-05");
    expect(told.join()).toContain("SUMMARY:Given ");
    garden.edit(from, to);
    expect(entriesOf(await garden.publish("2027-06-09"), "2027-06-05")).toEqual(told);
  });

  test("of another day stays one entry for all beds where each has its own now", async () => {
    const garden = keptGarden(twoBeds);
    await garden.publish("2027-03-01");
    write(garden, "log: [{ on: 2027-06-03, planting: cukes, stock: 9 mL }]\n");
    const told = entriesOf(await garden.publish("2027-06-07"), "2027-06-03");
    garden.edit("file: gate.ics", "file: gate.ics, group: bed");
    expect(entriesOf(await garden.publish("2027-06-09"), "2027-06-03")).toEqual(told);
  });

  test("changes with what the log says of it", async () => {
    const garden = keptGarden(gatePlot);
    await garden.publish("2027-03-01");
    write(garden, entry);
    const told = entriesOf(await garden.publish("2027-06-07"), "2027-06-05");
    garden.edit("stock: 9 mL", "stock: 7 mL");
    const now = entriesOf(await garden.publish("2027-06-09"), "2027-06-05").join();
    expect(now).not.toBe(told.join());
    expect(now).toContain("7 mL of stock");
  });
});

test("what the log says of one bed leaves the entry of another as it was", async () => {
  const garden = keptGarden(eachBed);
  const before = await garden.publish("2027-03-01");
  write(garden, "log: [{ on: 2027-06-05, bed: north }]\n");
  const after = await garden.publish("2027-06-07");
  const of = (calendar: string, bed: string): string[] =>
    entriesOf(calendar, "2027-06-05").filter((event) => event.includes(`feeding/${bed}/`));
  expect(of(after, "south")).toEqual(of(before, "south"));
  expect(of(after, "north").join()).toContain("SUMMARY:Given ");
});

test("a published batch that the log names is known, though the file does not list it", async () => {
  const garden = keptGarden(gatePlot);
  await garden.publish("2027-03-01");
  const { published } = await garden.plan("2027-06-07");
  const id = published.batches[0]?.id ?? "";
  write(garden, `log: [{ on: 2027-06-05, planting: cukes, stock: 9 mL, batch: ${id} }]\n`);
  const { warnings } = await garden.plan("2027-06-07");
  expect(warnings.filter(({ code }) => code === "batch-unknown")).toEqual([]);
});

describe("written twice on a day, the calendar is the same", () => {
  const twice = async (garden: KeptGarden, today: string): Promise<void> => {
    const once = await garden.publish(today);
    expect(await garden.publish(today)).toBe(once);
  };

  test("after a feeding before its published day, which comes off the bottle both times", async () => {
    const garden = keptGarden(gatePlot);
    await garden.publish("2027-03-01");
    write(garden, "log: [{ on: 2027-06-03 }]\n");
    const before = (await garden.plan("2027-06-04")).stock?.inHand;
    await twice(garden, "2027-06-04");
    expect((await garden.plan("2027-06-04")).stock?.inHand).toEqual(before);
    await twice(garden, "2027-06-05");
    expect((await garden.plan("2027-06-06")).stock?.inHand).toEqual(before);
    expect((await garden.days("2027-06-04", "cukes")).given).toEqual(["2027-05-22", "2027-06-03"]);
  });

  test("where windows passed unserved and the round is today's", async () => {
    const garden = keptGarden(gatePlot.replace("beds:", "unlogged: not-given\nbeds:"));
    for (const today of ["2027-06-02", "2027-06-05", "2027-06-12", "2027-06-26"])
      await twice(garden, today);
  });

  test("where the days to come were all changed", async () => {
    const days = "days: [sat], away: [{ from: 2027-05-05, to: 2027-06-20 }]";
    const garden = keptGarden(gatePlot.replace("days: [sat, sun]", days));
    await garden.publish("2027-03-01");
    garden.edit("days: [sat]", "days: [wed]");
    await twice(garden, "2027-06-21");
  });
});
