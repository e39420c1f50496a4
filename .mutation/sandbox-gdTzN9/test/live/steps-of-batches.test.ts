// @ts-nocheck
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { addDays, day } from "../../src/dates.js";
import { gardenPage } from "../../src/outputs/index.js";
import { shortDay } from "../../src/garden/index.js";
import type { Plan } from "../../src/season/season-plan.js";
import { gardenText } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";
import { growing } from "./a-live-garden.js";
import { fileText, log, logged } from "./logging.js";

interface Written {
  readonly log?: Record<string, string>[];
  readonly stock?: { readonly keep?: string; readonly batches?: Record<string, string>[] };
}

const fridge = { stock: { keep: "fridge" } };

function aFile(differs: object = fridge): string {
  return scratchFile("garden.yaml", `${gardenText({ ...growing({}), ...differs })}# the end\n`);
}
const written = (path: string): Written => parse(fileText(path)) as Written;
const batchesIn = (path: string): Record<string, string>[] => written(path).stock?.batches ?? [];

/** The first batch that the plan makes, and its days. */
async function planned(path: string): Promise<{ id: string; days: string[]; volumeMl: number }> {
  const { stdout } = await cli(["plan", path, "--json"], { today: "2027-03-01" });
  const batch = (JSON.parse(stdout) as Plan).stock?.making.batches[0];
  if (batch === undefined) throw new Error("the plan makes no batch");
  const { id, steps, volumeMl } = batch;
  return { id, days: steps.map((step) => step.day), volumeMl };
}

describe("a batch of the plan", () => {
  test("is listed with its first step, and gets a day for each one after", async () => {
    const path = aFile();
    const { id, days, volumeMl } = await planned(path);
    const [shells = "", acid = "", made = ""] = days;
    const stdout = await logged(path, shells, "--batch", id, "--step", "shells-out");
    expect(stdout).toContain("Written into the batches of Weir Cottage");
    expect(batchesIn(path)).toEqual([{ id, shells_out: shells, volume: `${volumeMl} mL` }]);
    await logged(path, acid, "--batch", id, "--step", "acid-in");
    await logged(path, made, "--batch", id, "--step", "made", "--volume", "480mL");
    expect(batchesIn(path)).toEqual([
      { id, shells_out: shells, acid_in: acid, made, volume: "480 mL" },
    ]);
    const { stdout: plan } = await cli(["plan", path, "--json"], { today: made });
    expect((JSON.parse(plan) as Plan).stock?.inHand).toMatchObject([{ id, leftMl: 480 }]);
  });

  test("whose first steps were forgotten is listed with their planned days", async () => {
    const path = aFile();
    const { id, days } = await planned(path);
    const [shells = "", acid = "", made = ""] = days;
    await logged(path, made, "--batch", id, "--step", "made");
    expect(batchesIn(path)).toMatchObject([{ id, shells_out: shells, acid_in: acid, made }]);
    const never = aFile();
    await logged(never, made, "--batch", id, "--step", "missed");
    expect(Object.keys(batchesIn(never)[0] ?? {})).toEqual(["id", "missed", "volume"]);
  });

  test("is found by its number where the file ties it to one", async () => {
    const batches = [{ id: "jar", planned: 2, shells_out: "2027-06-01", volume: "500 mL" }];
    const path = aFile({ stock: { keep: "fridge", batches } });
    await logged(path, "2027-06-03", "--batch", "2", "--step", "acid-in");
    expect(batchesIn(path)).toMatchObject([{ id: "jar", acid_in: "2027-06-03" }]);
    await logged(path, "2027-06-05", "--batch", "Batch 2", "--step", "made");
    expect(batchesIn(path)).toMatchObject([{ id: "jar", made: "2027-06-05" }]);
  });
});

describe("the same step again", () => {
  const batches = [{ id: "B1", made: "2027-06-05", volume: "500 mL" }];
  const path = (): string => aFile({ stock: { keep: "fridge", batches } });

  test("is written already", async () => {
    const file = path();
    const { code, stdout, stderr } = await log(
      file,
      "2027-06-07",
      ...["--batch", "B1", "--step", "made"],
    );
    expect({ code, stdout }).toEqual({ code: 0, stdout: "" });
    expect(stderr).toContain("the file says so of batch B1 already (made on 2027-06-05)");
    expect(stderr).toContain("nothing was written");
  });

  test("with another day or another volume corrects it", async () => {
    const file = path();
    await logged(file, "2027-06-07", "--batch", "B1", "--step", "made", "--on", "2027-06-06");
    await logged(file, "2027-06-07", "--batch", "B1", "--step", "made", "--volume", "0.4 L");
    expect(batchesIn(file)).toEqual([{ id: "B1", made: "2027-06-06", volume: "0.4 L" }]);
  });
});

test.each([
  [
    "before the one before",
    ["--batch", "B1", "--step", "acid-in", "--on", "2027-06-01"],
    1,
    "before",
  ],
  [
    "of a day to come",
    ["--batch", "B1", "--step", "acid-in", "--on", "2027-06-09"],
    1,
    "after today",
  ],
  ["of a batch that is not there", ["--batch", "B3", "--step", "made"], 2, "did you mean B1?"],
  ["of no batch", ["--step", "made"], 2, "name it with --batch"],
  ["that is none", ["--batch", "B1", "--step", "stirred"], 2, "shells-out"],
  ["with a planting", ["--batch", "B1", "--step", "made", "--planting", "toms"], 2, "--step"],
  [
    "with a volume that is none",
    ["--batch", "B1", "--step", "made", "--volume", "9"],
    2,
    "no unit",
  ],
])("a step %s is refused, and nothing is written", async (_, argv, code, message) => {
  const batches = [{ id: "B1", shells_out: "2027-06-02", volume: "500 mL" }];
  const path = aFile({ stock: { keep: "fridge", batches } });
  const result = await log(path, "2027-06-05", ...argv);
  expect(result.code).toBe(code);
  expect(result.stderr).toContain(message);
});

test("a batch that no plan has is listed when its volume is given", async () => {
  const path = aFile();
  await logged(path, "2027-06-05", "--batch", "mine", "--step", "made", "--volume", "1 L");
  expect(batchesIn(path)).toEqual([{ id: "mine", made: "2027-06-05", volume: "1 L" }]);
});

test("a bottle thrown away is no longer poured from", async () => {
  const batches = [{ id: "B1", made: "2027-05-10", volume: "1 L" }];
  const path = aFile({ stock: { keep: "fridge", batches } });
  await logged(path, "2027-06-12", "--batch", "B1", "--step", "thrown-away");
  const { stdout } = await cli(["plan", path, "--json"], { today: "2027-06-12" });
  const { stock } = JSON.parse(stdout) as Plan;
  expect(stock?.making.draws.filter(({ batch }) => batch === "B1")).toEqual([]);
  expect(stock?.making.batches.length).toBeGreaterThan(0);
});

describe("a feeding poured from", () => {
  test("a batch of the plan lists it, made on its planned day", async () => {
    const path = aFile();
    const { id, days, volumeMl } = await planned(path);
    const made = days[2] ?? "";
    const on = addDays(day(made), 3);
    await logged(path, on, "--planting", "toms", "--stock", "30 mL", "--batch", id);
    expect(written(path).log).toEqual([{ on, planting: "toms", stock: "30 mL", batch: id }]);
    expect(batchesIn(path)).toEqual([{ id, made, volume: `${volumeMl} mL` }]);
    const { stdout } = await cli(["plan", path, "--json"], { today: on });
    expect((JSON.parse(stdout) as Plan).stock?.inHand).toMatchObject([
      { id, leftMl: volumeMl - 30 },
    ]);
  });

  test("the bottle that the plan had for the round lists it too", async () => {
    const path = aFile();
    const { id } = await planned(path);
    const { stdout } = await cli(["plan", path, "--json"], { today: "2027-03-01" });
    const first = (JSON.parse(stdout) as Plan).rounds.find(({ beds }) => beds.length > 0);
    const on = first?.day ?? "";
    await logged(path, on);
    expect(written(path).log).toMatchObject([{ on, planting: "toms", batch: id }]);
    expect(batchesIn(path)).toMatchObject([{ id }]);
  });

  test("a batch under way is its bottling", async () => {
    const batches = [{ id: "B1", acid_in: "2027-06-10", volume: "1 L" }];
    const path = aFile({ stock: { keep: "fridge", batches } });
    const argv = ["--planting", "toms", "--stock", "30 mL", "--batch", "B1"];
    await logged(path, "2027-06-14", ...argv);
    expect(batchesIn(path)).toEqual([
      { id: "B1", acid_in: "2027-06-10", made: "2027-06-14", volume: "1 L" },
    ]);
  });

  test("a batch before it can be bottled leaves its bottling open, and says so", async () => {
    const begun = { id: "B1", acid_in: "2027-06-10", volume: "1 L" };
    const path = aFile({ stock: { keep: "fridge", batches: [begun] } });
    const argv = ["--planting", "toms", "--on", "2027-06-11", "--stock", "30 mL", "--batch", "B1"];
    const { code, stderr } = await log(path, "2027-06-20", ...argv);
    expect(code).toBe(0);
    expect(stderr).toContain("batch B1 cannot be bottled before Sat 12 Jun");
    expect(batchesIn(path)).toEqual([begun]);
  });

  test("a batch of the plan before its acid can be done does not list it", async () => {
    const path = aFile();
    const { id, days } = await planned(path);
    const [, acid = "", made = ""] = days;
    const argv = ["--planting", "toms", "--on", acid, "--stock", "30 mL", "--batch", id];
    const { code, stderr } = await log(path, made, ...argv);
    expect(code).toBe(0);
    expect(stderr).toContain(`batch 1 cannot be bottled before ${shortDay(day(made), "metric")}`);
    expect(written(path).log).toMatchObject([{ on: acid, batch: id }]);
    expect(batchesIn(path)).toEqual([]);
  });

  test("a batch found nowhere is written, with a warning", async () => {
    const path = aFile();
    const argv = ["--planting", "toms", "--stock", "30 mL", "--batch", "B9"];
    const { code, stderr } = await log(path, "2027-06-20", ...argv);
    expect(code).toBe(0);
    expect(stderr).toContain("pours from batch B9, which is not listed");
    expect(written(path).log).toMatchObject([{ batch: "B9" }]);
    expect(batchesIn(path)).toEqual([]);
  });
});

describe("log --undo", () => {
  test("takes back the entries of the last day, and prints them", async () => {
    const entry = (on: string, planting = "toms"): object => ({ on, planting, stock: "9 mL" });
    const path = aFile({ log: [entry("2027-06-01"), entry("2027-06-14"), entry("2027-06-14")] });
    const stdout = await logged(path, "2027-06-20", "--undo");
    expect(stdout).toContain("Taken out of the log of Weir Cottage");
    expect(stdout.match(/2027-06-14 +toms +9 mL/g)).toHaveLength(2);
    expect(written(path).log).toEqual([entry("2027-06-01")]);
    await logged(path, "2027-06-20", "--undo");
    const { code, stderr } = await log(path, "2027-06-20", "--undo");
    expect({ code, stderr }).toEqual({
      code: 0,
      stderr: `${path}: the log is empty; nothing was written\n`,
    });
  });

  test("says of a round that it was missed, and whose it was, as when it was written down", async () => {
    const path = aFile({ log: [{ on: "2027-07-31", missed: true }] });
    const stdout = await logged(path, "2027-08-02", "--undo");
    expect(stdout).toMatch(/2027-07-31 +all +missed *$/m);
    expect(stdout).not.toContain("true");
  });

  test("undoes what log has just written, to the byte", async () => {
    const path = aFile({ log: [{ on: "2027-05-01", planting: "toms" }] });
    const before = fileText(path);
    await logged(path, "2027-06-20", "--planting", "toms", "--stock", "9 mL");
    await logged(path, "2027-06-20", "--undo");
    expect(fileText(path)).toBe(before);
  });

  test("with --batch takes back its last day, and the batch with its only one", async () => {
    const batches = [
      { id: "B0", made: "2027-05-10", volume: "1 L" },
      { id: "B1", shells_out: "2027-06-01", acid_in: "2027-06-03", volume: "1 L" },
    ];
    const path = aFile({ stock: { keep: "fridge", batches } });
    const stdout = await logged(path, "2027-06-20", "--undo", "--batch", "B1");
    expect(stdout).toMatch(/Taken out of the batches of Weir Cottage\n +B1 +acid-in +2027-06-03/);
    expect(batchesIn(path)[1]).toEqual({ id: "B1", shells_out: "2027-06-01", volume: "1 L" });
    await logged(path, "2027-06-20", "--undo", "--batch", "B1");
    expect(batchesIn(path).map(({ id }) => id)).toEqual(["B0"]);
    const { code, stderr } = await log(path, "2027-06-20", "--undo", "--batch", "B1");
    expect(code).toBe(2);
    expect(stderr).toContain("there is no batch B1: did you mean B0?");
  });

  test.each([
    { steps: ["shells-out", "acid-in"], isPublished: false },
    { steps: ["shells-out", "acid-in", "made"], isPublished: true },
  ])("with --batch knows a batch by its number: %j", async ({ steps, isPublished }) => {
    const path = aFile({ ...fridge, calendar: { file: "weir.ics" } });
    const { id, days } = await planned(path);
    const out = join(dirname(path), "weir.ics");
    if (isPublished) await cli(["calendar", path, "--out", out], { today: "2027-03-01" });
    for (const [i, step] of steps.entries())
      await logged(path, days[i] ?? "", "--batch", id, "--step", step);
    const last = days[steps.length - 1] ?? "";
    for (const step of [...steps].reverse()) {
      const stdout = await logged(path, last, "--undo", "--batch", "1");
      expect(stdout).toMatch(new RegExp(`${id} +${step} `));
    }
    expect(batchesIn(path)).toEqual([]);
  });

  test("shows it with --dry-run and writes nothing", async () => {
    const path = aFile({ log: [{ on: "2027-06-01", planting: "toms" }] });
    const before = fileText(path);
    const { stdout } = await log(path, "2027-06-20", "--undo", "--dry-run");
    expect(stdout).toContain("To be taken out of the log");
    expect(fileText(path)).toBe(before);
  });
});

test("every line to type of calendar, page and batch can be typed", async () => {
  const path = aFile();
  const of = async (...argv: string[]): Promise<string> =>
    (await cli([...argv], { today: "2027-03-01" })).stdout;
  const calendar = (await of("calendar", path)).replaceAll("\r\n ", "");
  const page = gardenPage(JSON.parse(await of("plan", path, "--json")) as Plan);
  const batch = await of("batch", path);
  const { id, days } = await planned(path);
  for (const [i, step] of ["shells-out", "acid-in", "made"].entries()) {
    const line = `feedround log garden.yaml --batch ${id} --step ${step}`;
    for (const text of [calendar, page, batch]) expect(text).toContain(line);
    await logged(path, days[i] ?? "", ...line.split(" ").slice(3));
  }
  for (const text of [calendar, page]) expect(text).toContain("--step thrown-away");
});
