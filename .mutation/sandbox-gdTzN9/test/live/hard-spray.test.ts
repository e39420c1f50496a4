/** A spray that the grower's own water does not wholly dissolve: told before the nozzle tells it. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { calciumAndCan } from "../../src/words/index.js";
import { gardenText, planted, referenceBottle } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";
import { fedOf, planOn } from "./a-live-garden.js";

const today = "2027-03-01";
const tree = { id: "tree", crop: "apple", plants: 1, transplanted: "2012-11-20", spray: "2 L" };

function garden(hardness: string, planting: object = {}, differs: object = {}): object {
  return {
    ...planted({}, { ...tree, bloom: "2027-05-05", ...planting }),
    ...referenceBottle,
    source_water: { hardness },
    ...differs,
  };
}

const warningsIn = (differs: object): string[] =>
  planOn(today, differs)
    .warnings.filter(({ code }) => code === "spray-solid")
    .map(({ message }) => message);

/** Of the first spray. */
function solidMgPerL(hardness: string, level: number): number {
  const [spray] = fedOf(planOn(today, garden(hardness, { level })), "tree");
  return spray?.mix.can?.settlesMgPerL ?? NaN;
}

describe("a tree sprayed at twice the rule's rate", () => {
  test("is warned of in hard water, once for the season, with what to do", () => {
    const plan = planOn(today, garden("200 mg/L", { level: 2 }));
    const sprays = fedOf(plan, "tree").length;
    const [warning, ...others] = plan.warnings.filter(({ code }) => code === "spray-solid");
    expect(others).toEqual([]);
    expect(warning).toEqual({
      code: "spray-solid",
      message: expect.stringMatching(
        `^tree: in ${sprays} rounds up to 1\\d\\d mg per litre of the spray does not dissolve in your water: it clogs the nozzle`,
      ) as unknown,
      mend: expect.stringContaining("softer water") as unknown,
    });
  });

  test.each(["0 mg/L", "20 mg/L"])("is not in water of %s", (hardness) => {
    expect(warningsIn(garden(hardness, { level: 2 }))).toEqual([]);
  });

  test("is not where nobody knows the water, nor at the rule's own rate", () => {
    expect(warningsIn(garden("", { level: 2 }, { source_water: undefined }))).toEqual([]);
    expect(warningsIn(garden("300 mg/L"))).toEqual([]);
  });

  test("leaves more, the harder the water and the stronger the spray, and the same in any unit", () => {
    const byHardness = [0, 50, 100, 200, 300].map((mg) => solidMgPerL(`${mg} mg/L`, 2));
    const byLevel = [1, 1.5, 1.75, 2].map((level) => solidMgPerL("200 mg/L", level));
    for (const row of [byHardness, byLevel]) {
      expect(row).toEqual([...row].sort((a, b) => a - b));
      expect(row[0]).toBe(0);
      expect(row.at(-1)).toBeGreaterThan(100);
    }
    expect(solidMgPerL("11.2 dH", 2)).toBeCloseTo(solidMgPerL("200 mg/L", 2), -1);
  });

  test("is told by `why` what it does to the nozzle; a can is only stirred", () => {
    const [spray] = fedOf(planOn(today, garden("200 mg/L", { level: 2 })), "tree");
    const [can] = fedOf(planOn(today, garden("200 mg/L")), "toms");
    if (spray === undefined || can?.mix.can === undefined) throw new Error("nothing is fed");
    expect(calciumAndCan(spray.mix, "metric")).toContain(
      "does not dissolve: it clogs the nozzle and leaves white spots",
    );
    const thick = { ...can.mix, can: { ...can.mix.can, settlesMgPerL: 30 } };
    expect(calciumAndCan(thick, "metric")).toContain("30 mg/L of fine solid settles: stir");
    expect(calciumAndCan(can.mix, "metric")).not.toContain("solid");
  });
});

test.each([
  ["metric", "heat not in air above 29.4 degrees C, in which sprayed leaves may burn"],
  ["us", "heat not in air above 85 degrees F, in which sprayed leaves may burn"],
])("`why` tells in %s measures above which heat a spray burns leaves", async (amounts, told) => {
  const file = scratchFile(`${amounts}.yaml`, gardenText(garden("50 mg/L", {}, { amounts })));
  const of = async (planting: string): Promise<string> =>
    (await cli(["why", file, planting], { today })).stdout.replace(/\s+/g, " ");
  expect(await of("tree")).toContain(told);
  expect(await of("toms")).not.toContain("leaves may burn");
});

test("the grower reads it in plan and check, and asks for no fixed limit", async () => {
  const file = scratchFile("garden.yaml", gardenText(garden("200 mg/L", { level: 2 })));
  for (const command of ["plan", "check"]) {
    const { stdout } = await cli([command, file], { today });
    expect(stdout.replace(/\s+/g, " "), command).toContain("it clogs the nozzle");
  }
  const beyond = scratchFile("beyond.yaml", gardenText(garden("200 mg/L", { level: 2.5 })));
  const { code, stderr } = await cli(["plan", beyond], { today });
  expect(code).toBe(1);
  expect(stderr.replace(/\s+/g, " ")).toContain("In hard water not all of that dissolves");
});
