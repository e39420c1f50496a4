import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/season/season-plan.js";
import { gardenText } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";
import { aheadDays, fedOf, givenDays, growing } from "./a-live-garden.js";

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
