/** What eggs the household eats, as its grower tells it and reads it. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { type GardenDiffers, gardenText, planted } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";

const garden = (differs: GardenDiffers): string =>
  scratchFile("eggs.yaml", gardenText({ ...planted({ transplanted: "2027-04-10" }), ...differs }));
const today = ["--today", "2027-04-01"];

async function told(...argv: string[]): Promise<string> {
  const { code, stdout, stderr } = await cli([...argv, ...today]);
  expect({ code, stderr: code === 0 ? "" : stderr }).toEqual({ code: 0, stderr: "" });
  return stdout.replaceAll(/\s+/g, " ");
}

const eggsOf = (text: string): number => Number(/from (\d+) eggs? \(/.exec(text)?.[1]);

describe("a batch of a litre", () => {
  const litre = (file: string): Promise<string> => told("batch", file, "--make", "1 L");

  test("tells whose shells it counts on, and what one holds", async () => {
    const usual = await litre(garden({}));
    expect(usual).toContain("(EU M, 5.5 g of dry shell each)");
    expect(usual).toMatch(/about 12 eggs, EU M/);
  });

  test("takes fewer large eggs and more small ones", async () => {
    const [small, usual, large] = await Promise.all(
      ["eu-s", "eu-m", "eu-xl"].map(async (eggs) => litre(garden({ stock: { eggs } }))),
    );
    expect(eggsOf(small ?? "")).toBe(14);
    expect(eggsOf(usual ?? "")).toBe(12);
    expect(eggsOf(large ?? "")).toBe(9);
    expect(large).toContain("(EU XL, 7.2 g of dry shell each)");
  });

  test("in US measures is of US large eggs", async () => {
    const file = garden({ amounts: "us", can: undefined });
    expect(await told("batch", file, "--make", "1 qt")).toContain(
      "(US large, 0.19 oz (5.5 g) of dry shell each)",
    );
  });

  test("tells spoons of the form that the recipe names, and of coarser shell", async () => {
    expect(await litre(garden({}))).toContain(
      "about 3.5 level tablespoons ground as fine as flour, 5.5 level tablespoons only crushed",
    );
  });
});

test("larger eggs: the plan saves fewer shells", async () => {
  const shells = async (stock: { readonly eggs?: string }): Promise<number> => {
    const plan = await told("plan", garden({ stock: { shells_per_week: 3, ...stock } }));
    return Number(/: (\d+) shells in all/.exec(plan)?.[1]);
  };
  expect(await shells({ eggs: "eu-xl" })).toBeLessThan(await shells({}));
});

test("a size that is not known is a problem with its place and a mend", async () => {
  const { code, stderr } = await cli(["check", garden({ stock: { eggs: "eu-m1" } }), ...today]);
  expect(code).toBe(1);
  expect(stderr.replaceAll(/\s+/g, " ")).toMatch(
    /eggs\.yaml:\d+:\d+: .*eu-m1.*did you mean `eu-m`/,
  );
});

test("next year's file keeps the size", async () => {
  const file = garden({ stock: { eggs: "us-jumbo" } });
  const { code, stdout } = await cli(["new", "--from", file, "--today", "2027-11-05"]);
  expect(code).toBe(0);
  expect(stdout).toMatch(/eggs: "?us-jumbo/);
});
