import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { ChangeFacts } from "../../src/cli/changes-text.js";
import { gardenText, planted } from "../support/a-garden.js";
import { cli, examplePath, scratchFile, scratchFolder } from "../support/run-cli.js";

const wed = { feeding: { days: ["wed"] } };
const usual = gardenText({ id: "weir-cottage", ...wed });
const inDublin = gardenText({
  id: "weir-cottage",
  ...wed,
  location: { latitude: 53.3, longitude: -6.3, elevation: "20 m" },
});
const onThursdays = gardenText({ id: "weir-cottage", feeding: { days: ["thu"] } });
const moreWater = gardenText({
  id: "weir-cottage",
  ...wed,
  ...planted({ water: "3 L per plant" }),
});
const unfed = gardenText({ id: "weir-cottage", ...wed, ...planted({ feed: false }) });

async function calendarOf(garden: string): Promise<string> {
  return scratchFile("garden.ics", (await cli(["calendar", "-"], { stdin: garden })).stdout);
}

async function factsOf(before: string, after: string): Promise<readonly ChangeFacts[]> {
  const { code, stdout, stderr } = await cli(["changes", await calendarOf(before), "-", "--json"], {
    stdin: after,
  });
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return (JSON.parse(stdout) as { changes: ChangeFacts[] }).changes;
}

describe("changes", () => {
  test.each([
    ["on the calendar", usual],
    ["that follow warmth", inDublin],
  ])(
    "are none where nothing changed, on any day of a kept calendar, of stages %s",
    async (_, stdin) => {
      const file = join(scratchFolder(), "garden.ics");
      const made = { stdin, today: "2027-03-01" };
      expect((await cli(["calendar", "-", "--out", file], made)).code).toBe(0);
      for (const today of ["2027-03-02", "2027-06-22", "2027-06-23", "2027-07-30", "2027-10-30"])
        expect(await cli(["changes", file, "-"], { stdin, today }), today).toEqual({
          code: 0,
          stdout: "Nothing changes.\n",
          stderr: "",
        });
    },
  );

  test("are none from a printed copy before the first bottle is begun and after the last round", async () => {
    const argv = ["changes", await calendarOf(usual), "-"];
    for (const today of ["2027-03-01", "2027-09-01"])
      expect(await cli(argv, { stdin: usual, today }), today).toEqual({
        code: 0,
        stdout: "Nothing changes.\n",
        stderr: "",
      });
    expect(await factsOf(usual, usual)).toEqual([]);
  });

  test("tell what moved, with the day it had", async () => {
    const feedings = (await factsOf(usual, onThursdays)).filter(({ summary }) =>
      summary.startsWith("Feed "),
    );
    expect(feedings.length).toBeGreaterThan(1);
    for (const { change, day, was } of feedings) {
      expect(change).toBe("moved");
      expect(was?.day).not.toBe(day);
    }
  });

  test("tell what changed, and in what", async () => {
    const [feeding] = (await factsOf(usual, moreWater)).filter(({ summary }) =>
      summary.startsWith("Feed "),
    );
    expect(feeding).toMatchObject({ change: "changed", differs: ["summary", "details"] });
    expect(feeding?.was?.summary).not.toBe(feeding?.summary);
  });

  test("name a reminder that differs in plain words", async () => {
    const silent = gardenText({ id: "weir-cottage", ...wed, calendar: { reminders: [] } });
    const facts = await factsOf(usual, silent);
    expect(new Set(facts.flatMap(({ differs }) => differs ?? []))).toEqual(new Set(["reminder"]));
  });

  test("tell what is new and what is gone, as the other way round", async () => {
    const gone = await factsOf(usual, unfed);
    const fresh = await factsOf(unfed, usual);
    expect(new Set(gone.map(({ change }) => change))).toEqual(new Set(["gone"]));
    expect(new Set(fresh.map(({ change }) => change))).toEqual(new Set(["new"]));
    expect(fresh.map(({ day, summary }) => [day, summary])).toEqual(
      gone.map(({ day, summary }) => [day, summary]),
    );
  });

  test("come as a table by day, with counts at the end", async () => {
    const { stdout } = await cli(["changes", await calendarOf(usual), "-"], {
      stdin: onThursdays,
      columns: 200,
    });
    const lines = stdout.trimEnd().split("\n");
    expect(lines.find((line) => line.includes("Feed "))).toMatch(
      /^moved +Thu \d+ \w{3} +from Wed \d+ \w{3} +Feed \d/,
    );
    expect(lines.at(-1)).toMatch(/\d+ moved/);
  });

  test("show the summary that was, where it differs", async () => {
    const { stdout } = await cli(["changes", await calendarOf(usual), "-"], {
      stdin: moreWater,
      columns: 200,
    });
    expect(stdout.replace(/\s+/g, " ")).toMatch(/Feed .*; was: Feed /);
  });

  test("name what an entry says now, where its summary is the same", async () => {
    const water = (hardness: string): string =>
      gardenText({ id: "weir-cottage", ...wed, source_water: { hardness } });
    const argv = ["changes", await calendarOf(water("100 mg/L")), "-"];
    const { stdout } = await cli(argv, { stdin: water("200 mg/L") });
    const said = stdout.replace(/\s+/g, " ");
    // Calcium of water: 40.08 g of calcium in 100.09 g of its carbonate, by which hardness is told.
    expect(said).toContain(
      "calcium in each litre: up to 80.1 mg from the tap, was up to 40 mg from the tap",
    );
    expect(said).not.toContain("details");
  });

  test("tell whole clauses of what an entry says, no scraps of words", async () => {
    const garden = readFileSync(examplePath("back-garden"), "utf8");
    const stayed = garden.replace(/away: .*/, "away: []");
    const argv = ["changes", await calendarOf(garden), "-", "--today", "2027-05-20"];
    const { stdout } = await cli(argv, { stdin: stayed, columns: 120 });
    const said = stdout.replace(/\s+/g, " ");
    expect(said).toContain("cukes (cucumber): fruit growth, was fruit set moved");
    expect(said).toContain(
      "South wall: 2 cans × 25 mL (from batch 2) for peppers, was 2 cans × 25 mL for peppers",
    );
    expect(said).not.toMatch(/,,|,;|: \d+ [A-Z][a-z]+ to \d+,/);
  });

  test("leave the calendar as it is, and foretell what `calendar` then writes", async () => {
    const path = await calendarOf(usual);
    const before = readFileSync(path, "utf8");
    const { stdout } = await cli(["changes", path, "-"], { stdin: moreWater });
    expect(readFileSync(path, "utf8")).toBe(before);
    const { stderr } = await cli(["calendar", "-", "--out", path], { stdin: moreWater });
    expect(stderr).toBe(`${path}: written, ${stdout.trimEnd().split("\n").at(-1) ?? ""}\n`);
    const after = await cli(["changes", path, "-"], { stdin: moreWater });
    expect(after.stdout).toBe("Nothing changes.\n");
  });
});

describe("changes of files that are not in order", () => {
  test("a garden with problems: 1, told in JSON too", async () => {
    const path = await calendarOf(usual);
    expect((await cli(["changes", path, "-"], { stdin: "version: 2" })).code).toBe(1);
    const { code, stdout } = await cli(["changes", path, "-", "--json"], { stdin: "version: 2" });
    expect(code).toBe(1);
    expect(JSON.parse(stdout)).toHaveProperty("problems");
  });

  test("a calendar that is not ours: 1, with its place", async () => {
    const path = scratchFile("other.ics", "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n");
    const { code, stderr } = await cli(["changes", path, "-"], { stdin: usual });
    expect(code).toBe(1);
    expect(stderr).toMatch(/other\.ics:1:1: this calendar was written by another program: /);
  });

  test("a file that is not there: 3", async () => {
    expect((await cli(["changes", "/nowhere/garden.ics", "-"], { stdin: usual })).code).toBe(3);
    expect((await cli(["changes", await calendarOf(usual), "/nowhere.yaml"])).code).toBe(3);
  });

  test("both from standard input: wrong usage", async () => {
    const { code, stderr } = await cli(["changes", "-", "-"], { stdin: usual });
    expect(code).toBe(2);
    expect(stderr).toContain("cannot both come from standard input");
  });

  test("a calendar from standard input is read", async () => {
    const garden = scratchFile("garden.yaml", usual);
    const stdin = readFileSync(await calendarOf(usual));
    expect((await cli(["changes", "-", garden], { stdin })).stdout).toBe("Nothing changes.\n");
  });
});
