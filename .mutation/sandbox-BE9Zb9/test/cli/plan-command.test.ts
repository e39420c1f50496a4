// @ts-nocheck
import { readFileSync } from "node:fs";
import { Ajv } from "ajv";
import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/season/season-plan.js";
import { cli, examplePath, examples, scratchFile, scratchFolder } from "../support/run-cli.js";

const planSchema = new URL("../../schemas/plan.schema.json", import.meta.url);

async function planOf(...argv: string[]): Promise<Plan> {
  const { stdout } = await cli(["plan", "--json", ...argv]);
  return JSON.parse(stdout) as Plan;
}

describe.each(examples)("the example %s", (name) => {
  const file = examplePath(name);

  test("prints a plan and nothing on standard error", async () => {
    const { code, stdout, stderr } = await cli(["plan", file]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    await expect(stdout).toMatchFileSnapshot(`../golden/${name}.plan.txt`);
  });

  test("has a JSON plan that its schema describes", async () => {
    const validate = new Ajv({ allErrors: true }).compile(
      JSON.parse(readFileSync(planSchema, "utf8")) as object,
    );
    const plan = await planOf(file);
    expect(validate(plan), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
    expect(plan.rounds.length).toBeGreaterThan(3);
  });

  test("prints the same plan twice", async () => {
    expect(await cli(["plan", "--json", file])).toEqual(await cli(["plan", "--json", file]));
  });
});

const file = examplePath("back-garden");

test("--from and --to leave only the rounds between them, and their totals", async () => {
  const whole = await planOf(file);
  const june = await planOf(file, "--from", "2027-06-01", "--to", "2027-06-30");
  const expected = whole.rounds.filter(({ day }) => day.startsWith("2027-06"));
  expect(expected.length).toBeGreaterThan(0);
  expect(june.rounds).toEqual(expected);
  expect(june.totals.rounds).toBe(expected.length);
});

test("days without a round say so", async () => {
  const { stdout } = await cli(["plan", file, "--from", "2027-03-01", "--to", "2027-03-02"]);
  expect(stdout).toContain("No feedings in these days.");
});

test("a garden on standard input is planned as from its file", async () => {
  const text = readFileSync(file, "utf8");
  expect(await cli(["plan", "-"], { stdin: text })).toEqual(await cli(["plan", file]));
});

test("problems go to standard error with the place and the mend, exit code 1", async () => {
  const path = scratchFile(
    "garden.yaml",
    readFileSync(file, "utf8").replace("crop: tomato", "crop: tomatoe"),
  );
  const { code, stdout, stderr } = await cli(["plan", path]);
  expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
  expect(stderr).toMatch(
    /garden\.yaml:\d+:\d+: the crop `tomatoe` is not known: did you mean `tomato`\?/,
  );
});

test("--json tells problems as data", async () => {
  const { code, stdout, stderr } = await cli(["plan", "-", "--json"], { stdin: "version: 1\n" });
  expect({ code, stderr }).toEqual({ code: 1, stderr: "" });
  const { problems } = JSON.parse(stdout) as { problems: { code: string; file: string }[] };
  expect(problems.length).toBeGreaterThan(1);
  expect(problems[0]).toMatchObject({ code: "schema-required", file: "<stdin>" });
});

test.each([
  ["a missing file", "no-such.yaml"],
  ["a folder", scratchFolder()],
  ["a path through a file", `${file}/garden.yaml`],
])("%s ends with exit code 3 and one line", async (_, path) => {
  const { code, stdout, stderr } = await cli(["plan", path]);
  expect({ code, stdout }).toEqual({ code: 3, stdout: "" });
  expect(stderr.trim().split("\n")).toHaveLength(1);
});

test.each([
  [["plan"]],
  [["plant", file]],
  [["plan", file, "--from", "soon"]],
  [["plan", file, "--colour"]],
  [["plan", file, "--from", "2027-06-02", "--to", "2027-06-01"]],
])("wrong usage %j ends with exit code 2 and says so", async (argv) => {
  const { code, stdout, stderr } = await cli(argv);
  expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
  expect(stderr).not.toBe("");
});

test("a wrong usage names the help that shows the right one", async () => {
  expect((await cli(["plan"])).stderr).toContain("`feedround plan --help`");
  expect((await cli(["plant", file])).stderr).toContain("`feedround --help`");
});

test("a garden's own rules are found beside it and used", async () => {
  const plan = await planOf(examplePath("orchard-corner"));
  expect(plan.plantings.find((p) => p.id === "pumpkins")?.rules[0]).toBe("our-pumpkins");
});

test("a rule file that is missing is a problem of the garden file", async () => {
  const text = readFileSync(examplePath("orchard-corner"), "utf8");
  const { code, stderr } = await cli(["plan", scratchFile("garden.yaml", text)]);
  expect(code).toBe(1);
  expect(stderr).toMatch(
    /garden\.yaml:\d+:\d+: the rule file `orchard-rules\.yaml` cannot be read/,
  );
});

test("headings are bold on a terminal only", async () => {
  expect((await cli(["plan", file], { color: true })).stdout).toContain("\u001b[1mWeir Cottage");
  expect((await cli(["plan", file])).stdout).not.toContain("\u001b");
});

test("no line is wider than the terminal", async () => {
  const { stdout } = await cli(["plan", file], { columns: 72 });
  for (const line of stdout.split("\n")) expect(line.length).toBeLessThanOrEqual(72);
});

describe("--today", () => {
  const midSeason = examplePath("mid-season");
  const today = ["--today", "2027-07-05"];

  test("plans a season under way: the log is past, a missed round and a sign are told", async () => {
    const { rounds, notes, stock, today: from } = await planOf(midSeason, ...today);
    expect(from).toBe("2027-07-05");
    const given = rounds.filter((round) => round.given);
    expect(given.length).toBeGreaterThan(2);
    expect(rounds.every((round) => round.given === true || round.day >= from)).toBe(true);
    expect(notes.map((note) => note.code)).toEqual(expect.arrayContaining(["missed", "sign"]));
    expect(stock?.inHand?.some((bottle) => bottle.id === "B2")).toBe(true);
  });

  test("is the day for check and why too; on the day of the clock the log lies ahead", async () => {
    for (const argv of [["plan"], ["check"], ["why"]]) {
      expect((await cli([...argv, midSeason, ...today])).code).toBe(0);
      expect((await cli([...argv, midSeason])).code).toBe(1);
    }
  });
});
