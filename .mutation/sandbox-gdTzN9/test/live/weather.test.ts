/** Weather files beside a garden file, as the commands meet them. */
// @ts-nocheck

import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { largestFileBytes } from "../../src/garden/decode.js";
import { gardenText } from "../support/a-garden.js";
import { cli, type CliResult, scratchFolder } from "../support/run-cli.js";
import { growing } from "./a-live-garden.js";

const location = { latitude: 53.1, longitude: -6.2 };
const header = "date,tmin_c,tmax_c,rain_mm";
const may = ["2027-05-01,6.5,17.2,0.4", "2027-05-02,7,18,", "2027-05-05,8.5,19.5,1"];

/** A folder with a garden file in it that names weather files, and with those. */
function aGardenWith(
  files: Readonly<Record<string, string | Uint8Array>>,
  weather: Readonly<Record<string, string>> = { seen: "weather.csv" },
): string {
  const folder = scratchFolder();
  const garden = join(folder, "garden.yaml");
  writeFileSync(garden, gardenText({ ...growing({}), location, weather }));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return garden;
}

const check = (garden: string): Promise<CliResult> =>
  cli(["check", garden], { today: "2027-05-06" });

const seen = [header, ...may, ""].join("\n");

describe("a weather file", () => {
  test("is read, and what was filled is told once", async () => {
    const { code, stdout, stderr } = await check(aGardenWith({ "weather.csv": seen }));
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(stdout.replace(/\s+/g, " ").split("2 days that lack temperatures")).toHaveLength(2);
    expect(stdout).toContain("2027-05-03 to 2027-05-04");
  });

  test("with slips names each with its place, and nothing is planned", async () => {
    const slips = [header, "2027-05-01,6.5,172,0", "2027-05-01,7,18,0", "1 May,7,18,0"].join(
      "\r\n",
    );
    const { code, stdout, stderr } = await check(aGardenWith({ "weather.csv": slips }));
    expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
    expect(stderr.split("\n").map((line) => line.split(": ")[0])).toEqual([
      "weather.csv:2:16",
      "weather.csv:3:1",
      "weather.csv:4:1",
      "",
    ]);
  });

  test("is told with the forecast's and the rules' problems at once", async () => {
    const weather = { seen: "weather.csv", forecast: "next.csv" };
    const garden = aGardenWith(
      { "weather.csv": "x", "next.csv": "y", "r.yaml": "rules: []" },
      weather,
    );
    writeFileSync(garden, gardenText({ ...growing({}), location, weather, rules: "r.yaml" }));
    const { stderr } = await check(garden);
    const files = new Set(stderr.match(/^\S+?(?=:)/gm));
    expect([...files]).toEqual(["next.csv", "r.yaml", "weather.csv"]);
  });

  test("is told in the line of the climate by plan, sheet and page, to its last day", async () => {
    const next = [header, "2027-05-06,9,20,0", "2027-05-09,9,21,0", ""].join("\n");
    const garden = aGardenWith(
      { "weather.csv": seen, "next.csv": next },
      { seen: "weather.csv", forecast: "next.csv" },
    );
    const line = "; weather files tell 1 May to 9 May";
    const world = { today: "2027-05-06" };
    for (const command of ["plan", "sheet"]) {
      const { stdout } = await cli([command, garden], world);
      const [said = ""] = /Climate: [^<]*/.exec(stdout.replace(/\s+/g, " ")) ?? [];
      expect(said).toContain(line);
    }
    const folder = scratchFolder();
    expect((await cli(["publish", folder, garden], world)).code).toBe(0);
    const page = readdirSync(folder, { recursive: true, encoding: "utf8" }).find((name) =>
      /(?<!index)\.html$/.test(name),
    );
    expect(readFileSync(join(folder, page ?? ""), "utf8")).toMatch(new RegExp(`${line}\\s*</p>`));
  });

  test.each([
    ["has a header alone", ""],
    ["is of the year before", "2026-05-01,6.5,17.2,\n"],
    ["is older than what is read", "2020-05-01,6.5,17.2,\n"],
  ])("that %s is told once, by its name", async (_, rows) => {
    const garden = aGardenWith({ "weather.csv": `${header}\n${rows}` });
    const { code, stdout } = await cli(["plan", garden], { today: "2027-05-06", columns: 200 });
    expect(code).toBe(0);
    const told = "the weather file weather.csv tells no day of this season";
    expect(stdout.split(told)).toHaveLength(2);
    expect(stdout).toMatch(/\nClimate: /);
    expect(stdout).not.toContain("; weather files tell");
  });

  test("in another unit than its columns say is warned of by plan and check, by its name", async () => {
    const next = [header, ...[1, 2, 3, 4, 5].map((d) => `2027-05-1${d},45,58,`), ""].join("\n");
    const files = { "weather.csv": seen, "next.csv": next };
    const garden = aGardenWith(files, { seen: "weather.csv", forecast: "next.csv" });
    for (const command of ["plan", "check"]) {
      const { code, stdout } = await cli([command, garden], { today: "2027-05-06" });
      expect(code).toBe(0);
      const said = stdout.replace(/\s+/g, " ").match(/the days of the weather file .*? tmax_c/g);
      expect(said).toEqual([
        expect.stringMatching(
          /^the days of the weather file next\.csv are on average \d\d\.\d C warmer than the means of the place on those days: check whether its temperatures are in F or C, /,
        ),
      ]);
    }
  });

  test("of the garden leaves its plan the same from day to day", async () => {
    const weather = { seen: "weather.csv", forecast: "next.csv" };
    const next = [header, "2027-05-06,9,20,0", "2027-05-09,9,21,0", ""].join("\n");
    const garden = aGardenWith({ "weather.csv": seen, "next.csv": next }, weather);
    const roundsOn = async (today: string): Promise<unknown> => {
      const { stdout } = await cli(["plan", garden, "--json"], { today });
      return (JSON.parse(stdout) as { rounds: unknown }).rounds;
    };
    expect(await roundsOn("2027-05-08")).toEqual(await roundsOn("2027-05-02"));
  });

  test("is read for what is published, and for a garden from standard input", async () => {
    const garden = aGardenWith({ "weather.csv": "x" });
    const published = await cli(["publish", scratchFolder(), garden]);
    expect(published.code).toBe(1);
    expect(published.stderr).toContain("weather.csv:1:1: no header of a known form");
    const stdin = gardenText({ ...growing({}), location, weather: { seen: "no such.csv" } });
    expect((await cli(["check", "-"], { stdin })).stderr).toMatch(
      /^<stdin>:\d+:9: the weather file `no such.csv` is not there: /,
    );
  });
});

describe("a weather file that can't be had is a problem at its key", () => {
  const place = /^\S*garden\.yaml:(\d+):9: the weather file /;
  const refused = async (garden: string): Promise<string> => {
    const { code, stderr } = await check(garden);
    expect(code).toBe(1);
    expect(stderr).toMatch(place);
    return stderr.replace(place, "").trimEnd();
  };

  test("since it is not there", async () => {
    expect(await refused(aGardenWith({}))).toBe(
      "`weather.csv` is not there: check its name; it is looked for beside the garden file",
    );
  });

  test("since it is a folder", async () => {
    const garden = aGardenWith({}, { seen: "weather" });
    mkdirSync(join(garden, "..", "weather"));
    expect(await refused(garden)).toBe("`weather` is no file: write the name of a file");
    expect(await refused(aGardenWith({}, { seen: "." }))).toContain("is no file");
  });

  test("since it is too large", async () => {
    const bytes = new Uint8Array(largestFileBytes + 1).fill(0x23);
    expect(await refused(aGardenWith({ "weather.csv": bytes }))).toContain("is larger than 5 MB");
  });

  test("since a link leads out of the folder, its own or that of a folder in its path", async () => {
    const elsewhere = scratchFolder();
    writeFileSync(join(elsewhere, "weather.csv"), seen);
    const linked = aGardenWith({});
    symlinkSync(join(elsewhere, "weather.csv"), join(linked, "..", "weather.csv"));
    const through = aGardenWith({}, { seen: "data/weather.csv" });
    symlinkSync(elsewhere, join(through, "..", "data"));
    for (const garden of [linked, through])
      expect(await refused(garden)).toMatch(/is a link that leads out of the garden file's folder/);
  });

  test("but a link that stays in the folder, and a folder that is itself a link, are fine", async () => {
    const garden = aGardenWith({ "2027.csv": seen });
    symlinkSync("2027.csv", join(garden, "..", "weather.csv"));
    const folder = join(scratchFolder(), "linked");
    symlinkSync(join(garden, ".."), folder);
    expect((await check(join(folder, "garden.yaml"))).code).toBe(0);
  });

  test("and one that is no text is told by its own name", async () => {
    const { stderr } = await check(aGardenWith({ "weather.csv": Uint8Array.from([80, 75, 3, 0]) }));
    expect(stderr).toBe(
      "weather.csv:1:1: the file holds zero bytes, so it is no text file: give a text file\n",
    );
  });
});
