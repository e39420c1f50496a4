/** A planting of a crop that is not known, listed with `feed: false`, through the commands. */
// @ts-nocheck

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import type { Plan } from "../../src/season/season-plan.js";
import { type GardenDiffers, gardenText } from "../support/a-garden.js";
import { cli, type CliResult, scratchFile, scratchFolder } from "../support/run-cli.js";

const toms = { id: "toms", crop: "tomato", plants: 6, transplanted: "2027-05-20" };
const oca = { id: "row", crop: "Oca", feed: false };
const reason = "not fed, as the garden file says (`feed: false`); `oca` is no crop that is known";

function fileOf(differs: GardenDiffers = {}, listed: object = oca, bed: object = {}): string {
  const beds = [{ id: "south", water: "12 L", ...bed, plantings: [toms, listed] }];
  return scratchFile("garden.yaml", gardenText({ beds, ...differs }));
}

function run(command: string, file: string, ...more: string[]): Promise<CliResult> {
  return cli([command, file, ...more], { today: "2027-07-05" });
}

async function planOf(file: string): Promise<Plan> {
  const { stdout, stderr } = await run("plan", file, "--json");
  expect(stderr).toBe("");
  return JSON.parse(stdout) as Plan;
}

/** As read: no tags, no line ends, no marks around names. */
function read(html: string): string {
  return html
    .replace(/<[^>]*>|[\u2068\u2069]/g, " ")
    .replace(/\s+/g, " ")
    .replaceAll(" :", ":");
}

test.each([
  ["tomatoe", "did you mean `tomato`?"],
  ["quinoa", "`feedround crops` lists the crops that are known"],
])("the problem with `%s` names the way out", async (crop, suggestion) => {
  for (const feed of [undefined, true, "drench"]) {
    const file = fileOf({}, { id: "row", crop, sown: "2027-05-01", feed });
    const { code, stderr } = await run("check", file);
    expect(code).toBe(1);
    expect(stderr).toContain(
      `the crop \`${crop}\` is not known: ${suggestion} (with \`feed: false\` any name is listed and not fed)`,
    );
  }
});

test("the plan lists it without dates, stages or assumptions, and feeds the others as before", async () => {
  const file = fileOf({}, oca, { water: undefined });
  const plan = await planOf(file);
  expect(plan.plantings[1]).toMatchObject({
    crop: "Oca",
    cropName: "oca",
    stages: [],
    fed: false,
    reason,
    rules: [],
  });
  expect(plan.assumptions.filter((line) => line.includes("row"))).toEqual([]);
  const beds = [{ id: "south", plantings: [toms] }];
  const alone = await planOf(scratchFile("garden.yaml", gardenText({ beds })));
  expect(plan.rounds.length).toBeGreaterThan(0);
  expect(plan.rounds).toEqual(alone.rounds);

  const { stdout } = await run("plan", file);
  expect(stdout.replace(/\s+/g, " ")).toMatch(
    /Not fed - row \(oca\): not fed, as the garden file says/,
  );
  expect((await run("check", file)).code).toBe(0);
  expect((await run("why", file, "row")).stdout.replace(/\s+/g, " ")).toContain(reason);
});

test("page and sheet show it as not fed, with the reason", async () => {
  const file = fileOf();
  const folder = scratchFolder();
  expect((await run("publish", folder, file)).code).toBe(0);
  const names = readdirSync(folder, { recursive: true }).map(String);
  const page = names
    .filter((name) => name.endsWith(".html"))
    .map((name) => readFileSync(join(folder, name), "utf8"))
    .join("");
  const sheet = (await run("sheet", file)).stdout;
  for (const html of [page, sheet]) {
    expect(read(html)).toContain("Not fed: oca");
    expect(read(html.replace(/<\/?code>/g, "`"))).toContain(reason);
  }
  expect(read(page)).toContain("row (oca) no stages known");
});

test("dates given to it may not contradict each other, and may lie years back", async () => {
  expect((await run("check", fileOf({}, { ...oca, transplanted: "2019-04-01" }))).code).toBe(0);
  const dates = { sown: "2027-05-01", removed: "2027-04-01" };
  const { code, stderr } = await run("check", fileOf({}, { ...oca, ...dates }));
  expect(code).toBe(1);
  expect(stderr).toContain("removed on 2027-04-01, before it was sown on 2027-05-01");
});

test("a sign seen on it and a log entry for it are told, and change no feed", async () => {
  const signs = [{ on: "2027-07-02", planting: "row", sign: "white crust" }];
  const log = [{ on: "2027-07-01", planting: "row", stock: "30 mL" }];
  const { notes } = await planOf(fileOf({ signs, log }));
  expect(notes.filter((n) => n.planting === "row").map((n) => n.message)).toEqual([
    expect.stringContaining("row (oca): white crust on the soil seen on Fri 2 Jul; it is not fed"),
    expect.stringContaining("row (oca): the log gives it 30 mL of stock on Thu 1 Jul"),
  ]);
});

test("another feed may not be for it alone, and passes it over in its bed", async () => {
  const nettle = { name: "nettle", every: "14 days", rate: "100 mL per L" };
  const { code, stderr } = await run("check", fileOf({ feeds: [{ ...nettle, for: ["row"] }] }));
  expect(code).toBe(1);
  expect(stderr).toContain("the crop of `row` is not known, so it is only listed and never fed");
  const { rounds } = await planOf(fileOf({ feeds: [{ ...nettle, for: ["south"] }] }));
  const mixes = rounds.flatMap(({ feeds }) => feeds ?? []);
  expect(new Set(mixes.flatMap(({ plantings }) => plantings))).toEqual(new Set(["toms"]));
});
