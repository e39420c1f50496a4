// @ts-nocheck
import { describe, expect, test } from "vitest";
import { gardenText } from "../support/a-garden.js";
import { cli } from "../support/run-cli.js";

/** 8 L at 1 mL to the litre from a half-litre sprayer: 0.5 mL in each of 16. */
const thin = gardenText({
  sprayer: "500 mL",
  beds: [
    {
      id: "tree",
      plantings: [{ id: "apple", crop: "apple", spray: "8 L", rate: "1 mL per L" }],
    },
  ],
});

describe("cans too thin to measure share the stock of one jug", () => {
  test.each([
    ["plan", "16 sprayers of 500 mL  100 mL each from a jug (8 mL in 1.6 L)"],
    [
      "sheet",
      "16 sprayers × <b>100 mL</b> from a jug of 1.6 L with 8 mL in it, filled up to 500 mL",
    ],
    ["calendar", "16 sprayers × 100 mL from a jug (8 mL in 1.6 L)"],
    ["why", "measured as 100 mL from a jug (8 mL in 1.6 L)"],
  ])("in %s", async (command, told) => {
    const { stdout } = await cli([command, "-", ...(command === "why" ? ["apple"] : [])], {
      stdin: thin,
    });
    const lines = stdout.replaceAll("\r\n ", "").replaceAll("\\,", ",");
    expect(lines.includes(told) || lines.replaceAll(/\s+/g, " ").includes(told)).toBe(true);
    expect(lines).not.toMatch(/[^.\d]0\.5 mL (of stock|each)/);
  });

  test("as a fact for other programs, its cans adding up to the jug", async () => {
    const { stdout } = await cli(["plan", "-", "--json"], { stdin: thin });
    const [mix] = (JSON.parse(stdout) as ThinPlan).rounds[0]?.beds[0]?.mixes ?? [];
    expect(mix?.stockMl).toBe(8);
    expect(mix?.fills).toMatchObject([
      { count: 16, stockMl: 0.5, jug: { stockMl: 8, waterL: 1.6, takeL: 0.1 } },
    ]);
  });
});

test("a jug of more than is needed comes off the bottle whole", async () => {
  const stdin = gardenText({
    sprayer: "500 mL",
    stock: { batches: [{ id: "B1", made: "2027-05-28", volume: "500 mL" }] },
    beds: [
      {
        id: "tree",
        plantings: [{ id: "apple", crop: "apple", spray: "200 mL", rate: "1 mL per L" }],
      },
    ],
  });
  const { stdout } = await cli(["plan", "-", "--json"], { stdin, today: "2027-06-01" });
  const { rounds, stock } = JSON.parse(stdout) as ThinPlan;
  const [mix] = rounds[0]?.beds[0]?.mixes ?? [];
  expect(mix).toMatchObject({ stockMl: 1, fills: [{ stockMl: 0.2, jug: { stockMl: 1 } }] });
  expect(stock.making.draws[0]?.ml).toBe(1);
});

interface ThinPlan {
  readonly stock: { readonly making: { readonly draws: readonly { readonly ml: number }[] } };
  readonly rounds: readonly {
    readonly beds: readonly {
      readonly mixes: readonly { readonly stockMl: number; readonly fills: readonly object[] }[];
    }[];
  }[];
}

test("a part can too thin to measure is left to the full ones", async () => {
  const stdin = gardenText({
    beds: [
      {
        id: "south",
        plantings: [
          { id: "toms", crop: "tomato", plants: 1, transplanted: "2027-05-20", water: "20.3 L" },
        ],
      },
    ],
  });
  const { stdout } = await cli(["plan", "-"], { stdin });
  expect(stdout).toContain("2 cans of 10 L");
  expect(stdout).not.toContain("part can");
});
