import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/season-plan.js";
import { cli, examplePath, examples, scratchFolder } from "../support/run-cli.js";

describe.each(examples)("the calendar of the example %s", (name) => {
  const file = examplePath(name);

  test("is kept as a golden file", async () => {
    const { code, stdout, stderr } = await cli(["calendar", file]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    await expect(stdout).toMatchFileSnapshot(`../golden/${name}.ics`);
  });

  test("holds the plan, event for event, when ical.js reads it", async () => {
    const plan = JSON.parse((await cli(["plan", "--json", file])).stdout) as Plan;
    const { stdout } = await cli(["calendar", file]);
    const calendar = new ICAL.Component(ICAL.parse(stdout) as unknown[]);
    const feedings = calendar
      .getAllSubcomponents("vevent")
      .filter((c) => c.getFirstProperty("categories")?.getValues().includes("Feeding"))
      .map((c) => new ICAL.Event(c));
    const days = plan.rounds.flatMap((round) =>
      plan.garden.calendar.group === "bed" ? round.beds.map(() => round.day) : [round.day],
    );
    expect(feedings.map((e) => e.startDate.toString().slice(0, 10)).sort()).toEqual(days.sort());
    for (const round of plan.rounds)
      for (const bed of round.beds)
        for (const mix of bed.mixes)
          for (const fill of mix.fills) {
            const same = feedings.filter((e) => e.startDate.toString().startsWith(round.day));
            expect(same.some((e) => e.description.includes(fill.stockText))).toBe(true);
            expect(same.some((e) => e.description.includes(fill.waterText))).toBe(true);
          }
  });
});

const file = examplePath("back-garden");

test("--out writes the same bytes that standard output shows", async () => {
  const path = join(scratchFolder(), "garden.ics");
  const { code, stdout } = await cli(["calendar", file, "--out", path]);
  expect({ code, stdout }).toEqual({ code: 0, stdout: "" });
  expect(readFileSync(path, "utf8")).toBe((await cli(["calendar", file])).stdout);
});

test("writing again without a change leaves the file as it is", async () => {
  const path = join(scratchFolder(), "garden.ics");
  await cli(["calendar", file, "--out", path]);
  const before = readFileSync(path);
  const { stderr } = await cli(["calendar", file, "--out", path]);
  expect(stderr).toContain("unchanged");
  expect(readFileSync(path).equals(before)).toBe(true);
});

test("a folder that does not exist is told, and nothing is left behind", async () => {
  const folder = scratchFolder();
  const path = join(folder, "missing", "garden.ics");
  const { code, stderr } = await cli(["calendar", file, "--out", path]);
  expect(code).toBe(3);
  expect(stderr).toContain("folder does not exist");
  expect(readdirSync(folder)).toEqual([]);
});

test("a folder in place of the file is refused and stays", async () => {
  const path = join(scratchFolder(), "garden.ics");
  mkdirSync(path);
  expect((await cli(["calendar", file, "--out", path])).code).toBe(3);
  expect(existsSync(path)).toBe(true);
});

test("a garden with problems leaves an earlier calendar as it was", async () => {
  const folder = scratchFolder();
  const path = join(folder, "garden.ics");
  writeFileSync(path, "earlier");
  const { code } = await cli(["calendar", "-", "--out", path], { stdin: "version: 2" });
  expect(code).toBe(1);
  expect(readFileSync(path, "utf8")).toBe("earlier");
  expect(readdirSync(folder)).toEqual(["garden.ics"]);
});

test("--stamp is the time in the file; a wrong one is wrong usage", async () => {
  const { stdout } = await cli(["calendar", file, "--stamp", "2027-02-01T09:30:00Z"]);
  expect(stdout).toContain("DTSTAMP:20270201T093000Z");
  expect((await cli(["calendar", file, "--stamp", "today"])).code).toBe(2);
});
