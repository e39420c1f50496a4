/** What was published and is past happened so, until the garden file says otherwise. */
// @ts-nocheck

import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { day, daysBetween } from "../../src/dates.js";
import { examplePath } from "../support/run-cli.js";
import { gatePlot, type KeptGarden, keptGarden } from "./a-kept-garden.js";

/** Cucumbers that are picked for the last time in August, so that two weeks before that is the last feeding. */
const shortPlot = gatePlot.replace("id: cukes,", "id: cukes, picked_until: 2027-08-20,");
const cukesSpring = ["2027-05-22", "2027-06-05", "2027-06-19", "2027-07-03"];

function summaries(calendar: string): string[] {
  return calendar.split("\r\n").filter((line) => line.startsWith("SUMMARY:"));
}

function eventOf(calendar: string, key: string): string {
  return (
    calendar.split("BEGIN:VEVENT").find((event) => event.includes(`X-FEEDROUND-KEY:${key}\r\n`)) ??
    ""
  );
}

/** The first batch, and what a round of both plantings takes of it. */
async function firstBatch(garden: KeptGarden): Promise<{ volumeMl: number; roundMl: number }> {
  const { published } = await garden.plan("2027-03-01");
  return {
    volumeMl: published.batches[0]?.volumeMl ?? 0,
    roundMl: published.rounds[0]?.mixes[0]?.pours[0]?.ml ?? 0,
  };
}

test("an absence added in July moves no round of the past and feeds nothing too soon", async () => {
  const garden = keptGarden(shortPlot);
  const before = await garden.publish("2027-03-01");
  garden.edit(
    "days: [sat, sun] }",
    "days: [sat, sun], away: [{ from: 2027-07-11, to: 2027-07-19 }] }",
  );
  const after = await garden.publish("2027-07-04");
  for (const past of cukesSpring)
    expect(eventOf(after, `feeding//${past}`)).toBe(eventOf(before, `feeding//${past}`));
  const { given, ahead } = await garden.days("2027-07-04", "cukes");
  expect(given).toEqual(cukesSpring);
  expect(ahead).toEqual(["2027-07-24"]);
});

test("other feeding days change what is to come alone", async () => {
  const garden = keptGarden(gatePlot);
  await garden.publish("2027-03-01");
  garden.edit("days: [sat, sun]", "days: [wed]");
  await garden.publish("2027-07-04");
  const { given, ahead } = await garden.days("2027-07-04", "cukes");
  expect(given).toEqual(cukesSpring);
  expect(daysBetween(day(given.at(-1) ?? ""), day(ahead[0] ?? ""))).toBeGreaterThanOrEqual(10);
});

test("the first entry of a log erases no round that it does not tell of", async () => {
  const garden = keptGarden(gatePlot);
  await garden.publish("2027-03-01");
  const log =
    "log:\n  - { on: 2027-07-03, planting: cukes, stock: 12 mL, batch: batch-2027-06-19 }\n";
  writeFileSync(garden.file, garden.text() + log);
  expect((await garden.days("2027-07-05", "cukes")).given).toEqual(cukesSpring);
  expect((await garden.days("2027-07-05", "toms")).given).toEqual(cukesSpring);
  const { stdout } = await garden.run("2027-07-05", "check");
  expect(stdout).toMatch(/4 published rounds from Sat 22 May to Sat 3 Jul count\s+as given/);
});

test("a first export in July writes no round of May, and the next one adds none", async () => {
  const garden = keptGarden(gatePlot);
  const first = await garden.publish("2027-07-05");
  expect(first).not.toMatch(/X-FEEDROUND-KEY:feeding\/\/2027-0[56]/);
  expect(summaries(first).length).toBeGreaterThan(0);
  expect(await garden.publish("2027-07-06")).toBe(first);
});

test("who has fed this evening and edits the file is not sent to feed tomorrow", async () => {
  const garden = keptGarden(shortPlot);
  await garden.publish("2027-03-01");
  garden.edit("days: [sat, sun]", "days: [sun]");
  expect((await garden.days("2027-07-03", "cukes")).ahead).toEqual([
    "2027-07-03",
    "2027-07-18",
    "2027-08-01",
  ]);
});

test("a round of which all was missed is not given, and the entry says so on its UID", async () => {
  const garden = keptGarden(gatePlot);
  const before = await garden.publish("2027-03-01");
  writeFileSync(garden.file, `${garden.text()}log:\n  - { on: 2027-07-03, missed: true }\n`);
  const after = await garden.publish("2027-07-05");
  const uid = /UID:\S+/.exec(eventOf(before, "feeding//2027-07-03"))?.[0] ?? "none";
  const told = eventOf(after, "feeding//2027-07-03");
  expect(told).toContain(uid);
  expect(told).toContain("SUMMARY:Not given: ");
  const { given, ahead } = await garden.days("2027-07-05", "cukes");
  expect(given).toEqual(cukesSpring.slice(0, 3));
  expect(ahead[0]).toBe("2027-07-10");
  expect(await garden.publish("2027-07-06")).toBe(after);
});

test("a round that is missed today is not for this evening", async () => {
  const garden = keptGarden(gatePlot);
  await garden.publish("2027-03-01");
  writeFileSync(garden.file, `${garden.text()}log:\n  - { on: 2027-07-03, missed: true }\n`);
  expect((await garden.days("2027-07-03", "cukes")).ahead[0]).toBe("2027-07-04");
  const told = await garden.publish("2027-07-03");
  expect(eventOf(told, "feeding//2027-07-03")).toBe("");
  expect(await garden.publish("2027-07-03")).toBe(told);
});

test("a feeding of another day stands for the published one, on its entry", async () => {
  const garden = keptGarden(gatePlot);
  const before = await garden.publish("2027-03-01");
  const { volumeMl, roundMl } = await firstBatch(garden);
  const log = "log:\n  - { on: 2027-06-07, round: 2027-06-05 }\n";
  writeFileSync(garden.file, garden.text() + log);
  const after = await garden.publish("2027-06-08");
  const uid = /UID:\S+/.exec(eventOf(before, "feeding//2027-06-05"))?.[0] ?? "none";
  expect(eventOf(after, "feeding//2027-06-07")).toContain(uid);
  expect(eventOf(after, "feeding//2027-06-05")).toBe("");
  expect((await garden.days("2027-06-08", "cukes")).given).toEqual(["2027-05-22", "2027-06-07"]);
  // Amount and bottle are the published ones.
  const { stock } = await garden.plan("2027-06-08");
  expect(stock?.inHand?.[0]).toMatchObject({
    id: "batch-1",
    leftMl: volumeMl - 2 * roundMl,
  });
});

test("a late entry of what was published takes its own amount, not both", async () => {
  const garden = keptGarden(gatePlot);
  await garden.publish("2027-03-01");
  const { roundMl } = await firstBatch(garden);
  const { published } = await garden.plan("2027-03-01");
  const batch = published.batches.find(({ made }) => made === "2027-06-19")?.id ?? "none";
  const leftOn = async (): Promise<number | undefined> =>
    (await garden.plan("2027-07-06")).stock?.inHand?.find(({ id }) => id === batch)?.leftMl;
  const silent = await leftOn();
  writeFileSync(
    garden.file,
    `${garden.text()}log:\n  - { on: 2027-06-20, planting: toms, stock: 40 mL, batch: ${batch} }\n`,
  );
  expect(await leftOn()).toBeCloseTo((silent ?? 0) + (roundMl * 2) / 3 - 40, 1);
});

test("without `unlogged: not-given` silence is yes, with it no", async () => {
  const garden = keptGarden(`${gatePlot}unlogged: not-given\n`);
  await garden.publish("2027-03-01");
  const { given, ahead } = await garden.days("2027-06-10", "cukes");
  expect(given).toEqual([]);
  expect(ahead[0]).toBe("2027-06-12");
});

test("a deleted planting keeps its rounds in the calendar, and its stock stays poured", async () => {
  const garden = keptGarden(gatePlot);
  const before = await garden.publish("2027-03-01");
  const { volumeMl, roundMl } = await firstBatch(garden);
  garden.edit(/ +- \{ id: toms.*\n/, "");
  const after = await garden.publish("2027-06-08");
  for (const past of cukesSpring.slice(0, 2))
    expect(eventOf(after, `feeding//${past}`)).toBe(eventOf(before, `feeding//${past}`));
  const { stock } = await garden.plan("2027-06-08");
  expect(stock?.inHand?.[0]?.leftMl).toBeCloseTo(volumeMl - 2 * roundMl, 5);
});

test("a planting with a new id keeps its feedings, and this is told", async () => {
  const garden = keptGarden(shortPlot);
  await garden.publish("2027-03-01");
  garden.edit("id: cukes", "id: gherkins");
  const told = await garden.run("2027-07-05", "check");
  expect(told.stdout.replace(/\s+/g, " ")).toContain("gherkins is cukes with a new id");
  const due = await garden.days("2027-07-05", "gherkins");
  expect(due).toEqual({ given: cukesSpring, ahead: ["2027-07-17", "2027-07-31"] });
  await garden.publish("2027-07-05");
  expect(await garden.days("2027-07-05", "gherkins")).toEqual(due);
});

test("removed before, planted out after, away on a published day: it was not given", async () => {
  const day = "2027-06-08";
  for (const [from, to, planting, given] of [
    ["id: cukes,", "id: cukes, removed: 2027-06-04,", "cukes", ["2027-05-22"]],
    [
      "days: [sat, sun] }",
      "days: [sat, sun], away: [{ from: 2027-05-20, to: 2027-05-25 }] }",
      "toms",
      ["2027-06-05"],
    ],
  ] as const) {
    const garden = keptGarden(gatePlot);
    await garden.publish("2027-03-01");
    garden.edit(from, to);
    expect((await garden.days(day, planting)).given).toEqual(given);
  }
});

test("every command goes by the calendar that the file names", async () => {
  const garden = keptGarden(gatePlot);
  await garden.publish("2027-03-01");
  garden.edit(
    "transplanted: 2027-04-20, water: 2 L per plant }\n      - { id: cukes",
    "transplanted: 2027-04-27, water: 2 L per plant }\n      - { id: cukes",
  );
  const calendar = await garden.publish("2027-04-28");
  const standing = (text: string): string =>
    text
      .split("BEGIN:VEVENT")
      .filter((event) => !event.includes("STATUS:CANCELLED"))
      .join("");
  const inCalendar = [...standing(calendar).matchAll(/X-FEEDROUND-KEY:feeding\/\/(\S+)/g)]
    .map(([, d]) => d)
    .sort();
  const { rounds } = await garden.plan("2027-04-29");
  expect(rounds.map(({ day: on }) => on)).toEqual(inCalendar);
  const piped = await garden.run("2027-04-29", "calendar");
  expect(
    [...standing(piped.stdout).matchAll(/X-FEEDROUND-KEY:feeding\/\/(\S+)/g)]
      .map(([, d]) => d)
      .sort(),
  ).toEqual(inCalendar);
  expect(piped.stdout).not.toContain("X-FEEDROUND-ROUND");
  expect(readFileSync(garden.calendar, "utf8")).toBe(calendar);
});

test("a damaged calendar is told of where one reads, and refused where one writes", async () => {
  const garden = keptGarden(gatePlot);
  await garden.publish("2027-03-01");
  const whole = readFileSync(garden.calendar, "utf8");
  writeFileSync(garden.calendar, whole.slice(0, whole.length / 2));
  const read = await garden.run("2027-07-04", "plan");
  expect(read).toMatchObject({ code: 0 });
  expect(read.stderr).toContain("damaged");
  const written = await garden.run("2027-07-04", "calendar", "--out", garden.calendar);
  expect(written).toMatchObject({ code: 1 });
  expect(readFileSync(garden.calendar, "utf8")).toBe(whole.slice(0, whole.length / 2));
});

test("a calendar of an earlier version counts its past rounds, and says so", async () => {
  const garden = keptGarden(gatePlot);
  const whole = await garden.publish("2027-03-01");
  const record = /X-FEEDROUND-(ROUND|BATCH|FEED|SHELLS):.*\r\n(?:[ \t].*\r\n)*/g;
  writeFileSync(garden.calendar, whole.replace(record, ""));
  expect((await garden.days("2027-07-05", "cukes")).given).toEqual(cukesSpring);
  const { stdout } = await garden.run("2027-07-05", "check");
  expect(stdout).toMatch(/4 published rounds .*count\s+as given/s);
  const written = await garden.publish("2027-07-05");
  expect(written.match(/X-FEEDROUND-ROUND/g)?.length).toBeGreaterThanOrEqual(6);
});

test("a garden that is published nowhere plans as ever", async () => {
  const text = readFileSync(examplePath("back-garden"), "utf8");
  const garden = keptGarden(text);
  const plan = await garden.plan("2027-07-05");
  expect(plan.rounds[0]?.day).toBe("2027-05-12");
  expect(plan.rounds.some(({ given }) => given)).toBe(false);
});

test("why tells what was logged from what is taken as given", async () => {
  const garden = keptGarden(gatePlot);
  await garden.publish("2027-03-01");
  const log = "log:\n  - { on: 2027-07-03, planting: cukes, stock: 12 mL }\n";
  writeFileSync(garden.file, garden.text() + log);
  const why = async (on: string): Promise<string> =>
    (await garden.run("2027-07-05", "why", "cukes", on)).stdout;
  expect(await why("2027-07-03")).toContain("given, as the log holds it: 12 mL of stock");
  const silent = await why("2027-06-19");
  expect(silent).toMatch(/taken as given, as published: [\d.]+ mL of stock/);
  expect(silent).not.toContain("log holds");
});
