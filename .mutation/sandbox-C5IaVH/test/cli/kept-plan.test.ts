/** `plan --keep`: days that an earlier plan or calendar has published. */
// @ts-nocheck

import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/season/season-plan.js";
import { daysFed } from "../support/a-garden.js";
import { cli, examplePath, scratchFile, scratchFolder } from "../support/run-cli.js";

const garden = readFileSync(examplePath("back-garden"), "utf8").replace(
  "days: [wed, sat]",
  "days: [mon, tue, wed, thu, fri, sat, sun]",
);
/** One planting set out a week sooner. */
const edited = garden.replace("transplanted: 2027-05-20", "transplanted: 2027-05-13");

async function planOf(...argv: string[]): Promise<Plan> {
  const { stdout, stderr } = await cli(["plan", "--json", ...argv]);
  expect(stderr).toBe("");
  return JSON.parse(stdout) as Plan;
}
const days = (plan: Plan): string[] =>
  plan.rounds.filter(({ beds }) => beds.length > 0).map(({ day }) => day);

describe("plan --keep", () => {
  const folder = scratchFolder();
  const [old, now, json, ics] = ["old.yaml", "now.yaml", "old.json", "old.ics"].map((name) =>
    join(folder, name),
  ) as [string, string, string, string];
  writeFileSync(old, garden);
  writeFileSync(now, edited);

  test("leaves the rounds of an earlier plan or calendar where they were", async () => {
    const before = await planOf(old);
    writeFileSync(json, JSON.stringify(before));
    await cli(["calendar", old, "--out", ics]);
    expect(days(await planOf(now))).not.toEqual(days(before));
    for (const earlier of [json, ics]) {
      const kept = await planOf(now, "--keep", earlier);
      expect(days(kept)).toEqual(days(before));
      for (const id of ["peppers", "early-toms", "cukes", "courgettes", "celery"])
        expect(daysFed(kept, id), id).toEqual(daysFed(before, id));
    }
  });

  test("spends as many rounds on it as it is told, and no more", async () => {
    const fewest = (await planOf(now)).totals.rounds;
    const other = join(folder, "other.json");
    const twoDays = garden.replace("days: [mon, tue, wed, thu, fri, sat, sun]", "days: [tue, fri]");
    const published = await planOf(scratchFile("two.yaml", twoDays));
    writeFileSync(other, JSON.stringify(published));
    const fresh = (plan: Plan): number =>
      days(plan).filter((day) => !days(published).includes(day)).length;
    const none = await planOf(now, "--keep", other);
    const two = await planOf(now, "--keep", other, "--extra-rounds", "2");
    expect(none.totals.rounds).toBe(fewest);
    expect(two.totals.rounds).toBeLessThanOrEqual(fewest + 2);
    expect(fresh(two)).toBeLessThanOrEqual(fresh(none));
  });

  test.each([
    [
      "a plan of another version",
      JSON.stringify({ planVersion: 2, garden: { id: "x" }, rounds: [] }),
    ],
    ["a plan that is cut off", '{"planVersion": 1, "garden": {'],
    [
      "a plan whose days are none",
      '{"planVersion":1,"garden":{"id":"weir-cottage"},"rounds":[{"day":"x","beds":[]}]}',
    ],
    ["a garden file", garden],
  ])("refuses %s, with its place", async (_, text) => {
    const file = scratchFile("strange", text);
    const { code, stdout, stderr } = await cli(["plan", now, "--keep", file]);
    expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
    expect(stderr).toContain(`${file}:1:1: `);
  });

  test.each(["json", "ics"])("refuses the %s of another garden", async (kind) => {
    const file = join(folder, `orchard.${kind}`);
    if (kind === "ics") await cli(["calendar", examplePath("orchard-corner"), "--out", file]);
    else writeFileSync(file, JSON.stringify(await planOf(examplePath("orchard-corner"))));
    const { code, stderr } = await cli(["plan", now, "--keep", file]);
    expect(code).toBe(1);
    expect(stderr).toMatch(/garden "terrace-orchard", not (of|to) "weir-cottage"/);
  });

  test("a file that is not there: 3; both from standard input: 2", async () => {
    expect((await cli(["plan", now, "--keep", join(folder, "none")])).code).toBe(3);
    expect((await cli(["plan", "-", "--keep", "-"], { stdin: garden })).code).toBe(2);
  });
});
