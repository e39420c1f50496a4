/** The worker's answers, without a worker: the same as the command line's. */
// @ts-nocheck

import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { answerTo } from "../../src/web/answer.js";
import type { Answered, Making, Writing } from "../../src/web/messages.js";
import { planned } from "../../src/web/planned.js";
import { cli, examplePath, examples, scratchFile, scratchFolder } from "../support/run-cli.js";

const noon = "2027-06-10T12:00:00Z";

function writingOf(text: string, more: Partial<Writing> = {}): Writing {
  return { text, file: "garden.yaml", nowMs: Date.parse(noon), named: {}, ...more };
}

async function made(what: Making, writing: Writing): Promise<string> {
  const answered = await answerTo({ turn: 1, writing, wish: { kind: "make", what } });
  if (answered.kind !== "made") throw new Error(JSON.stringify(answered));
  return answered.made.text;
}

async function planIn(writing: Writing): Promise<Answered & { kind: "plan" }> {
  const wish = { kind: "plan", withReasons: false } as const;
  const answered = await answerTo({ turn: 1, writing, wish });
  if (answered.kind !== "plan") throw new Error(JSON.stringify(answered));
  return answered;
}

const rules = readFileSync(new URL("../../examples/orchard-rules.yaml", import.meta.url), "utf8");

test.each(examples)("the plan of %s is that of `feedround plan`", async (name) => {
  const path = examplePath(name);
  const writing = writingOf(readFileSync(path, "utf8"), { named: { "orchard-rules.yaml": rules } });
  const ours = await planned(writing);
  const { timezone } = ours.ok ? ours.value.garden : { timezone: "" };
  const today = timezone === "Pacific/Auckland" ? "2027-06-11" : "2027-06-10";
  const { stdout } = await cli(["plan", path, "--json"], { today });
  expect(ours.ok && JSON.parse(JSON.stringify(ours.value.plan))).toEqual(JSON.parse(stdout));
});

test.each(examples)("the calendar of %s is that of `feedround calendar --out`", async (name) => {
  const path = examplePath(name);
  const writing = writingOf(readFileSync(path, "utf8"), {
    ...{ calendar: "", named: { "orchard-rules.yaml": rules } },
  });
  const plan = await planned(writing);
  const today = plan.ok ? plan.value.plan.today : "";
  const out = join(scratchFolder(), "garden.ics");
  const { code } = await cli(["calendar", path, "--out", out], { today, now: noon });
  expect(code).toBe(0);
  expect(await made({ kind: "calendar" }, writing)).toBe(readFileSync(out, "utf8"));
});

test("a calendar goes on from the one that was opened, as on the command line", async () => {
  const text = readFileSync(examplePath("back-garden"), "utf8");
  const file = scratchFile("garden.yaml", text);
  const out = join(scratchFolder(), "garden.ics");
  await cli(["calendar", file, "--out", out], { today: "2027-05-01", now: "2027-05-01T09:00:00Z" });
  const calendar = readFileSync(out, "utf8");
  const changed = text.replace("days: [wed, sat]", "days: [tue, sun]");
  expect(changed).not.toBe(text);
  writeFileSync(file, changed);
  await cli(["calendar", file, "--out", out], { today: "2027-06-10", now: noon });
  const ours = await made({ kind: "calendar" }, writingOf(changed, { calendar }));
  expect(ours).toBe(readFileSync(out, "utf8"));
  expect(ours).not.toBe(calendar);
});

test("another garden's calendar is refused, and nothing is made over it", async () => {
  const text = readFileSync(examplePath("back-garden"), "utf8");
  const other = await made({ kind: "calendar" }, writingOf(text, { calendar: "" }));
  const writing = writingOf(text.replace("id: weir-cottage", "id: another"), { calendar: other });
  const wish = { kind: "make", what: { kind: "calendar" } } as const;
  const answered = await answerTo({ turn: 1, writing, wish });
  expect(answered).toMatchObject({ kind: "problems", problems: [{ code: "other-garden" }] });
});

test("files that the garden names are asked for by name, and the plan is made without them", async () => {
  const text = readFileSync(examplePath("orchard-corner"), "utf8");
  const { wanted } = await planIn(writingOf(text));
  expect(wanted).toEqual([
    { name: "orchard-rules.yaml", kind: "named", told: "planned with the built-in rules alone" },
  ]);
  const opened = await planIn(writingOf(text, { named: { "orchard-rules.yaml": rules } }));
  expect(opened.wanted).toEqual([]);
});

test("a calendar that the garden names is asked for until it is opened or said not to be there", async () => {
  const text = readFileSync(examplePath("back-garden"), "utf8");
  const naming = text.replace("calendar:\n", "calendar:\n  file: round.ics\n");
  const wants = async (more: Partial<Writing>) => (await planIn(writingOf(naming, more))).wanted;
  expect(await wants({})).toMatchObject([{ name: "round.ics", kind: "calendar" }]);
  expect(await wants({ calendar: "" })).toEqual([]);
});

test("the first line says what the reader's day asks for", async () => {
  const text = readFileSync(examplePath("back-garden"), "utf8");
  const on = await planIn(writingOf(text, { nowMs: Date.parse("2027-06-23T12:00:00Z") }));
  expect(on.view.firstLine).toMatch(/^Today, Wed 23 Jun: feed /);
  const before = await planIn(writingOf(text));
  expect(before.view.firstLine).toMatch(/^Next: .* \(in \d+ days\)$/);
});

test("what is made over a text with problems is its problems", async () => {
  const writing = writingOf("version: 1\n");
  const wish = { kind: "make", what: { kind: "sheet" } } as const;
  expect(await answerTo({ turn: 1, writing, wish })).toMatchObject({ kind: "problems" });
});

test.each(["sheet", "labels", "recipe", "page"] as const)(
  "a %s is one whole document",
  async (kind) => {
    const text = readFileSync(examplePath("back-garden"), "utf8");
    expect(await made({ kind }, writingOf(text))).toMatch(/^<!doctype html>[^]*<\/html>\s*$/i);
  },
);
