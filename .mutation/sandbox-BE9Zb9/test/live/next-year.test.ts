/** From the end of a season into the next one: the file that `new --from` writes. */
// @ts-nocheck

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import type { GardenFile } from "../../src/compiled/garden-file.js";
import type { Plan } from "../../src/season/season-plan.js";
import { gardenText, planted } from "../support/a-garden.js";
import { cli, examplePath, scratchFile, scratchFolder } from "../support/run-cli.js";

async function nextYear(file: string, today: string): Promise<string> {
  const { code, stdout, stderr } = await cli(["new", "--from", file, "--today", today]);
  expect({ code, stderr: code === 0 ? "" : stderr }).toEqual({ code: 0, stderr: "" });
  return stdout;
}

/** Checked as the file beside the one it is from, on a day before its season. */
async function checked(text: string, today: string, ownRules?: string): Promise<string> {
  // Its rules lie beside it in the examples; they are no part of what is asked here.
  const stdin = ownRules === undefined ? text : text.replace(`rules: ${ownRules}`, "");
  const { code, stdout, stderr } = await cli(["check", "-", "--today", today], { stdin });
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return stdout.replaceAll(/\s+/g, " ");
}

/** Comments of last year's made entries again, as a grower would. */
function chosen(text: string): string {
  return text
    .replaceAll(/^( *)# Of last year.*\n/gm, "")
    .replaceAll(/plantings: \[\]\n(?= +#)/g, "plantings:\n")
    .replaceAll(/^( {2,})# (?=- | {2})/gm, "$1");
}

test.each([
  ["back-garden", "2027-11-05"],
  ["mid-season", "2027-11-05"],
  ["mid-season", "2027-07-05"],
  ["shared-garden", "2027-10-20"],
  ["orchard-corner", "2028-06-01"],
])(
  "the example %s on %s: next year's file is sound, and so is the one after it",
  async (name, today) => {
    const rules = "orchard-rules.yaml";
    const next = await nextYear(examplePath(name), today);
    const told = await checked(next, today, rules);
    expect(told).toContain("no problems");
    expect(told).not.toContain("outside the season");
    const file = scratchFile("next.yaml", next.replace(`rules: ${rules}`, ""));
    const after = parse(await nextYear(file, today)) as GardenFile;
    const year = (text: string): number => Number(text.slice(0, 4));
    const before = parse(readFileSync(examplePath(name), "utf8")) as GardenFile;
    expect(year(after.season.from)).toBe(year(before.season.from) + 2);
    expect(year(after.season.to)).toBe(year(before.season.to) + 2);
  },
);

test.each([
  ["Europe/Dublin", "2027-03-20"],
  ["Pacific/Auckland", "2026-11-25"],
  ["Asia/Kolkata", "2028-02-29"],
])("the file that `new` writes for %s goes into its next year", async (timezone, today) => {
  const { stdout } = await cli(["new", "--timezone", timezone], { today });
  const next = await nextYear(scratchFile("garden.yaml", stdout), today);
  expect(await checked(next, today)).toContain("no problems, 0 rounds planned");
  const again = chosen(next);
  expect((parse(again) as GardenFile).beds[0]?.plantings).toHaveLength(3);
  expect(await checked(again, today)).not.toMatch(/ 0 rounds planned|outside the season/);
});

test("what is chosen again is planned as last year's was, a year later", async () => {
  const next = chosen(await nextYear(examplePath("back-garden"), "2027-11-05"));
  const plantings = async (stdin: string): Promise<readonly string[]> => {
    const { stdout } = await cli(["plan", "-", "--json", "--today", "2027-02-01"], { stdin });
    return (JSON.parse(stdout) as Plan).plantings.filter((p) => p.fed).map(({ id }) => id);
  };
  expect(await plantings(next)).toEqual(
    await plantings(readFileSync(examplePath("back-garden"), "utf8")),
  );
});

describe("a garden at the end of its season", () => {
  const plantings = [
    { id: "toms" },
    { id: "tree", crop: "apple", transplanted: "2019-11-20", bloom: "2027-05-04" },
    { id: "old-tree", crop: "pear", transplanted: undefined, removed: "2027-09-20" },
    { id: "cabbage", crop: "cabbage", transplanted: "2027-10-10" },
    { id: "hedge", crop: "hornbeam", transplanted: undefined, feed: false },
  ];
  const file = scratchFile(
    "garden.yaml",
    gardenText({
      season: { from: "2027-02-15", to: "2027-11-30" },
      id: "weir-cottage",
      stock: {
        batches: [
          { id: "B1", made: "2027-04-01", volume: "500 mL", keep: "fridge" },
          { id: "B2", made: "2027-10-01", volume: "500 mL", keep: "fridge" },
          { id: "B3", made: "2027-10-02", volume: "50 mL", keep: "fridge" },
        ],
      },
      ...planted(...plantings),
      log: [
        { on: "2027-10-20", planting: "toms", stock: "120 mL", batch: "B2" },
        { on: "2027-10-20", planting: "toms", stock: "50 mL", batch: "B3" },
      ],
      signs: [{ on: "2027-07-02", planting: "toms", sign: "blossom-end-rot" }],
    }),
  );

  test("keeps what goes on growing, and what is in its bottles", async () => {
    const { stdout, stderr } = await cli(["new", "--from", file, "--today", "2027-11-05"]);
    const next = parse(stdout) as GardenFile;
    expect(next.beds[0]?.plantings.map(({ id }) => id)).toEqual(["tree", "cabbage", "hedge"]);
    expect(next.beds[0]?.plantings[0]).toMatchObject({
      transplanted: "2019-11-20",
      bloom: "2028-05-04",
    });
    expect(next.stock?.batches).toEqual([
      {
        id: "B2",
        made: "2027-10-01",
        volume: "500 mL",
        keep: "fridge",
        left: "380 mL",
        left_on: "2027-11-05",
      },
    ]);
    expect({ log: next.log, signs: next.signs }).toEqual({ log: [], signs: [] });
    expect(stderr).toContain("comments, to choose from: toms, old-tree\n");
    expect(stderr).toContain("batches left out, empty or past their day: B1, B3\n");
    expect(await checked(stdout, "2027-11-05")).toContain("no problems");
  });

  test("writes a new file, and never over one that is there", async () => {
    const path = join(scratchFolder(), "next.yaml");
    const argv = ["new", path, "--from", file, "--today", "2027-11-05"];
    const { code, stdout, stderr } = await cli(argv);
    expect({ code, stdout }).toEqual({ code: 0, stdout: "" });
    expect(stderr.trimEnd().split("\n").at(-1)).toBe(
      `Next: take the # off what you grow again, then run \`feedround check ${path}\``,
    );
    const text = readFileSync(path, "utf8");
    expect(text).toBe((await cli(["new", "--from", file, "--today", "2027-11-05"])).stdout);
    expect((await cli(["new", file, "--from", file, "--today", "2027-11-05"])).code).toBe(3);
  });

  test.each([
    ["--name", "A"],
    ["--timezone", "UTC"],
  ])("has its own %s", async (...option) => {
    const { code, stderr } = await cli(["new", "--from", file, ...option]);
    expect(code).toBe(2);
    expect(stderr).toContain("leave out --name and --timezone");
  });
});

test("a garden with a problem is told, and nothing is written", async () => {
  const stdin = gardenText(planted({ crop: "tomatoe" }));
  const { code, stdout, stderr } = await cli(["new", "--from", "-"], { stdin });
  expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
  expect(stderr).toContain("<stdin>:");
});
