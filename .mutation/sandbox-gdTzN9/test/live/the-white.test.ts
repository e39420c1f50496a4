/** The white in the bottle: kept by the recipe, reckoned with in the plan, asked about once. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/season/season-plan.js";
import { type GardenDiffers, gardenText, planted } from "../support/a-garden.js";
import { cli, examplePath, scratchFile } from "../support/run-cli.js";

const today = "2027-06-16";
const b1 = { id: "B1", made: "2027-06-12", volume: "1 L", keep: "fridge" };

function gardenWith(stock: object, differs: GardenDiffers = {}): string {
  return scratchFile("garden.yaml", gardenText({ stock, ...differs }));
}

function withBottles(...more: readonly object[]): string {
  return gardenWith({ batches: more.map((bottle) => ({ ...b1, ...bottle })) });
}

/** Words as a grower reads them, in lines of any length. */
async function said(...argv: readonly string[]): Promise<string> {
  const { code, stdout, stderr } = await cli(argv, { today });
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return stdout.replaceAll("\u00a0", " ").replace(/\s+/g, " ");
}

async function planOf(path: string): Promise<Plan> {
  return JSON.parse(await said("plan", path, "--json")) as Plan;
}

const times = (text: string, words: string): number => text.split(words).length - 1;

describe("the recipe", () => {
  test("keeps the white, and says so where the stock is made", async () => {
    const path = gardenWith({});
    for (const text of [await said("batch", path), await said("batch", "--make", "1L")]) {
      expect(text).toMatch(/Grind the dry shells to a fine powder/);
      expect(text).toMatch(/keep back \d+ mL for washing the sieve/);
      expect(text).toMatch(/coarse sieve or nylon mesh, no cloth or paper/);
      expect(text).toMatch(/If the pot is white already, do just the same/);
      expect(text).toMatch(/shell left on the sieve, about [\d.]+ g: it counts towards the next/);
      expect(text).not.toMatch(/strain it through a cloth/i);
    }
    expect((await planOf(path)).stock?.recipes[0]?.steps).toHaveLength(8);
  });

  test.each([
    ["5%", /Vinegar stings eyes/, /burns skin/],
    ["10%", /burns skin and eyes: wear gloves and goggles/, /not for kitchens/],
    ["21%", /Acid above 20 % is not for kitchens/, /stings/],
  ])("with vinegar of %s cautions as its strength asks", async (percent, has, hasNot) => {
    const text = await said("batch", "--make", "1L", "--vinegar", percent);
    expect(text).toMatch(has);
    expect(text).not.toMatch(hasNot);
  });

  test("is made outdoors where its gas would fill a room", async () => {
    const outdoors = "work outdoors or with doors open, never in a cellar";
    expect(await said("batch", "--make", "8L")).not.toContain(outdoors);
    const text = await said("batch", "--make", "10L");
    expect(text).toMatch(/gives off about 11\d L of carbon dioxide, over 0.5 % of the air/);
    expect(text).toContain(outdoors);
  });

  test("takes a larger vessel the more gas there is", async () => {
    const vesselL = async (percent: string): Promise<number> =>
      Number(
        /vessel open, ([\d.]+) L/.exec(
          await said("batch", "--make", "1L", "--vinegar", percent),
        )?.[1],
      );
    expect(await vesselL("4%")).toBeLessThan(await vesselL("8%"));
    expect(await vesselL("8%")).toBeLessThan(await vesselL("20%"));
  });

  test("names what the vessel may be of, and what never meets acid", async () => {
    const text = await said("batch", "--make", "1L");
    expect(text).toMatch(/Glass or food plastic; acid eats aluminium, zinc and copper/);
    expect(text).toMatch(/of it for food again, and never bring acid and bleach together/);
  });

  test("of the strongest vinegar settles calcium acetate", async () => {
    expect(await said("batch", "--make", "1L", "--vinegar", "25%")).toMatch(/fine calcium acetate/);
    expect(await said("batch", "--make", "1L", "--vinegar", "20%")).toMatch(/all dissolved/);
  });
});

describe("a bottle strained through a cloth", () => {
  const cloth = withBottles({ strained: "cloth" });

  test("is weaker by the white that stayed behind", async () => {
    const strengthOf = async (strained: string): Promise<number> =>
      (await planOf(withBottles({ strained }))).stock?.inHand?.[0]?.strengthGPerL ?? NaN;
    expect(await strengthOf("mesh")).toBeCloseTo(16.1, 1);
    expect(await strengthOf("cloth")).toBeCloseTo(3.8, 1);
  });

  test("says so in `why` and on its label", async () => {
    const why = await said("why", cloth, "toms");
    expect(why).toContain("B1 holds 3.82 mg of calcium per mL");
    expect(why).toContain(
      "strength taking it that about 20 % of the white comes through the cloth",
    );
    expect(await said("labels", cloth, "--batch", "B1")).toMatch(
      /About 3\.8 g calcium per litre \(cloth\)/,
    );
  });

  test("that cannot reach the target is told once, with what to do", async () => {
    for (const command of ["plan", "check"]) {
      const text = await said(command, cloth);
      expect(times(text, "of the 44 mg of calcium per litre aimed at")).toBe(1);
      expect(text).toMatch(/the cloth kept the white back: make a new batch/);
    }
  });
});

describe("a bottle that nobody said how it was strained", () => {
  test("is taken as strained through a mesh, and the doubt is shown", async () => {
    const path = withBottles({});
    expect(await said("plan", path)).toMatch(/B1: strained through a mesh, .* 90 % of the white/);
    expect(await said("why", path, "toms")).toContain(
      "taking it that it was strained through a mesh",
    );
    expect(await said("labels", path, "--batch", "B1")).toContain("(mesh?)");
  });

  test("is asked about once, however many there are", async () => {
    const text = await said("check", withBottles({}, { id: "B2" }));
    expect(times(text, "batch B1, batch B2: strained through a mesh or a cloth?")).toBe(1);
    expect(times(text, "a mesh or a cloth?")).toBe(1);
  });

  test.each([
    ["it is said", { strained: "mesh" }],
    ["its strength was measured", { strength: "15 g/L" }],
    ["it is of vinegar, which keeps its calcium dissolved", { acid: "vinegar" }],
    ["it is empty", { left: "0 mL" }],
    ["it is past its day", { use_by: "2027-06-14" }],
  ])("is not asked about where %s", async (_, bottle) => {
    const path = withBottles(bottle);
    expect(await said("check", path)).not.toContain("a mesh or a cloth?");
    expect(await said("plan", path)).not.toContain("B1: strained");
  });
});

test("anything else is no strainer, and has its place in the file", async () => {
  const { code, stderr } = await cli(["check", withBottles({ strained: "sock" })], { today });
  expect(code).toBe(1);
  expect(stderr).toMatch(/garden\.yaml:\d+:\d+: .*sock/);
  expect(stderr).toMatch(/mesh.*cloth/);
});

test("what was not bottled yet was not strained", async () => {
  const begun = { id: "B1", shells_out: "2027-06-12", volume: "1 L", strained: "mesh" };
  const { code, stderr } = await cli(["check", gardenWith({ batches: [begun] })], { today });
  expect(code).toBe(1);
  expect(stderr).toContain("the batch has `strained` and is not bottled");
});

test("a US garden is told of it in its own measures", async () => {
  const us = (stock: object): string => gardenWith(stock, { amounts: "us" });
  expect(await said("labels", us({ batches: [b1] }), "--batch", "B1")).toMatch(
    /About 79\.\d mg calcium per teaspoon \(mesh\?\)/,
  );
  expect(await said("check", us({ pour: "clear", batches: [b1] }))).toMatch(
    /holds 0\.\d+ mg of calcium per teaspoon: .* of the 168 mg of calcium per gallon aimed at/,
  );
  expect(await said("batch", us({}))).toMatch(/with up to [\d.]+ mg per teaspoon dissolved/);
});

describe("a feed that cannot reach its target", () => {
  const clear = gardenWith({ pour: "clear", batches: [b1, { ...b1, id: "B2" }] });

  test.each(["plan", "check"])("poured clear is told once a season by %s", async (command) => {
    const text = await said(command, clear);
    expect(text).toContain("carries 1 of the 44 mg of calcium per litre aimed at");
    expect(times(text, "aimed at")).toBe(1);
    expect(text).toContain("`stock: { pour: shaken }`");
  });

  test("is not told by the calendar, through which it would move day by day", async () => {
    expect(await said("calendar", clear)).not.toContain("aimed at");
  });

  test("of a weak bottle is told once for that bottle", async () => {
    const text = await said("check", withBottles({ strength: "2 g/L" }));
    expect(text).toMatch(/batch B1 holds 2 g .* carries 10 of the 44 mg/);
    expect(times(text, "aimed at")).toBe(1);
  });

  test("of weak vinegar is told for the batches to make", async () => {
    expect(await said("check", gardenWith({ acid: "vinegar", vinegar: "1 %" }))).toMatch(
      /a new batch holds 3\.\d g .*: make it with stronger vinegar, or with citric acid/,
    );
  });

  test.each([
    ["a usual bottle", withBottles({})],
    [
      "the highest rate that the grower asked for",
      gardenWith({ batches: [b1] }, planted({ level: 2 })),
    ],
    [
      "millilitres of the grower's own",
      gardenWith({ pour: "clear" }, planted({ rate: "3 mL per L" })),
    ],
  ])("is not told of %s", async (_, path) => {
    expect(await said("check", path)).not.toContain("aimed at");
  });
});

test("acid that is not for kitchens is told by plan and check", async () => {
  const path = gardenWith({ acid: "vinegar", vinegar: "24 %" });
  for (const command of ["plan", "check"])
    expect(await said(command, path)).toContain("above 20 % it is not for kitchens");
});

test("who sprays is told that the white clogs the nozzle", async () => {
  expect(await said("plan", examplePath("orchard-corner"))).toContain("clogs the nozzle");
  expect(await said("plan", examplePath("back-garden"))).not.toContain("clogs the nozzle");
});
