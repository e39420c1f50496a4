// @ts-nocheck
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { addDays, day as calendarDay } from "../../src/dates.js";
import type { Plan } from "../../src/season/season-plan.js";
import { gardenText } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";
import { aheadDays, fedOf, givenDays, growing } from "./a-live-garden.js";
import { fileText, log, logged } from "./logging.js";

const volume = "1 L";
const inHand = { stock: { keep: "fridge", batches: [{ id: "B1", made: "2027-05-10", volume }] } };

async function planOf(today: string, differs: object): Promise<Plan> {
  const path = scratchFile("garden.yaml", gardenText({ ...growing({}), ...differs }));
  const { code, stdout, stderr } = await cli(["plan", path, "--json"], { today });
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return JSON.parse(stdout) as Plan;
}

describe("a feeding that was missed", () => {
  test("is not given, takes nothing from a bottle, and is due still", async () => {
    const fed = { on: "2027-06-14", planting: "toms", stock: "30 mL", batch: "B1" };
    const log = [fed, { on: "2027-06-28", planting: "toms", missed: true }];
    const plan = await planOf("2027-06-30", { ...inHand, log });
    expect(givenDays(plan)).toEqual(["2027-06-14"]);
    expect(aheadDays(plan)[0]).toBe("2027-06-30");
    expect(plan.stock?.inHand).toMatchObject([{ id: "B1", leftMl: 970 }]);
  });

  test("of another feed is not given either, and the next one is counted from the last that was", async () => {
    const feeds = [{ name: "nettle", every: "14 days", rate: "5 mL per L" }];
    const days = async (log: object[]): Promise<unknown> => {
      const plan = await planOf("2027-06-20", { feeds, log });
      return plan.rounds
        .filter((round) => round.feeds !== undefined)
        .map((round) => [round.day, round.feeds?.[0]?.given ?? false])
        .slice(0, 2);
    };
    const fed = { on: "2027-06-01", feed: "nettle" };
    const missed = { on: "2027-06-15", feed: "nettle", missed: true };
    expect(await days([fed, missed])).toEqual([
      ["2027-06-01", true],
      ["2027-06-20", false],
    ]);
  });
});

describe("a bottle thrown away", () => {
  test("gives nothing any more, and the plan makes another", async () => {
    const batches = [{ id: "B1", made: "2027-05-10", thrown_away: "2027-06-10", volume }];
    const plan = await planOf("2027-06-12", { stock: { keep: "fridge", batches } });
    expect(plan.stock?.making.batches.length).toBeGreaterThan(0);
    const poured = fedOf(plan).flatMap(({ mix }) => mix.pours ?? []);
    expect(poured.filter(({ batch }) => batch === "B1")).toEqual([]);
  });
});

test("a batch that the log names and the file does not list is warned of, and counts as given", async () => {
  const log = [{ on: "2027-06-14", planting: "toms", stock: "30 mL", batch: "B9" }];
  const plan = await planOf("2027-06-16", { ...inHand, log });
  expect(plan.warnings).toMatchObject([
    { code: "batch-unknown", day: "2027-06-14", planting: "toms", mend: "did you mean `B1`?" },
  ]);
  expect(fedOf(plan)[0]?.mix).toMatchObject({ given: true, stockMl: 30 });
  expect(plan.stock?.inHand).toMatchObject([{ id: "B1", leftMl: 1000 }]);
});

/** A garden file of its own, with a comment before its end. */
function aFile(differs: object = {}): string {
  const text = gardenText({ ...growing({}, { id: "more" }), ...differs });
  return scratchFile("garden.yaml", `${text}# the end\n`);
}

interface Written {
  readonly log?: object[];
  readonly stock?: { readonly batches?: object[] };
}
const written = (path: string): Written => parse(fileText(path)) as Written;

async function roundsOf(path: string, today = "2027-05-15"): Promise<string[]> {
  const { stdout } = await cli(["plan", path, "--json"], { today });
  const { rounds } = JSON.parse(stdout) as Plan;
  return rounds.filter(({ beds }) => beds.length > 0).map(({ day }) => day);
}

describe("log --missed", () => {
  test("writes that the round was not given, and no stock leaves a bottle", async () => {
    const path = aFile(inHand);
    const [day = ""] = await roundsOf(path);
    await logged(path, day, "--missed");
    expect(written(path).log).toEqual([{ on: day, missed: true }]);
    const { stderr } = await log(path, day, "--missed");
    expect(stderr).toContain(`the log holds that already (${day}, the round, missed)`);
    expect(written(path).log).toHaveLength(1);
  });

  test("a day later stands on the day of the round, for a planting or a bed alone", async () => {
    const path = aFile(inHand);
    const [day = ""] = await roundsOf(path);
    const next = addDays(calendarDay(day), 1);
    await logged(path, next, "--missed", "--planting", "toms");
    expect(written(path).log).toEqual([{ on: day, planting: "toms", missed: true }]);
  });

  test("on a day without a round is refused, with the nearest", async () => {
    const path = aFile(inHand);
    const [day = ""] = await roundsOf(path);
    const { code, stderr } = await log(path, "2027-07-01", "--missed", "--on", "2027-04-20");
    expect(code).toBe(2);
    expect(stderr).toContain(`no round is planned on 2027-04-20; the nearest are on ${day}`);
  });

  test("after some of the round was given is written of the others", async () => {
    const path = aFile(inHand);
    const [day = ""] = await roundsOf(path);
    await logged(path, day, "--planting", "toms");
    await logged(path, day, "--missed");
    expect(written(path).log?.slice(1)).toEqual([{ on: day, planting: "more", missed: true }]);
  });

  test("of another feed is written with its name", async () => {
    const path = aFile({ feeds: [{ name: "nettle", every: "14 days", rate: "5 mL per L" }] });
    await logged(path, "2027-06-01", "--missed", "--feed", "nettle");
    expect(written(path).log).toEqual([{ on: "2027-06-01", missed: true, feed: "nettle" }]);
  });
});

describe("a feeding a day late", () => {
  test("has the amounts of its round, and its day where a calendar tells of it", async () => {
    const path = aFile({ ...inHand, calendar: { file: "weir.ics" } });
    const [day = ""] = await roundsOf(path);
    const next = addDays(calendarDay(day), 1);
    await logged(path, next);
    expect(written(path).log).toMatchObject([
      { on: next, round: day, planting: "more", batch: "B1" },
      { on: next, round: day, planting: "toms", batch: "B1" },
    ]);
    const { code, stderr } = await log(path, next, "--on", day, "--planting", "toms");
    expect(code).toBe(0);
    expect(stderr).toContain(`the log holds that already (${next}, toms,`);
  });
});

describe("the same feeding twice", () => {
  test.each([
    [
      ["--planting", "toms"],
      ["--planting", "toms"],
    ],
    [
      ["--planting", "toms", "--stock", "30 mL"],
      ["--planting", "toms", "--stock", "30 mL"],
    ],
    [
      ["--planting", "toms", "--stock", "30 mL"],
      ["--planting", "toms", "--stock", "35 mL"],
    ],
    [
      ["--bed", "south"],
      ["--bed", "south"],
    ],
    [
      ["--bed", "south", "--stock", "45 mL"],
      ["--bed", "south", "--stock", "45 mL"],
    ],
    [[], ["--bed", "south"]],
    [[], ["--planting", "more"]],
    [["--bed", "south", "--stock", "45 mL"], []],
  ])("as %j and then %j is noticed, and nothing is written", async (first, second) => {
    const path = aFile(inHand);
    const [day = ""] = await roundsOf(path);
    await logged(path, day, ...first);
    const once = fileText(path);
    const { code, stdout, stderr } = await log(path, day, ...second);
    expect({ code, stdout }).toEqual({ code: 0, stdout: "" });
    expect(stderr).toMatch(/the log holds .* already.*nothing was written/);
    expect(fileText(path)).toBe(once);
  });

  test("is written where it was given again", async () => {
    const path = aFile(inHand);
    await logged(path, "2027-06-20", "--planting", "toms", "--stock", "30 mL");
    await logged(path, "2027-06-20", "--planting", "toms", "--stock", "10 mL", "--again");
    expect(written(path).log).toMatchObject([{ stock: "30 mL" }, { stock: "10 mL" }]);
  });

  test("of another feed is noticed too", async () => {
    const path = aFile({ feeds: [{ name: "nettle", every: "14 days", rate: "5 mL per L" }] });
    await logged(path, "2027-06-01", "--feed", "nettle");
    const { stderr } = await log(path, "2027-06-01", "--feed", "nettle");
    expect(stderr).toContain("for a second feeding of that day give --again");
  });
});

describe("a bare log on a day of another feed alone", () => {
  // One day before the first round of calcium.
  async function withSeaweed(): Promise<{ path: string; calcium: string; seaweed: string }> {
    const [calcium = ""] = await roundsOf(aFile(inHand));
    const from = addDays(calendarDay(calcium), -1);
    const feeds = [{ name: "seaweed", every: "60 days", rate: "5 mL per L", from }];
    return { path: aFile({ ...inHand, feeds }), calcium, seaweed: from };
  }

  test("is of that feed, and not of the calcium of the day after", async () => {
    const { path, calcium, seaweed } = await withSeaweed();
    await logged(path, seaweed);
    expect(written(path).log).toEqual([{ on: seaweed, feed: "seaweed" }]);
    const { stderr } = await log(path, seaweed);
    expect(stderr).toContain(`the log holds the round of ${seaweed} already`);
    await logged(path, seaweed, "--planting", "toms");
    expect(written(path).log?.[1]).toMatchObject({ on: seaweed, planting: "toms" });
    expect(calcium > seaweed).toBe(true);
  });

  test("with --missed says that it was missed", async () => {
    const { path, seaweed } = await withSeaweed();
    await logged(path, seaweed, "--missed");
    expect(written(path).log).toEqual([{ on: seaweed, missed: true, feed: "seaweed" }]);
  });

  test.each([[], ["--missed"]])(
    "a day before it stands for nothing to come: %j",
    async (...argv) => {
      const { path, calcium, seaweed } = await withSeaweed();
      const { code, stderr } = await log(path, addDays(calendarDay(seaweed), -1), ...argv);
      expect(code).toBe(2);
      expect(stderr).toContain(`; the nearest are on ${seaweed} (seaweed) and ${calcium}`);
    },
  );
});

test.each([["--planting", "toms"], ["--bed", "south"], []])(
  "nothing is missed before its day: %j",
  async (...argv) => {
    const path = aFile(inHand);
    const [round = ""] = await roundsOf(path);
    const before = addDays(calendarDay(round), -1);
    const { code, stderr } = await log(path, round, "--missed", "--on", before, ...argv);
    expect(code).toBe(2);
    expect(stderr).toContain(`is planned on ${before}; the nearest are on ${round}`);
    expect((await log(path, before, "--missed", "--on", round, ...argv)).code).toBe(1);
  },
);
