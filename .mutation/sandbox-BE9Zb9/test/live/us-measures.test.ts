/** A garden in US measures, as its grower reads it in every command. */
// @ts-nocheck

import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import { mlPerCup, mlPerTeaspoon } from "../../src/garden/index.js";
import type { Plan } from "../../src/season/season-plan.js";
import { ledgerMl, ledgerSum } from "../../src/stock/index.js";
import { gardenText } from "../support/a-garden.js";
import { cli, examplePath, scratchFile, scratchFolder } from "../support/run-cli.js";

const metric = /\d mL|\d L\b|litre|per L\b|g\/L/;

/** Small beds, sprayed trees, another feed, a sign, and a bottle that is nearly empty. */
const smallBeds = gardenText({
  timezone: "America/New_York",
  amounts: "us",
  can: undefined,
  source_water: { hardness: "6 gpg" },
  stock: { batches: [{ id: "B1", made: "2027-05-20", volume: "1 cup", left: "2 tsp" }] },
  feeds: [{ name: "seaweed", rate: "1 tbsp per gal", every: "14 days", from: "2027-06-01" }],
  signs: [{ on: "2027-06-20", planting: "toms", sign: "blossom-end-rot" }],
  log: [{ on: "2027-06-10", planting: "basil", stock: "1 tbsp" }],
  beds: [
    {
      id: "south",
      plantings: [
        { id: "toms", crop: "tomato", plants: 3, transplanted: "2027-05-01" },
        { id: "peppers", crop: "bell pepper", transplanted: "2027-05-10", water: "0.9 gal" },
      ],
    },
    {
      id: "pots",
      plantings: [
        {
          id: "pot",
          crop: "tomato",
          transplanted: "2027-05-01",
          water: "1 qt",
          rate: "2 tsp per gal",
        },
        { id: "basil", crop: "basil", plants: 2, sown: "2027-05-01", water: "1 cup per plant" },
      ],
    },
    { id: "tree", plantings: [{ id: "apple", crop: "apple", plants: 1 }] },
  ],
});

describe.each([
  ["small beds", scratchFile("small.yaml", smallBeds), "toms", "2027-06-21"],
  ["the shared garden", examplePath("shared-garden"), "bells-a3", "2027-05-01"],
])("the grower of %s is told nothing in metric by", (_, file, planting, today) => {
  const commands = [
    ["plan", file],
    ["check", file],
    ["why", file, planting],
    ["batch", file],
    ["sheet", file],
    ["labels", file],
    ["calendar", file],
  ];

  test.each(commands)("%s", async (...argv) => {
    const { code, stdout, stderr } = await cli(
      argv[0] === "calendar" ? argv : [...argv, "--today", today],
      { today },
    );
    expect({ code, stderr: stderr.replace(/^.*: \d+ rounds\n$/m, "") }).toEqual({
      code: 0,
      stderr: "",
    });
    expect(stdout.replaceAll(/\r\n /g, "").match(new RegExp(`.*(${metric.source}).*`))?.[0]).toBe(
      undefined,
    );
  });
});

test("a part can is filled to the quarter of a gallon", async () => {
  const example = readFileSync(examplePath("shared-garden"), "utf8");
  // The cans of its cauliflowers are the least round ones, and nobody feeds those unasked.
  const asked = example.replaceAll("crop: cauliflower,", "crop: cauliflower, feed: true,");
  const { stdout } = await cli(["plan", "-"], { stdin: asked });
  const parts = [...stdout.matchAll(/part can of (.*? (?:gal|qt|cups?))/g)].map(
    ([, water]) => water,
  );
  expect(new Set(parts)).toEqual(new Set(["1 qt", "1/2 gal", "1 gal", "1 3/4 gal"]));
});

test("what is usual is a measure that the grower has", async () => {
  const { stdout } = await cli(["plan", "-"], { stdin: smallBeds, today: "2027-06-21" });
  expect(stdout).toContain("a sprayer of 1/2 gal, as none is given");
  expect(stdout).toContain("apple: 3/4 gal of spray in all");
  expect(stdout).toContain("toms: 1/2 gal of water a plant");
});

test("a shortage is told in spoons and cups", async () => {
  const short = gardenText({
    timezone: "America/Denver",
    amounts: "us",
    stock: { keep: "shelf" },
    log: [],
  });
  const { stdout } = await cli(["check", "-"], { stdin: short, today: "2027-06-29" });
  expect(stdout).toMatch(/too little stock on .* lacks \d.*(tsp|tbsp|cups?):/);
});

test("labels and sheet are for letter paper", async () => {
  const file = examplePath("shared-garden");
  const { stdout: labels } = await cli(["labels", file]);
  expect(labels).toContain("(4 x 2 in) on US letter");
  expect(labels).toContain("Strength 82.9 mg calcium per teaspoon");
  const inches = await cli(["labels", file, "--size", "2.625x1in"]);
  expect(inches.stdout).toContain("66.7x25.4 mm (2 5/8 x 1 in) on US letter");
});

test("a round is written down in teaspoons, which the next plan reads", async () => {
  const file = scratchFile("garden.yaml", smallBeds);
  const round = (await cli(["plan", file, "--json"], { today: "2027-06-21" })).stdout;
  const { rounds } = JSON.parse(round) as {
    rounds: { day: string; stockMl: number; given?: true }[];
  };
  const next = rounds.find(({ day, given }) => day >= "2027-06-21" && !given);
  const on = next?.day ?? "";
  expect(await cli(["log", file, "--on", on], { today: on })).toMatchObject({ code: 0 });
  const entries = [...readFileSync(file, "utf8").matchAll(/stock: ([\d.]+) tsp\n/g)];
  const readMl = entries.map(([, teaspoons]) => ledgerMl(Number(teaspoons) * mlPerTeaspoon));
  expect(ledgerSum(readMl)).toBe(next?.stockMl);
  expect((await cli(["plan", file], { today: on })).code).toBe(0);
});

test("a batch is written down in cups, and asked about in them", async () => {
  const planned = gardenText({
    timezone: "America/New_York",
    amounts: "us",
    stock: {},
    calendar: { file: "gate.ics" },
  });
  const folder = scratchFolder();
  const [file, calendar] = [join(folder, "garden.yaml"), join(folder, "gate.ics")];
  writeFileSync(file, planned);
  await cli(["calendar", file, "--out", calendar], { today: "2027-03-01" });
  const { stdout } = await cli(["plan", file, "--json"], { today: "2027-03-01" });
  const [batch] = (JSON.parse(stdout) as Plan).stock?.making.batches ?? [];
  const { id = "", readyOn = "", volumeMl = 0 } = batch ?? {};
  const later = { today: addDays(day(readyOn), 1) };
  const { stdout: asked } = await cli(["plan", file], later);
  expect(asked.replace(/\s+/g, " ")).toMatch(
    /was bottled on \w{3} \w{3} \d+ with [^,]*(cups?|tbsp|qt), as published/,
  );
  const { stdout: told } = await cli(["log", file, "--batch", id, "--step", "made"], later);
  expect(told).toMatch(/ [\d.]+ cups\n/);
  expect(asked + told).not.toMatch(metric);
  const [, cups] = /volume: ([\d.]+) cups/.exec(readFileSync(file, "utf8")) ?? [];
  expect(Number(cups) * mlPerCup).toBeCloseTo(volumeMl, 0);
});

test("new starts an American garden in US measures, and no other", async () => {
  const amountsOf = async (timezone: string): Promise<string | undefined> =>
    /^amounts: (\w+)/m.exec((await cli(["new", "--timezone", timezone])).stdout)?.[1];
  expect(await amountsOf("America/Chicago")).toBe("us");
  expect(await amountsOf("Pacific/Honolulu")).toBe("us");
  expect(await amountsOf("America/Toronto")).toBe("metric");
  expect(await amountsOf("Europe/London")).toBe("metric");
  const { stdout } = await cli(["new", "--timezone", "US/Eastern"]);
  expect(stdout).not.toMatch(/\d (mL|L|m2)\b/);
  expect((await cli(["check", "-"], { stdin: stdout })).code).toBe(0);
});
