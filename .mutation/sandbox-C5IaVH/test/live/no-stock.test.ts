/** What there was nothing to pour for was not given; and a calendar that is behind is told of. */
// @ts-nocheck

import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { gatePlot, keptGarden } from "./a-kept-garden.js";

const shelf = gatePlot.replace("days: [sat, sun]", "days: [sat]");

test("a round that was published without stock counts as not given, and is due again", async () => {
  const garden = keptGarden(shelf);
  await garden.publish("2027-03-01");
  const before = await garden.days("2027-05-20", "toms");
  // Shells out four days late: the batch is bottled after its first round.
  await garden.run("2027-05-22", "log", "--batch", "1", "--step", "shells-out");
  await garden.publish("2027-05-22");
  const [first] = before.ahead;
  expect(first).toBe("2027-05-22");
  const after = await garden.days("2027-05-24", "toms");
  expect(after.given).toEqual([]);
  expect(after.ahead[0]).toBe("2027-05-29");
});

test("nor is one given whose bottle was not there yet, though the calendar said so", async () => {
  const garden = keptGarden(shelf);
  await garden.publish("2027-03-01");
  await garden.run("2027-05-22", "log", "--batch", "1", "--step", "shells-out");
  // The calendar was not written again.
  const { given, ahead } = await garden.days("2027-05-24", "toms");
  expect(given).toEqual([]);
  expect(ahead[0]).toBe("2027-05-29");
});

test("a bottle that broke before gave nothing", async () => {
  const garden = keptGarden(shelf);
  await garden.publish("2027-03-01");
  expect((await garden.days("2027-06-07", "toms")).given).toEqual(["2027-05-22", "2027-06-05"]);
  await garden.run(
    "2027-06-07",
    "log",
    "--batch",
    "1",
    "--step",
    "thrown-away",
    "--on",
    "2027-05-30",
  );
  expect((await garden.days("2027-06-07", "toms")).given).toEqual(["2027-05-22"]);
});

test("plan, check and log say that the calendar is behind the garden file", async () => {
  const garden = keptGarden(shelf);
  await garden.publish("2027-03-01");
  expect((await garden.run("2027-05-10", "plan")).stderr).toBe("");
  garden.edit("days: [sat]", "days: [wed]");
  for (const command of ["plan", "check"])
    expect((await garden.run("2027-05-10", command)).stderr).toContain("write it again");
  const logged = await garden.run("2027-05-24", "log", "--missed", "--on", "2027-05-22");
  expect(logged.stderr).toContain("write it again");
  await garden.publish("2027-05-24");
  expect((await garden.run("2027-05-24", "plan")).stderr).toBe("");
});

test("a calendar of which only the line ends were changed tells what it told", async () => {
  const garden = keptGarden(shelf);
  const text = await garden.publish("2027-03-01");
  writeFileSync(garden.calendar, text.replace(/\r\n/g, "\n"));
  const { stderr } = await garden.run("2027-06-07", "plan");
  expect(stderr).toBe("");
  expect((await garden.days("2027-06-07", "toms")).given).toEqual(["2027-05-22", "2027-06-05"]);
  await garden.publish("2027-06-07");
  expect(readFileSync(garden.calendar, "utf8")).toBe(text);
});
