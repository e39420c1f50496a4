// @ts-nocheck
import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/season/season-plan.js";
import { cli, examplePath } from "../support/run-cli.js";
import { aheadDays, fedOf, givenDays } from "./a-live-garden.js";

const file = examplePath("mid-season");
const today = ["--today", "2027-07-05"];

async function planOf(...argv: string[]): Promise<Plan> {
  const { code, stdout } = await cli(["plan", file, "--json", ...today, ...argv]);
  expect(code).toBe(0);
  return JSON.parse(stdout) as Plan;
}

describe("the example in the middle of its season", () => {
  test.each([
    ["plan", ["plan", file, ...today]],
    ["batch", ["batch", file, ...today]],
  ])("%s reads well", async (name, argv) => {
    const { code, stdout, stderr } = await cli(argv);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    await expect(stdout).toMatchFileSnapshot(`../golden/mid-season.${name}.txt`);
  });

  test("is checked and explained as of that day", async () => {
    expect((await cli(["check", file, ...today])).stdout).toContain(
      "no problems, 14 rounds planned",
    );
    const why = await cli(["why", file, "toms", ...today]);
    expect(why.stdout).toContain("17 days after the feeding before");
    expect(why.stdout).toContain("level 1.5");
  });

  test("has the past as logged and the rest from today on", async () => {
    const plan = await planOf();
    expect(givenDays(plan)).toEqual(["2027-06-05", "2027-06-19"]);
    expect(aheadDays(plan)[0]).toBe("2027-07-06");
    expect(plan.rounds.filter((r) => !r.given).every((r) => r.day >= plan.today)).toBe(true);
  });

  test("notices the peppers that were forgotten, and feeds them", async () => {
    const plan = await planOf();
    expect(plan.notes.map(({ code, planting }) => [code, planting])).toEqual([
      ["sign", "toms"],
      ["missed", "peppers"],
    ]);
    expect(aheadDays(plan, "peppers")[0]).toBe("2027-07-06");
  });

  test("raises the feed of the toms by a step after the sign", async () => {
    const [next] = fedOf(await planOf()).filter(({ mix }) => !mix.given);
    expect(next?.feeding.level).toBe(1.5);
  });

  test("feeds the second courgettes and no longer the first", async () => {
    const plan = await planOf();
    expect(aheadDays(plan, "courgettes")).toEqual([]);
    expect(aheadDays(plan, "courgettes-2").length).toBeGreaterThan(0);
  });

  test("pours from the bottles in hand, oldest first, less what the log took", async () => {
    const plan = await planOf();
    expect(plan.stock?.inHand?.map(({ id, leftMl }) => [id, leftMl])).toEqual([
      ["B1", 240],
      ["B2", 500],
    ]);
    const poured = plan.rounds
      .filter((round) => !round.given)
      .flatMap((r) => r.beds.flatMap((b) => b.mixes.flatMap((m) => m.pours ?? [])))
      .map(({ batch }) => batch);
    expect(poured[0]).toBe("B1");
    expect(new Set(poured)).toEqual(new Set(["B1", "B2"]));
  });

  test("goes on from another day as that day finds it", async () => {
    const later = JSON.parse(
      (await cli(["plan", file, "--json", "--today", "2027-07-20"])).stdout,
    ) as Plan;
    expect(later.today).toBe("2027-07-20");
    expect(later.notes.some(({ code, planting }) => code === "missed" && planting === "toms")).toBe(
      true,
    );
  });
});
