/** What the cans pour is what comes off the bottles, round by round, through the commands. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/season/season-plan.js";
import { ledgerSum } from "../../src/stock/ledger/ledger.js";
import { gardenText, planted, type GardenDiffers } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";
import { growing, planOn, problemsOn } from "./a-live-garden.js";

const bottle = (volume: string): object => ({ id: "B1", made: "2027-05-10", volume });

async function planBy(path: string, today: string): Promise<Plan> {
  const { code, stdout, stderr } = await cli(["plan", path, "--json"], { today });
  expect({ code, stderr }).toMatchObject({ code: 0 });
  return JSON.parse(stdout) as Plan;
}

function leftIn(plan: Plan): Record<string, number> {
  return Object.fromEntries((plan.stock?.inHand ?? []).map(({ id, leftMl }) => [id, leftMl]));
}

describe("a season that is logged as planned", () => {
  const two = (waterA: string, waterB: string): GardenDiffers =>
    planted({ water: waterA }, { id: "more", water: waterB });

  test.each<[string, GardenDiffers]>([
    ["us", { can: "2 gal", ...two("5 gal", "3 gal") }],
    ["imperial", { can: "2 gal", ...two("5 gal", "3 gal") }],
    ["metric", { can: "9 L", ...two("22 L", "7.5 L") }],
  ])("takes off two bottles what the cans pour, in %s measures", async (amounts, differs) => {
    const stock = {
      keep: "fridge",
      batches: [bottle("95.5 mL"), { id: "B2", made: "2027-05-11", volume: "1 L" }],
    };
    const path = scratchFile("garden.yaml", gardenText({ amounts, stock, ...differs }));
    const { rounds } = await planBy(path, "2027-06-01");
    let left: Record<string, number> = { B1: 95.5, B2: 1000 };
    for (const { day } of rounds) {
      const plan = await planBy(path, day);
      expect(leftIn(plan)).toEqual(left);
      const mixes = plan.rounds.find((r) => r.day === day)?.beds.flatMap((bed) => bed.mixes) ?? [];
      for (const { fills, stockMl, pours = [] } of mixes) {
        expect(stockMl).toBe(ledgerSum(fills.map((fill) => fill.count * fill.stockMl)));
        expect(stockMl).toBe(ledgerSum(pours.map(({ ml }) => ml)));
        for (const { batch, ml } of pours)
          left = { ...left, [batch]: ledgerSum([left[batch] ?? 0, -ml]) };
      }
      const { code, stderr } = await cli(["log", path, "--on", day], { today: day });
      expect({ code, stderr }).toMatchObject({ code: 0 });
      expect(leftIn(await planBy(path, day))).toEqual(left);
    }
    expect(left.B1).toBe(0);
    expect(left.B2).toBeLessThan(1000);
  });
});

describe("a bottle emptied by the log", () => {
  const toms = (on: string, stock: string): object => ({
    on,
    planting: "toms",
    stock,
    batch: "B1",
  });
  const stock = { keep: "fridge", batches: [bottle("50 mL")] };
  const days = ["2027-06-05", "2027-06-16", "2027-06-28"] as const;
  const logOf = (amounts: readonly string[]): object[] =>
    days.map((day, i) => toms(day, amounts[i] ?? ""));

  test("in tenths of a mL is empty, and no entry is too much", () => {
    const plan = planOn("2027-06-29", { stock, log: logOf(["10.1 mL", "10.1 mL", "29.8 mL"]) });
    expect(leftIn(plan)).toEqual({ B1: 0 });
    expect(plan.notes).toEqual([]);
  });

  test("by a little more than it held is empty, with a note", () => {
    const plan = planOn("2027-06-29", { stock, log: logOf(["10 mL", "10 mL", "31.5 mL"]) });
    expect(leftIn(plan)).toEqual({ B1: 0 });
    expect(plan.notes).toMatchObject([
      {
        code: "log",
        planting: "toms",
        day: "2027-06-28",
        message:
          "the log gives 31.5 mL from batch B1 on Mon 28 Jun, 1.5 mL more than was left: it is taken as empty since",
      },
    ]);
  });

  test("by much more than it held is a problem", () => {
    const problems = problemsOn("2027-06-29", {
      ...growing({}),
      stock,
      log: logOf(["10 mL", "10 mL", "33 mL"]),
    });
    expect(problems).toMatchObject([
      {
        code: "log-over-batch",
        message: "the log gives 3 mL more from batch B1 than was left in it",
      },
    ]);
  });
});
