// @ts-nocheck
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { starterGarden } from "../../src/cli/starter.js";
import { day } from "../../src/dates.js";
import { loadTables } from "../../src/tables.js";
import { gardenText, planted } from "../support/a-garden.js";
import { cli, examplePath, scratchFile, scratchFolder } from "../support/run-cli.js";

const file = examplePath("back-garden");

describe("check", () => {
  test("advises on crops that need no feed, on time away and on even water", async () => {
    const { code, stdout } = await cli(["check", "--json", file]);
    expect(code).toBe(0);
    const { advice } = JSON.parse(stdout) as { advice: { code: string; plantings: string[] }[] };
    expect(advice.find((a) => a.plantings.includes("basil"))?.code).toBe("needs-no-feed");
    expect(advice.map((a) => a.code)).toEqual(
      expect.arrayContaining(["dry-gap", "even-water", "verdict"]),
    );
  });

  test("advises when a season's water brings as much calcium as the feed", async () => {
    const { stdout } = await cli(["check", file]);
    expect(stdout.replace(/\s+/g, " ")).toMatch(
      /In the season your water brings \d+ to \d+ g of calcium to what is fed, [\d.]+ to [\d.]+ times the [\d.]+ g of the feed: even watering/,
    );
  });

  test("advises when two plantings of a crop are watered unevenly", async () => {
    const text = readFileSync(file, "utf8").replace(
      "water: 2 L per plant",
      "water: 0.5 L per plant",
    );
    const { stdout } = await cli(["check", "--json", "-"], { stdin: text });
    expect(stdout).toContain('"uneven-water"');
  });

  test("tells every problem and ends with exit code 1", async () => {
    const stdin =
      "version: 1\ngarden: A\ntimezone: Europe/Dublinn\nseason: { from: 2027-05-01, to: 2027-04-01 }\ncan: 9\nbeds: []\n";
    const { code, stdout, stderr } = await cli(["check", "-"], { stdin });
    expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
    expect(stderr.trim().split("\n")).toHaveLength(4);
  });
});

describe("why", () => {
  test("shows stage and origin, rule, source, interval and the arithmetic", async () => {
    const { code, stdout } = await cli(["why", file, "toms"]);
    expect(code).toBe(0);
    await expect(stdout).toMatchFileSnapshot("../golden/back-garden.why-toms.txt");
  });

  test("tells what holds for all feedings of a planting once", async () => {
    const { stdout } = await cli(["why", file, "toms"]);
    expect(stdout.match(/^ {2}(?:Wed|Sat) \d+ \w{3}/gm)).toHaveLength(4);
    for (const row of ["against", "reason", "source", "strength", "calcium"])
      expect(stdout.match(new RegExp(`^ {4}${row} `, "gm")), row).toHaveLength(1);
    expect(stdout.split("Gray, Ward")).toHaveLength(2);
  });

  test("tells where the dates of stages are from once, where several are from the same", async () => {
    const stdin = gardenText(planted({ transplanted: "2027-05-20" }));
    const { stdout } = await cli(["why", "-", "toms"], { stdin, columns: 1000 });
    expect(stdout).toContain("as above");
    expect(stdout.split("Table 11")).toHaveLength(2);
  });

  test("shows the reason of a planting that is not fed, and its stages", async () => {
    const { stdout } = await cli(["why", file, "lettuce"]);
    expect(stdout).toContain("romaine");
    expect(stdout).toContain("FAO");
  });

  test("shows all that is fed on a day", async () => {
    const plan = JSON.parse((await cli(["plan", "--json", file])).stdout) as {
      rounds: { day: string; beds: { mixes: { feedings: { planting: string }[] }[] }[] }[];
    };
    const round = plan.rounds[3];
    const fed = round?.beds.flatMap((b) =>
      b.mixes.flatMap((m) => m.feedings.map((f) => f.planting)),
    );
    const { stdout } = await cli(["why", "--json", file, round?.day ?? ""]);
    const reasons = JSON.parse(stdout) as { planting: { id: string } }[];
    expect(reasons.map((r) => r.planting.id).sort()).toEqual(fed?.sort());
  });

  test("a planting that does not exist is wrong usage, with the nearest one", async () => {
    const { code, stderr } = await cli(["why", file, "tons"]);
    expect(code).toBe(2);
    expect(stderr).toContain("did you mean `toms`?");
  });

  test("a day on which nothing is fed says so", async () => {
    expect((await cli(["why", file, "2027-03-02"])).stdout).toContain(
      "Nothing is fed on Tue 2 Mar.\n",
    );
    expect((await cli(["why", file, "toms", "2027-03-02"])).stdout).toContain(
      "not fed on Tue 2 Mar\n",
    );
  });
});

test("why tells a feeding that was given as the log holds it, not as planned", async () => {
  const { stdout } = await cli([
    ...["why", examplePath("mid-season"), "toms", "2027-06-05", "--today", "2027-07-05"],
  ]);
  expect(stdout).toContain("given, as the log holds it: 25 mL of stock");
  expect(stdout).not.toMatch(/fixed in the garden file|measured as/);
});

describe("crops", () => {
  test("lists at least 30 crops, those that need no feed too", async () => {
    const { stdout } = await cli(["crops", "--json"]);
    const crops = JSON.parse(stdout) as { key: string; disorder?: string }[];
    expect(crops.length).toBeGreaterThanOrEqual(30);
    expect(crops.filter((c) => c.disorder === undefined).length).toBeGreaterThan(5);
    expect((await cli(["crops"])).stdout).toContain("blossom-end rot");
  });

  test.each([
    ["courgettes", "zucchini"],
    ["Aubergine", "eggplant"],
    ["capsicum", "sweet-pepper"],
    ["tomatoes", "tomato"],
  ])("%s is %s", async (word, key) => {
    expect(JSON.parse((await cli(["crops", "--json", word])).stdout)).toMatchObject({ key });
  });

  const told = async (word: string): Promise<string> =>
    (await cli(["crops", word])).stdout.replaceAll(/\s+/g, " ");

  test("a crop's rows are told by ids that a garden file can name, with days and region", async () => {
    expect(await told("tomato")).toContain(
      "mediterranean-apr-may: 30/40/45/30 days from sowing, Mediterranean, planted in April, May:",
    );
    const row = (await told("zucchini")).match(/mediterranean-arid-\S+(?=:)/)?.[0] ?? "";
    const file = gardenText(planted({ crop: "zucchini", sown: "2027-05-01", row }));
    expect((await cli(["check", "-"], { stdin: file })).code).toBe(0);
  });

  test.each([
    ["tomato", "flowering 281 (150 to 525) degree days above 7 degrees C after transplanting"],
    ["tomato", "habit bush or cordon, usually cordon"],
    ["tomato", "frost tender: frost ends it"],
    ["tomato", "a plant has 0.63 m2 (0.28 to 1.1): secondary garden page"],
    ["grape", "a plant has 5.8 m2 (5 to 6.7): Iowa State"],
    ["blueberry", "soil sour: never limed"],
    ["collards", "Not fed: gypsum in the soil and calcium sprays did not lessen tipburn"],
    ["kale", "frost not ended by the first frost"],
    ["lettuce", "keep to the calendar, unless `warmth: on` asks for more. Light drives it"],
    ["beetroot", "warmth no sums are known: its stages keep to the calendar"],
    ["apple", "flowering 252 (190 to 315) degree days above 5 degrees C after New Year (in the"],
  ])("%s: %s", async (word, words) => {
    expect(await told(word)).toContain(words);
  });

  test("an unknown crop is wrong usage, with the nearest one", async () => {
    const { code, stderr } = await cli(["crops", "tomatoe"]);
    expect({ code, stderr }).toEqual({
      code: 2,
      stderr: "the crop `tomatoe` is not known: did you mean `tomato`?\n",
    });
  });
});

describe("new", () => {
  test.each([
    ["Europe/Dublin", "2027-03-20"],
    ["America/New_York", "2026-11-25"],
    ["Pacific/Auckland", "2026-11-25"],
    ["Pacific/Auckland", "2027-02-10"],
    ["Asia/Kolkata", "2028-02-29"],
    ["Australia/Hobart", "2027-06-30"],
  ])("a starter for %s on %s is valid and has feedings", async (timezone, today) => {
    const { zoneHalves } = loadTables();
    const wishes = {
      name: "A",
      timezone,
      today: day(today),
      schemaPath: "x",
      calendarFile: "x.ics",
      zoneHalves,
      amounts: "us" as const,
    };
    const text = starterGarden(wishes);
    const { code, stdout, stderr } = await cli(["plan", "-", "--json"], { stdin: text, today });
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect((JSON.parse(stdout) as { rounds: unknown[] }).rounds.length).toBeGreaterThan(1);
  });

  test("writes a file that plans as it stands, and never over one that is there", async () => {
    const path = join(scratchFolder(), "garden.yaml");
    expect(await cli(["new", path, "--name", "Hill Plot"])).toEqual({
      code: 0,
      stdout: "",
      stderr: `${path}: written\nNext: change it to your own garden, then run \`feedround check ${path}\`\n`,
    });
    expect((await cli(["plan", path])).stdout).toContain("Hill Plot");
    const before = readFileSync(path, "utf8");
    expect((await cli(["new", path])).code).toBe(3);
    expect(readFileSync(path, "utf8")).toBe(before);
  });

  test("leaves the hemisphere to be said where the zone does not tell it", async () => {
    const { stdout: text } = await cli(["new", "--timezone", "Africa/Nairobi"]);
    const asked = await cli(["plan", "-"], { stdin: text });
    expect(asked.code).toBe(1);
    expect(asked.stderr).toContain("add `hemisphere: north` or `hemisphere: south`");
    const said = text.replace("# hemisphere: north ", "hemisphere: north ");
    expect((await cli(["plan", "-"], { stdin: said })).code).toBe(0);
  });

  test("prints to standard output without a file name", async () => {
    expect((await cli(["new"])).stdout).toContain("timezone: Europe/Dublin");
  });

  test.each([
    ["--timezone", "Europe/Dublinn"],
    ["--name", 'a "b"'],
  ])("%s %s is wrong usage", async (option, value) => {
    expect((await cli(["new", option, value])).code).toBe(2);
  });
});

describe("help", () => {
  test.each(["plan", "check", "calendar", "why", "crops", "new"])(
    "%s shows examples first",
    async (command) => {
      const { code, stdout } = await cli([command, "--help"]);
      expect(code).toBe(0);
      expect(stdout).toMatch(new RegExp(`^Examples:\\n {2}feedround ${command}`));
    },
  );

  test("a bare call shows the commands", async () => {
    const { code, stdout } = await cli([]);
    expect(code).toBe(0);
    expect(stdout).toContain("calendar");
  });

  test("--version prints the version of the package", async () => {
    const { version } = JSON.parse(
      readFileSync(new URL("../../package.json", import.meta.url), "utf8"),
    ) as { version: string };
    expect((await cli(["--version"])).stdout).toBe(`${version}\n`);
  });
});

test("bytes that are no text, and a file of megabytes, are problems and no crash", async () => {
  const binary = scratchFile("garden.yaml", new Uint8Array([0xff, 0x00, 0x10, 0x80]));
  expect((await cli(["check", binary])).code).toBe(1);
  const large = scratchFile("garden.yaml", "# ".padEnd(5_000_001, "x"));
  const { code, stderr } = await cli(["check", large]);
  expect(code).toBe(1);
  expect(stderr).toContain("larger than 1 MB");
});

test("of very many problems the first fifty are told, and how many more there are", async () => {
  const keys = Array.from({ length: 300 }, (_, i) => `key${i}: 1`).join("\n");
  const file = scratchFile("garden.yaml", `${keys}\n`);
  const { stderr, code } = await cli(["check", file]);
  const lines = stderr.trimEnd().split("\n");
  expect(code).toBe(1);
  expect(lines).toHaveLength(51);
  expect(lines.at(-1)).toMatch(/^and 2\d\d more problems$/);
  const { problems } = JSON.parse((await cli(["check", file, "--json"])).stdout) as {
    problems: unknown[];
  };
  expect(problems.length).toBeGreaterThan(300);
});
