/** What a grower sees first in `plan`, from day to day of a season. */
// @ts-nocheck

import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { stripVTControlCharacters } from "node:util";
import { beforeAll, describe, expect, test } from "vitest";
import { gardenText, planted } from "../support/a-garden.js";
import { cli, examplePath, scratchFolder, type World } from "../support/run-cli.js";

const file = join(scratchFolder(), "garden.yaml");

beforeAll(async () => {
  const garden = readFileSync(examplePath("back-garden"), "utf8");
  writeFileSync(file, garden.replace("calendar:\n", "calendar:\n  file: garden.ics\n"));
  const out = join(file, "..", "garden.ics");
  expect((await cli(["calendar", file, "--out", out])).code).toBe(0);
});

async function planned(today: string, args: string[] = [], world: World = {}): Promise<string> {
  const { code, stdout } = await cli(["plan", file, "--today", today, ...args], world);
  expect(code).toBe(0);
  return stdout;
}

/** First words of each block of the list. */
function daysIn(text: string): string[] {
  return [...text.matchAll(/^(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun) \d+ \w{3}/gm)].map(([day]) => day);
}

describe("plan", () => {
  test("says first what today asks for, jobs for the stock too, then the next round", async () => {
    const [name, now, next] = (await planned("2027-05-07")).split("\n");
    expect(name).toBe("Weir Cottage");
    expect(now).toMatch(/^Today, Fri 7 May: crush \d+ g of shell, stir into the acid; 20 minutes$/);
    expect(next).toMatch(/^Next, Sun 9 May, in 2 days: strain and bottle /);
    const [, onRound] = (await planned("2027-05-12")).split("\n");
    expect(onRound).toMatch(/^Today, Wed 12 May: feed 1 can, 22 mL: /);
    const [, nothing, round] = (await planned("2027-05-13")).split("\n");
    expect([nothing, round?.slice(0, 35)]).toEqual([
      "Nothing to do today",
      "Next round, Wed 26 May, in 13 days:",
    ]);
  });

  test("has rounds and jobs in one list by day, a blank line between them", async () => {
    const text = await planned("2027-05-03");
    expect(daysIn(text).slice(0, 4)).toEqual(["Wed 5 May", "Fri 7 May", "Sun 9 May", "Wed 12 May"]);
    expect(text).toMatch(/\n\nFri 7 May\n {2}- Grind the shells[^]*\n\nSun 9 May\n {2}- Stir up/);
  });

  test("folds the past into a line, and --past shows it", async () => {
    const folded = await planned("2027-06-20");
    expect(folded).toContain("3 rounds before today, all taken as given; `plan --past` shows");
    expect(daysIn(folded)[0]).toBe("Wed 23 Jun");
    const whole = await planned("2027-06-20", ["--past"]);
    expect(whole).toContain("\nWed 12 May, 18:30, taken as given, from batch 1\n");
    expect(whole).not.toContain("before today");
    expect(daysIn(await planned("2027-06-20", ["--from", "2027-05-20"]))[0]).toBe("Wed 26 May");
  });

  test.each([80, 100, 120])("has the same columns in all rounds, at %i", async (columns) => {
    const text = await planned("2027-05-03", [], { columns });
    const starts = [...text.matchAll(/^ {2}.*? +\d+ (?:part )?cans? of \d+ L +(?=\d+ mL)/gm)];
    expect(starts.length).toBeGreaterThan(20);
    expect(new Set(starts.map(([before]) => before.length)).size).toBe(1);
  });

  test("after the season says that nothing is left", async () => {
    const [, now, next] = (await planned("2027-10-20")).split("\n");
    expect([now, next]).toEqual([
      "Nothing to do today",
      "No round is left in this season: the last is that of Wed 29 Sep",
    ]);
  });

  test("without a round says so", async () => {
    const stdin = gardenText(planted({ feed: false }));
    const { stdout } = await cli(["plan", "-"], { stdin });
    expect(stdout).toContain("Nothing to do today\nNo round is planned in this season\n");
  });

  test("dims the past, marks warnings by a sign too, and says the same without colour", async () => {
    const coloured = await planned("2027-06-20", ["--past"], { color: true });
    expect(coloured).toContain("\u001b[2mWed 12 May");
    expect(coloured).toContain("\u001b[1m\u001b[32mWed 23 Jun, 18:30, in 3 days");
    expect(stripVTControlCharacters(coloured)).toBe(await planned("2027-06-20", ["--past"]));
  });
});

test("a warning of the next two weeks stands before the list, one of later below it", async () => {
  const argv = ["plan", examplePath("shared-garden"), "--today"];
  const near = (await cli([...argv, "2027-06-15"])).stdout;
  const head = near.slice(0, near.indexOf("Rounds, and jobs"));
  expect(head).toMatch(/Warnings for the next two weeks\n! too little stock on /);
  const far = (await cli([...argv, "2027-05-01"])).stdout;
  expect(far.slice(0, far.indexOf("Rounds, and jobs"))).not.toContain("Warnings");
});
