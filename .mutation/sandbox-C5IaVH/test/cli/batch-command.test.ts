// @ts-nocheck
import { readFileSync } from "node:fs";
import { Ajv } from "ajv";
import { describe, expect, test } from "vitest";
import type { BatchReport, RecipeReport } from "../../src/notes/batch-report.js";
import { gardenText } from "../support/a-garden.js";
import { cli, examplePath, examples, scratchFile } from "../support/run-cli.js";

const file = examplePath("back-garden");

async function report(...argv: string[]): Promise<BatchReport> {
  const { code, stdout, stderr } = await cli(["batch", "--json", ...argv]);
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return JSON.parse(stdout) as BatchReport;
}

async function recipeOf(...argv: string[]): Promise<RecipeReport> {
  const { recipe } = await report(...argv);
  if (recipe === undefined) throw new Error("no recipe");
  return recipe;
}

async function page(...argv: string[]): Promise<string> {
  const { code, stdout, stderr } = await cli(["batch", ...argv]);
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return stdout;
}

describe("without a garden file", () => {
  test("tells the recipe of a litre, with everything a grower needs", async () => {
    await expect(await page("--make", "1L")).toMatchFileSnapshot("../golden/batch-1-litre.txt");
    expect(await page()).toBe(await page("--make", "1 L"));
  });

  test("--make makes that much", async () => {
    expect((await recipeOf("--make", "750 mL")).makesMl).toBeCloseTo(750, 6);
    expect((await recipeOf("--make", "1 qt", "--amounts", "us")).makesMl).toBeCloseTo(946.353, 3);
  });

  test("--shells uses those shells", async () => {
    expect((await recipeOf("--shells", "30")).eggs).toBe(30);
  });

  test("--acid weighs that much citric acid, or that much vinegar by weight or volume", async () => {
    expect((await recipeOf("--acid", "50g")).acidG).toBeCloseTo(50, 9);
    const byVolume = await recipeOf("--acid", "1 L", "--vinegar", "5%");
    expect(byVolume.vinegarMl).toBeCloseTo(1000, 9);
    expect(byVolume.acidG).toBeCloseTo(50, 9);
    const byWeight = await recipeOf("--acid", "1005 g", "--vinegar", "5%");
    expect(byWeight.vinegarMl).toBeCloseTo(1000, 0);
  });

  test("its ways of making can be said", async () => {
    const plain = await recipeOf("--make", "1L");
    const monohydrate = await recipeOf("--make", "1L", "--monohydrate");
    expect(monohydrate.citricForm).toBe("monohydrate");
    expect(monohydrate.acidG).toBeGreaterThan(1.08 * plain.acidG);
    const pure = await recipeOf("--make", "1L", "--purity", "100%");
    expect(pure.shellG / plain.shellG).toBeCloseTo(0.94, 2);
    expect((await recipeOf("--temperature", "68F")).temperatureC).toBeCloseTo(20, 9);
    expect((await recipeOf("--temperature", "5 C")).temperatureC).toBe(5);
    expect((await recipeOf("--make", "1L", "--bottles", "250mL")).bottles).toBe(4);
    expect((await recipeOf("--vinegar", "8%")).vinegarPercent).toBe(8);
  });

  test("counts its days from today, or from --today", async () => {
    const today = await recipeOf("--make", "1L");
    expect([today.startOn, today.acidOn, today.readyOn]).toEqual([
      "2027-03-01",
      "2027-03-03",
      "2027-03-05",
    ]);
    expect(today.useBy).toEqual({ shelf: "2027-03-19", fridge: "2027-06-03" });
    const later = await recipeOf("--vinegar", "5%", "--today", "2027-06-01");
    expect([later.startOn, later.readyOn]).toEqual(["2027-06-01", "2027-06-10"]);
  });

  test("speaks in US measures where asked to", async () => {
    const text = await page("--make", "1 gal", "--amounts", "us");
    expect(text).toContain("A batch of 1 gal");
    expect(text).toMatch(/water +1 gal \+ 1\/4 cup\n/);
    expect(text).toMatch(/oz \(2\d\d g\) dry/);
    expect(text).toContain("8 of 1 pt");
    expect(text).toMatch(/mg of calcium per teaspoon/);
    expect(text).not.toMatch(/\d m?L\b/);
  });

  test("tells that citric stock turns white, and vinegar stock does not", async () => {
    expect(await page("--make", "1L")).toMatch(/fine white crystals settle/);
    expect(await page("--make", "1L", "--vinegar", "5%")).not.toMatch(/white/);
  });

  test("puts each caution at its step", async () => {
    const { steps } = await recipeOf("--make", "1L");
    const cautions = (key: string): string =>
      steps.find((step) => step.key === key)?.cautions.join(" ") ?? "";
    expect(cautions("mix")).toMatch(/never close the vessel while it fizzes/);
    expect(cautions("dry-shells")).toMatch(/salmonella/);
    expect(cautions("store")).toMatch(/children/);
    expect(cautions("use")).toMatch(/local rules/);
  });
});

describe.each(examples)("for the example %s", (name) => {
  test("the JSON report is as its schema says", async () => {
    const schema = new URL("../../schemas/batch.schema.json", import.meta.url);
    const validate = new Ajv({ allErrors: true }).compile(
      JSON.parse(readFileSync(schema, "utf8")) as object,
    );
    for (const size of [[], ["--make", "1L"]]) {
      const made = await report(examplePath(name), ...size);
      expect(validate(made), JSON.stringify(validate.errors)).toBe(true);
    }
  });

  test("each batch serves no more than it holds, and only while it is good", async () => {
    const { making } = await report(examplePath(name));
    expect(making?.batches.length).toBeGreaterThan(0);
    for (const batch of making?.batches ?? []) {
      expect(batch.serves.length).toBeGreaterThan(0);
      const servedMl = batch.serves.reduce((sum, { ml }) => sum + ml, 0);
      expect(servedMl).toBeLessThanOrEqual(batch.volumeMl);
      for (const { day } of batch.serves) {
        expect(day >= batch.readyOn && day <= batch.useBy).toBe(true);
      }
    }
  });
});

describe("with a garden file", () => {
  test("prints the making plan and the recipe of the next batch", async () => {
    await expect(await page(file)).toMatchFileSnapshot("../golden/back-garden.batch.txt");
  });

  test("the recipe is of the next batch: its volume, its days", async () => {
    const { making, recipe } = await report(file);
    const [next] = making?.batches ?? [];
    expect(recipe?.batch).toBe(next?.id);
    expect(recipe?.makesMl).toBeCloseTo(next?.volumeMl ?? 0, 6);
    expect([recipe?.startOn, recipe?.readyOn]).toEqual([next?.startOn, next?.readyOn]);
    expect(recipe?.eggs).toBe(next?.eggs);
  });

  test("a size leaves the making plan out and keeps the garden's ways", async () => {
    const path = scratchFile(
      "garden.yaml",
      gardenText({ stock: { acid: "vinegar", vinegar: "6 %", bottles: "330 mL" } }),
    );
    const { making, recipe } = await report(path, "--make", "1L");
    expect(making).toBeUndefined();
    expect(recipe).toMatchObject({ acid: "vinegar", bottles: 4, bottleMl: 330 });
    expect(recipe?.vinegarPercent).toBeCloseTo(6, 9);
  });

  test("shows bottles in hand, and that no batch is needed while they last", async () => {
    const path = scratchFile(
      "garden.yaml",
      gardenText({
        season: { from: "2027-06-20", to: "2027-07-20" },
        stock: { keep: "fridge", batches: [{ id: "B1", made: "2027-06-01", volume: "1 L" }] },
      }),
    );
    const text = await page(path, "--today", "2027-06-15");
    expect(text).toMatch(/B1 +1 L now/);
    expect(text).toContain("No batch is needed");
    expect((await report(path, "--today", "2027-06-15")).recipe).toBeUndefined();
  });

  test("tells a shortage with the day from which shells had to be saved", async () => {
    const path = scratchFile(
      "garden.yaml",
      gardenText({ stock: { shells_per_week: 1, shells_in_hand: 0 } }),
    );
    const { making } = await report(path, "--today", "2027-06-20");
    expect(making?.shells.shortage?.missingShells).toBeGreaterThan(0);
    expect(making?.shortages.length).toBeGreaterThan(0);
    const text = await page(path, "--today", "2027-06-20");
    expect(text).toMatch(/eggshells short: at 1 a week saving had to begin on \w{3} \d+ \w{3};/);
    expect(text).toContain("Too little stock");
  });

  test("plans from --today: batches are never begun before it", async () => {
    const { making } = await report(file, "--today", "2027-06-20");
    for (const batch of making?.batches ?? []) expect(batch.startOn >= "2027-06-20").toBe(true);
  });

  test("reads standard input", async () => {
    const stdin = readFileSync(file, "utf8");
    expect(await cli(["batch", "-"], { stdin })).toEqual(await cli(["batch", file]));
  });

  test("problems of the file end with exit code 1 and their places", async () => {
    const { code, stdout, stderr } = await cli(["batch", "-"], { stdin: "version: 1\n" });
    expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
    expect(stderr).toMatch(/^<stdin>:1:1: /);
  });

  test("vinegar stronger than a kitchen's is a problem of the file, not a fault", async () => {
    const stdin = gardenText({ stock: { acid: "vinegar", vinegar: "28 %" } });
    const { code, stderr } = await cli(["batch", "-"], { stdin });
    expect(code).toBe(1);
    expect(stderr).toContain("`28 %` is too large to be meant");
  });

  test("its batches are not planned with one acid and told with another", async () => {
    const { code, stderr } = await cli(["batch", file, "--vinegar", "5%"]);
    expect(code).toBe(2);
    expect(stderr).toContain("planned with citric acid: give a size");
  });
});

test.each([
  [["--make", "-1L"], "`-1L` is negative"],
  [["--make", "0 L"], "too small to be meant"],
  [["--make", "5"], "has no unit"],
  [["--make", "1 furlong"], "the unit `furlong` is not known"],
  [["--make", "50 g"], "a volume is needed"],
  [["--make", "5000 L"], "too large to be meant"],
  [["--make", "1L", "--shells", "3"], "--make and --shells: give one size"],
  [["--make", "1L", "--shells", "3", "--acid", "5g"], "--make and --shells and --acid"],
  [["--shells", "0"], "too small"],
  [["--shells", "-3"], "no number of shells"],
  [["--shells", "2.5"], "no number of shells"],
  [["--shells", "1e9"], "no number of shells"],
  [["--shells", "999999"], "too large"],
  [["--acid", "1 L"], "is a volume, a weight is needed"],
  [["--acid", "0 g"], "too small"],
  [
    ["--vinegar", "120%"],
    "`120%` is too large to be meant: check the number and the unit; 1 % to 25 %",
  ],
  [["--vinegar", "5"], "is not a percentage"],
  [["--vinegar", "5%", "--monohydrate"], "give one acid"],
  [["--purity", "10%"], "50 % to 100 %"],
  [["--temperature", "200"], "1 C to 60 C"],
  [["--temperature", "warm"], "is no temperature"],
  [["--bottles", "0 mL"], "too small"],
  [["--amounts", "cups"], "write metric, us or imperial"],
  [["--today", "soon"], "2027-06-01"],
])("wrong usage %j ends with exit code 2 and says so", async (argv, message) => {
  const { code, stdout, stderr } = await cli(["batch", ...argv]);
  expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
  expect(stderr).toContain(message);
});

test("no line is wider than the terminal", async () => {
  const { stdout } = await cli(["batch", file], { columns: 72 });
  for (const line of stdout.split("\n")) expect(line.length).toBeLessThanOrEqual(72);
});
