/** A calendar that an earlier program wrote: its past stands, what is to come keeps its names. */
// @ts-nocheck

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { calendarText } from "../../src/calendar/calendar-text.js";
import { readEarlierCalendar } from "../../src/calendar/earlier-calendar.js";
import { day } from "../../src/dates.js";
import { planGarden } from "../../src/plan-garden.js";
import { loadTables } from "../../src/tables.js";

const beside = (name: string): string =>
  readFileSync(new URL(`../support/published-before/${name}`, import.meta.url), "utf8");
const garden = beside("old-mill.yaml");
const before = beside("old-mill.ics");

function read(text: string) {
  const earlier = readEarlierCalendar(text, "old-mill");
  if (!earlier.ok) throw new Error(earlier.problems.map(({ message }) => message).join());
  return earlier.value;
}

function writtenOver(previous: string, today: string, text = garden): string {
  const { published } = read(previous);
  if (published === undefined) throw new Error("no record");
  const plan = planGarden(text, loadTables(), { today, published });
  if (!plan.ok) throw new Error(plan.problems.map(({ message }) => message).join());
  const stamp = `${today}T06:00:00Z`;
  const now = calendarText(plan.value, { previous, stamp, today: day(today) });
  if (!now.ok) throw new Error("not written");
  return now.value;
}

const today = "2027-07-20";
const after = writtenOver(before, today);
const [was, now] = [read(before).events, read(after).events];

test("entries before today keep every byte", () => {
  const past = was.filter((event) => event.day < today);
  expect(past.length).toBeGreaterThan(5);
  for (const { uid, text } of past) expect(now.find((event) => event.uid === uid)?.text).toBe(text);
});

test("entries to come keep their UIDs, and have titles of 40 letters", () => {
  const ahead = was.filter((event) => event.day >= today);
  expect(ahead.length).toBeGreaterThan(3);
  for (const { uid, day: on, sequence } of ahead) {
    const next = now.find((event) => event.uid === uid);
    expect(next).toMatchObject({ day: on, sequence: sequence + 1, cancelled: false });
    const title = /SUMMARY:(.*)\r\n(?! )/.exec(next?.text ?? "")?.[1] ?? "";
    expect(title.length).toBeLessThanOrEqual(40);
    expect(title).toMatch(/^(?:Feed|Stock: use up) /);
  }
  expect(now).toHaveLength(was.length);
});

test("batches that were named by their day are poured from still, under a short name", () => {
  const text = after.replaceAll("\r\n ", "");
  expect(text).toMatch(/DESCRIPTION:33 mL from batch 16 Jun\\, 2 cans/);
  expect(text).toContain("--batch batch-2027-06-16 --step thrown-away");
});

test("a round that the log says was missed is told on its own entry, once", () => {
  const missed = `${garden}log: [{ on: 2027-07-17, missed: true }]\n`;
  const told = writtenOver(before, today, missed);
  const title = "SUMMARY:Not given: Sweet pepper\\, tomato: 2 cans × 25 mL\r\n";
  expect(told).toContain(title);
  expect(writtenOver(told, "2027-07-21", missed)).toContain(title);
});
