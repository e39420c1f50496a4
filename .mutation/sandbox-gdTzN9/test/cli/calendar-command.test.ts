// @ts-nocheck
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/season/season-plan.js";
import { gardenText, planted } from "../support/a-garden.js";
import { eventsIn, valueOf } from "../support/ics.js";
import { earlierOf, feedingDaysIn } from "../support/calendars.js";
import { cli, examplePath, examples, scratchFile, scratchFolder } from "../support/run-cli.js";

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
            if (!fill.full)
              expect(same.some((e) => e.description.includes(fill.waterText))).toBe(true);
          }
  });
});

const file = examplePath("back-garden");
const recordLine = /^X-FEEDROUND-(?:ROUND|FEED|BATCH|SHELLS):.*\r\n/gm;

test("--out writes what standard output shows, and in its head what was published", async () => {
  const path = join(scratchFolder(), "garden.ics");
  const at = ["--stamp", "2027-03-01T08:00:00Z"];
  const { code, stdout } = await cli(["calendar", file, "--out", path, ...at]);
  expect({ code, stdout }).toEqual({ code: 0, stdout: "" });
  const piped = (await cli(["calendar", file, ...at])).stdout;
  const written = readFileSync(path, "utf8");
  const { published } = JSON.parse((await cli(["plan", file, "--json"])).stdout) as Plan;
  expect(earlierOf(written).published).toEqual(published);
  expect(earlierOf(piped).published).toBeUndefined();
  expect(piped).not.toMatch(/^X-FEEDROUND-(ROUND|FEED|BATCH|SHELLS)/m);
  const others = (text: string): string => text.replace(/\r\n[ \t]/g, "").replace(recordLine, "");
  expect(others(written)).toBe(others(piped));
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

test("a copy bears no time of its making, and is the same from the day on that its file speaks of", async () => {
  const { stdout } = await cli(["calendar", file], { today: "2027-06-15" });
  expect(stdout).toBe((await cli(["calendar", file], { today: "2027-01-01" })).stdout);
});

test("a first file is planned from its day on: no round of the past is made up", async () => {
  const path = join(scratchFolder(), "garden.ics");
  await cli(["calendar", file, "--out", path], { today: "2027-07-15" });
  const days = feedingDaysIn(readFileSync(path, "utf8"));
  expect(days.length).toBeGreaterThan(0);
  expect(days.filter((on) => on < "2027-07-15")).toEqual([]);
  const { stdout } = await cli(["calendar", file], { today: "2027-07-15" });
  expect(feedingDaysIn(stdout).some((on) => on < "2027-07-15")).toBe(true);
});

describe("over an earlier file", () => {
  const early = gardenText({ id: "weir-cottage", ...planted({}) });
  const later = gardenText({ id: "weir-cottage", ...planted({ water: "3 L per plant" }) });
  const without = gardenText({ id: "weir-cottage", ...planted({ feed: false }) });

  /** Writes the calendar of one garden file, then that of another over it. */
  async function over(before: string, after: string, argv: readonly string[] = [], world = {}) {
    const path = join(scratchFolder(), "garden.ics");
    await cli(["calendar", "-", "--out", path], { stdin: before });
    const was = readFileSync(path, "utf8");
    const outcome = await cli(["calendar", "-", "--out", path, ...argv], {
      stdin: after,
      ...world,
    });
    return { ...outcome, path, was, is: readFileSync(path, "utf8") };
  }

  test("what did not change keeps its bytes and the file its time, whatever day it is", async () => {
    const path = join(scratchFolder(), "garden.ics");
    await cli(["calendar", "-", "--out", path], { stdin: early });
    const before = statSync(path);
    const { stderr } = await cli(["calendar", "-", "--out", path], {
      stdin: early,
      today: "2027-08-01",
    });
    const after = statSync(path);
    expect(stderr).toContain("unchanged");
    expect([after.ino, after.mtimeMs]).toEqual([before.ino, before.mtimeMs]);
  });

  test("what changed keeps its UID, raises SEQUENCE and bears the time of the change", async () => {
    const { is, was, stderr } = await over(early, later, [], { now: "2027-05-01T09:30:00Z" });
    const uids = (text: string) => eventsIn(text).map(({ uid }) => uid);
    expect(uids(is)).toEqual(expect.arrayContaining(uids(was).slice(0, 1)));
    expect(is).toContain("SEQUENCE:1");
    expect(is).toContain("LAST-MODIFIED:20270501T093000Z");
    expect(stderr).toMatch(/written, .*\d+ changed/);
  });

  test("--stamp is the time of the change where it is given", async () => {
    const { is } = await over(early, later, ["--stamp", "2027-05-02T00:00:00Z"]);
    expect(is).toContain("LAST-MODIFIED:20270502T000000Z");
  });

  test("what is gone is cancelled in a file to import, unless told otherwise", async () => {
    const { is, was, stderr } = await over(early, without, [], { today: "2027-05-01" });
    const stati = eventsIn(is).map(({ component }) => valueOf(component, "status"));
    expect(stati).toEqual(eventsIn(was).map(() => "CANCELLED"));
    expect(stderr).toMatch(/written, \d+ gone/);
  });

  test("what is gone is left out of a file to subscribe to", async () => {
    const { is } = await over(early, without, ["--for", "subscription"]);
    expect(eventsIn(is)).toEqual([]);
  });

  test("what was cancelled goes after 60 days", async () => {
    const { path, was, is } = await over(early, without, [], { today: "2027-05-01" });
    const last = eventsIn(was).at(-1)?.startDate.toString().slice(0, 10);
    const againOn = async (today: string) => {
      writeFileSync(path, is);
      await cli(["calendar", "-", "--out", path], { stdin: without, today });
      return eventsIn(readFileSync(path, "utf8"));
    };
    expect((await againOn(last ?? "")).length).toBeGreaterThan(0);
    expect(await againOn("2027-12-31")).toEqual([]);
  });

  test.each([
    ["of another program", "BEGIN:VCALENDAR\r\nPRODID:-//x//y//EN\r\nEND:VCALENDAR\r\n", 1],
    ["that is no calendar", "shopping list\n", 1],
    ["that is empty", "", 1],
  ])("a file %s is refused with its place and a mend, and left as it is", async (_, text, line) => {
    const path = scratchFile("garden.ics", text);
    const { code, stdout, stderr } = await cli(["calendar", "-", "--out", path], { stdin: early });
    expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
    expect(stderr).toMatch(new RegExp(`garden\\.ics:${line}:1: .*: .*another name`));
    expect(readFileSync(path, "utf8")).toBe(text);
  });

  test("a file that is cut off is refused, and left as it is", async () => {
    const { was, path } = await over(early, early);
    const cut = was.slice(0, was.length / 2);
    writeFileSync(path, cut);
    const { code, stderr } = await cli(["calendar", "-", "--out", path], { stdin: early });
    expect(code).toBe(1);
    expect(stderr).toMatch(/garden\.ics:\d+:1: this calendar file is damaged/);
    expect(readFileSync(path, "utf8")).toBe(cut);
  });

  test("a file that is not UTF-8 text is refused at the line where it is not, and left as it is", async () => {
    const { was, path } = await over(early, early);
    const at = was.indexOf("SUMMARY:") + "SUMMARY:".length;
    const bytes = Buffer.concat([
      Buffer.from(was.slice(0, at)),
      Buffer.from([0xe9]),
      Buffer.from(was.slice(at)),
    ]);
    writeFileSync(path, bytes);
    const { code, stderr } = await cli(["calendar", "-", "--out", path], { stdin: early });
    expect(code).toBe(1);
    expect(stderr).toContain(`garden.ics:${was.slice(0, at).split("\n").length}:1:`);
    expect(readFileSync(path).equals(bytes)).toBe(true);
  });

  test("a file of another garden is refused, and left as it is", async () => {
    const other = gardenText({ id: "mill-house" });
    const { code, stderr, is, was } = await over(early, other);
    expect(code).toBe(1);
    expect(stderr).toMatch(/belongs to the garden "weir-cottage", not to "mill-house"/);
    expect(is).toBe(was);
  });

  test("standard output knows no earlier file", async () => {
    const { stdout } = await cli(["calendar", "-", "--out", "-"], { stdin: early });
    expect(stdout).toBe((await cli(["calendar", "-"], { stdin: early })).stdout);
  });
});

test("--for and --today take nothing else", async () => {
  expect((await cli(["calendar", file, "--for", "print"])).code).toBe(2);
  expect((await cli(["calendar", file, "--today", "tomorrow"])).code).toBe(2);
});

test("a garden with a log is planned from --today", async () => {
  const logged = gardenText({ log: [{ on: "2027-06-23", planting: "toms", stock: "30 mL" }] });
  const at = async (today: string) =>
    (await cli(["calendar", "-", "--today", today], { stdin: logged, today: "2027-03-01" })).stdout;
  const [soon, late] = [eventsIn(await at("2027-06-24")), eventsIn(await at("2027-10-30"))];
  expect(soon.some(({ summary }) => summary.startsWith("Given "))).toBe(true);
  expect(soon.length).toBeGreaterThan(late.length);
});

test("--stamp is the time in the file; a wrong one is wrong usage", async () => {
  const { stdout } = await cli(["calendar", file, "--stamp", "2027-02-01T09:30:00Z"]);
  expect(stdout).toContain("DTSTAMP:20270201T093000Z");
  expect((await cli(["calendar", file, "--stamp", "today"])).code).toBe(2);
});

test("over an earlier file, an edit of one planting leaves the rounds of the others where they were", async () => {
  const folder = scratchFolder();
  const out = join(folder, "plot.ics");
  const garden = readFileSync(examplePath("back-garden"), "utf8").replace(
    "days: [wed, sat]",
    "days: [mon, tue, wed, thu, fri, sat, sun]",
  );
  const edited = garden.replace("transplanted: 2027-05-20", "transplanted: 2027-05-13");
  const daysAfter = async (text: string, to: string): Promise<string[]> => {
    expect(await cli(["calendar", "-", "--out", to], { stdin: text })).toMatchObject({ code: 0 });
    return feedingDaysIn(readFileSync(to, "utf8"));
  };
  const before = await daysAfter(garden, out);
  const { stdout } = await cli(["changes", out, "-", "--json"], { stdin: edited });
  const { changes } = JSON.parse(stdout) as { changes: { change: string; kind: string }[] };
  expect(changes.filter((c) => c.kind === "feeding" && c.change === "moved")).toEqual([]);
  expect(await daysAfter(edited, out)).toEqual(before);
  expect(await daysAfter(edited, join(folder, "afresh.ics"))).not.toEqual(before);
});
