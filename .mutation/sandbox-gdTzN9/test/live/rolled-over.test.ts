/** Last year's file with the season alone moved: what fell outside it is told, a line for each kind. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { gardenText, planted } from "../support/a-garden.js";
import { cli, examplePath } from "../support/run-cli.js";

const season = { from: "2028-03-01", to: "2028-10-31" };

async function checked(stdin: string, today = "2028-02-10"): Promise<string> {
  const { code, stdout, stderr } = await cli(["check", "-", "--today", today], { stdin });
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return stdout.replaceAll(/\s+/g, " ");
}

function saturdays(count: number): object[] {
  return Array.from({ length: count }, (_, i) => ({
    on: new Date(Date.UTC(2027, 5, 5 + 7 * i)).toISOString().slice(0, 10),
    planting: "toms",
    stock: "1 mL",
  }));
}

describe("a garden file with last year's entries and a new season", () => {
  const rolled = gardenText({
    season,
    feeding: { days: ["sat"], away: [{ from: "2027-07-10", to: "2027-07-24" }] },
    stock: { batches: [{ id: "B1", made: "2027-06-01", volume: "500 mL" }] },
    ...planted({}, { id: "celery", crop: "celery", transplanted: "2027-05-25" }),
    feeds: [{ name: "seaweed", every: "14 days", rate: "5 mL per L", to: "2027-09-01" }],
    log: saturdays(20),
    signs: [
      { on: "2027-07-02", planting: "toms", sign: "blossom-end-rot" },
      { on: "2027-07-20", planting: "toms", sign: "blossom-end-rot" },
    ],
  });

  test.each([
    "2 plantings lie outside the season of 1 March 2028 to 31 October 2028: toms, celery: mend the year",
    "20 log entries lie outside the season of 1 March 2028 to 31 October 2028: 5 Jun 2027 to 16 Oct 2027:",
    "2 signs were seen outside the season of 1 March 2028 to 31 October 2028: 2 Jul 2027 to 20 Jul 2027:",
    "1 other feed lies outside the season of 1 March 2028 to 31 October 2028: seaweed:",
    "1 time away lies outside the season of 1 March 2028 to 31 October 2028: 10 Jul 2027 to 24 Jul 2027:",
    "1 batch had its last day outside the season of 1 March 2028 to 31 October 2028: batch B1:",
  ])("says once: %s", async (line) => {
    expect((await checked(rolled)).split(line)).toHaveLength(2);
  });

  test("has no note of its own for each entry and each sign", async () => {
    const { stdout } = await cli(["plan", "-", "--json", "--today", "2028-02-10"], {
      stdin: rolled,
    });
    const { notes } = JSON.parse(stdout) as { notes: readonly unknown[] };
    expect(notes).toEqual([]);
  });
});

test.each(["back-garden", "mid-season", "orchard-corner"])(
  "nothing is said of the example %s in its own season",
  async (name) => {
    const file = examplePath(name);
    const { stdout } = await cli(["check", file, "--today", "2027-07-05"]);
    expect(stdout).toContain("no problems");
    expect(stdout).not.toContain("outside the season");
  },
);

test("an apple tree whose bloom is last year's is fed as usual, and the bloom is told", async () => {
  const tree = { id: "tree", crop: "apple", transplanted: undefined, established: true };
  const garden = (bloom?: string): string => gardenText({ season, ...planted({ ...tree, bloom }) });
  const rounds = async (stdin: string): Promise<unknown> => {
    const { stdout } = await cli(["plan", "-", "--json"], { stdin, today: "2028-02-10" });
    return (JSON.parse(stdout) as { rounds: unknown }).rounds;
  };
  expect(await rounds(garden("2027-05-04"))).toEqual(await rounds(garden()));
  const told = await checked(garden("2027-05-04"));
  expect(told).toContain("tree: `bloom: 2027-05-04`: of an earlier year");
  expect(told).toContain("tree: full bloom on 5 May, usual for apple");
  expect(await checked(garden("2024-05-04"))).toContain("tree: `bloom: 2024-05-04`");
});
