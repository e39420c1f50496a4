import {
  chmodSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { writeText } from "../../src/cli/files.js";
import type { Plan } from "../../src/season/season-plan.js";
import { day as dayOf } from "../../src/dates.js";
import { shortDay } from "../../src/garden/index.js";
import { gardenText, planted } from "../support/a-garden.js";
import {
  aShell,
  cli,
  examplePath,
  scratchFile,
  scratchFolder,
  type World,
} from "../support/run-cli.js";

interface Written {
  readonly log?: Record<string, string>[];
}

const world: World = { today: "2027-07-01" };

/** Two beds; B1 in hand. Comments stand where a grower would put them. */
const text = [
  "# my garden",
  gardenText({
    stock: {
      // The strength for which rates are written.
      batches: [{ id: "B1", made: "2027-05-10", strength: "17.75 g/L", volume: "1 L" }],
      keep: "fridge",
    },
    beds: [
      {
        id: "south",
        plantings: [
          {
            id: "toms",
            crop: "tomato",
            plants: 6,
            transplanted: "2027-05-20",
            water: "2 L per plant",
          },
          { id: "peppers", crop: "sweet pepper", transplanted: "2027-05-27", water: "6 L" },
        ],
      },
      {
        id: "north",
        plantings: [{ id: "basil", crop: "basil", transplanted: "2027-06-01", water: "2 L" }],
      },
    ],
    feeds: [{ name: "nettle", every: "14 days", rate: "100 mL per L" }],
  }).trimEnd(),
  "# the end",
  "",
].join("\n");

function garden(differs = text): string {
  return scratchFile("garden.yaml", differs);
}

function logOf(path: string): Record<string, string>[] {
  return (parse(readFileSync(path, "utf8")) as Written).log ?? [];
}

async function log(path: string, ...argv: string[]): Promise<string> {
  const { code, stdout, stderr } = await cli(["log", path, ...argv], world);
  expect({ code, stderr }).toMatchObject({ code: 0 });
  return stdout;
}

async function planOn(path: string, today: string): Promise<Plan> {
  const { stdout } = await cli(["plan", path, "--json"], { today });
  return JSON.parse(stdout) as Plan;
}

/** A day on which the plan feeds both plantings of the south bed, if any. */
async function roundDay(path: string): Promise<string> {
  const { rounds } = await planOn(path, "2027-06-01");
  const found = rounds.find((r) =>
    r.beds.some((b) => b.mixes.flatMap((m) => m.feedings).length > 1),
  );
  if (found === undefined) throw new Error("no round feeds two plantings");
  return found.day;
}

describe("one planting", () => {
  test("is written down with its amount and batch, and the rest stays as it was", async () => {
    const path = garden();
    const stdout = await log(path, "--planting", "toms", "--stock", "30mL", "--batch", "B1");
    expect(readFileSync(path, "utf8")).toBe(
      `${text}log:\n  - { on: 2027-07-01, planting: toms, stock: 30 mL, batch: B1 }\n`,
    );
    expect(stdout).toMatch(/toms +30 mL +B1/);
  });

  test("a second day goes under the first", async () => {
    const path = garden();
    await log(path, "--on", "2027-06-15", "--planting", "toms", "--stock", "30 mL");
    await log(path, "--on", "2027-06-29", "--planting", "toms", "--stock", "1 tbsp");
    expect(logOf(path)).toEqual([
      { on: "2027-06-15", planting: "toms", stock: "30 mL" },
      { on: "2027-06-29", planting: "toms", stock: "1 tbsp" },
    ]);
  });

  test("tells when it is due next, counted from what was given", async () => {
    const path = garden();
    const stdout = await log(path, "--on", "2027-06-20", "--planting", "toms", "--stock", "30 mL");
    const plan = await planOn(path, "2027-07-01");
    const next = plan.rounds.find(
      (r) =>
        !r.given &&
        r.beds.some((b) =>
          b.mixes.some((m) => m.feedings.some(({ planting }) => planting === "toms")),
        ),
    );
    expect(next).toBeDefined();
    expect(stdout).toContain("Due next");
    expect(stdout).toMatch(/toms +\w{3} \d+ \w{3} 2027 \(between \d+ \w{3} and/);
  });

  test("without an amount takes the plan's for that day", async () => {
    const path = garden();
    const day = await roundDay(path);
    await log(path, "--on", day, "--planting", "toms");
    expect(logOf(path)).toEqual([{ on: day, planting: "toms", stock: "30 mL", batch: "B1" }]);
  });

  test("without an amount on a day without a feeding is written without one", async () => {
    const path = garden();
    await log(path, "--on", "2027-04-02", "--planting", "toms");
    expect(logOf(path)).toEqual([{ on: "2027-04-02", planting: "toms" }]);
  });

  test("that no rule feeds is written, and pointed out", async () => {
    const stdout = await log(garden(), "--planting", "basil", "--stock", "5 mL");
    expect(stdout).toContain("no rule feeds it");
  });
});

describe("the whole round", () => {
  test("is one entry for each planting, adding up to what the plan pours, and then is past", async () => {
    const path = garden();
    const day = await roundDay(path);
    const planned = (await planOn(path, "2027-06-01")).rounds.find((r) => r.day === day);
    await log(path, "--on", day);
    const entries = logOf(path);
    expect(entries.map(({ planting }) => planting)).toEqual(["peppers", "toms"]);
    for (const entry of entries) expect(entry).toMatchObject({ on: day, batch: "B1" });
    const totalMl = entries.reduce((sum, { stock = "" }) => sum + Number.parseFloat(stock), 0);
    expect(totalMl).toBeCloseTo(planned?.stockMl ?? NaN, 6);
    const given = (await planOn(path, "2027-07-01")).rounds.find((r) => r.day === day);
    expect(given?.given).toBe(true);
    expect(given?.stockMl).toBeCloseTo(totalMl, 6);
  });

  test("logged twice is written once", async () => {
    const path = garden();
    const day = await roundDay(path);
    await log(path, "--on", day);
    const once = readFileSync(path);
    const { code, stderr } = await cli(["log", path, "--on", day], world);
    expect({ code, stderr }).toEqual({
      code: 0,
      stderr: `${path}: the log holds the round of ${day} already; nothing was written\n`,
    });
    expect(readFileSync(path)).toEqual(once);
  });

  test("leaves out what is logged already", async () => {
    const path = garden();
    const day = await roundDay(path);
    await log(path, "--on", day, "--planting", "toms", "--stock", "25 mL");
    await log(path, "--on", day);
    expect(logOf(path).map(({ planting, stock }) => [planting, stock])).toEqual([
      ["toms", "25 mL"],
      ["peppers", "15 mL"],
    ]);
  });

  test("of a bed alone", async () => {
    const path = garden();
    const day = await roundDay(path);
    await log(path, "--on", day, "--bed", "south");
    expect(logOf(path)).toHaveLength(2);
  });

  test("can be poured from a batch that the grower names", async () => {
    const path = garden(
      text.replace("id: B1", "id: B1\n      made: 2027-05-11\n      volume: 1 L\n    - id: B2"),
    );
    const day = await roundDay(path);
    await log(path, "--on", day, "--batch", "B2");
    expect(new Set(logOf(path).map(({ batch }) => batch))).toEqual(new Set(["B2"]));
  });

  test("for which the file has no bottle names none, and says so", async () => {
    const path = garden(gardenText({ log: [{ on: "2027-04-01", planting: "toms" }] }));
    const { rounds } = await planOn(path, "2027-06-10");
    const day = rounds.find((round) => !round.given)?.day ?? "";
    const { code, stderr } = await cli(["log", path, "--on", day], { today: day });
    expect(code).toBe(0);
    expect(stderr).toContain(
      `no bottle in it held enough stock on ${shortDay(dayOf(day), "metric")}`,
    );
    expect(logOf(path)[1]).not.toHaveProperty("batch");
    expect(logOf(path)[1]).toHaveProperty("stock");
  });

  test("that spans two bottles is split between them", async () => {
    const small = text.replace("volume: 1 L", "volume: 1 L\n      left: 20 mL");
    const path = garden(
      small.replace(
        "id: B1",
        "id: B2\n      made: 2027-05-12\n      strength: 17.75 g/L\n      volume: 1 L\n    - id: B1",
      ),
    );
    const day = await roundDay(path);
    await log(path, "--on", day);
    const entries = logOf(path);
    expect(entries.map(({ planting, batch }) => `${planting ?? ""} ${batch ?? ""}`)).toEqual([
      "peppers B1",
      "toms B1",
      "toms B2",
    ]);
    expect(entries.map(({ stock }) => stock)).toEqual(["15 mL", "5 mL", "25 mL"]);
  });

  test("on a day without one is refused, with the days near it", async () => {
    const path = garden();
    const { code, stdout, stderr } = await cli(["log", path, "--on", "2027-04-02"], world);
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toMatch(/no round is planned on 2027-04-02; the nearest are on 2027-\d\d-\d\d/);
    expect(readFileSync(path, "utf8")).toBe(text);
  });

  test("of a day long past is as it stood then, whatever was logged or made since", async () => {
    const path = garden();
    const day = await roundDay(path);
    await log(path, "--on", "2027-06-30", "--planting", "toms", "--stock", "30 mL");
    await log(path, "--on", day);
    expect(
      logOf(path)
        .slice(1)
        .map(({ on, planting }) => [on, planting]),
    ).toEqual([
      [day, "peppers"],
      [day, "toms"],
    ]);
  });
});

describe("another feed", () => {
  test("is written with its name, and told when it is due next", async () => {
    const path = garden();
    const stdout = await log(path, "--on", "2027-06-30", "--feed", "nettle");
    expect(logOf(path)).toEqual([{ on: "2027-06-30", feed: "nettle" }]);
    expect(stdout).toContain("nettle  Wed 14 Jul 2027");
  });

  test("may go to one bed, with its amount", async () => {
    const path = garden();
    await log(path, "--bed", "south", "--feed", "nettle", "--stock", "1 L");
    expect(logOf(path)).toEqual([{ on: "2027-07-01", bed: "south", stock: "1 L", feed: "nettle" }]);
  });
});

test("--dry-run shows it and writes nothing", async () => {
  const path = garden();
  const before = statSync(path).mtimeMs;
  const { code, stdout, stderr } = await cli(
    ["log", path, "--planting", "toms", "--stock", "30mL", "--dry-run"],
    world,
  );
  expect(code).toBe(0);
  expect(stdout).toMatch(/^To be written into the log/);
  expect(stdout).toContain("30 mL");
  expect(stderr).toBe(`${path}: nothing was written, as asked\n`);
  expect([readFileSync(path, "utf8"), statSync(path).mtimeMs]).toEqual([text, before]);
});

test.each([
  ["an unknown planting", ["--planting", "tomz", "--stock", "5 mL"], /did you mean `toms`\?/],
  ["an unknown planting without an amount", ["--planting", "tomz"], /did you mean `toms`\?/],
  ["an unknown bed", ["--bed", "west", "--stock", "5 mL"], /there is no bed `west`/],
  ["an unknown feed", ["--feed", "kelp"], /there is no feed `kelp`/],
  [
    "a day to come",
    ["--planting", "toms", "--stock", "5 mL", "--on", "2027-07-02"],
    /given on 2027-07-02, which is after today, 2027-07-01/,
  ],
  [
    "more than the batch holds",
    ["--planting", "toms", "--stock", "2 L", "--batch", "B1", "--so-much"],
    /the log gives 1000 mL more from batch B1 than was left in it/,
  ],
])("%s is a problem with its place, and nothing is written", async (_, argv, message) => {
  const path = garden();
  const { code, stdout, stderr } = await cli(["log", path, ...argv], world);
  expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
  expect(stderr).toMatch(message);
  expect(stderr).toMatch(/garden\.yaml:\d+:\d+: .*\n.*nothing was written/);
  expect(readFileSync(path, "utf8")).toBe(text);
});

test.each([
  [["--planting", "toms", "--bed", "south"], "give one of the two"],
  [["--stock", "30 mL"], "--stock goes with --planting or --bed"],
  [["--planting", "toms", "--stock", "30"], "has no unit"],
  [["--planting", "toms", "--stock", "-3 mL"], "is negative"],
  [["--planting", "toms", "--stock", "30 g"], "a volume is needed"],
  [["--feed", "nettle", "--batch", "B1"], "leave out --batch or --feed"],
  [["--on", "yesterday"], "2027-06-01"],
])("wrong usage %j ends with exit code 2 and says so", async (argv, message) => {
  const path = garden();
  const { code, stdout, stderr } = await cli(["log", path, ...argv], world);
  expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
  expect(stderr).toContain(message);
  expect(readFileSync(path, "utf8")).toBe(text);
});

test("standard input has no log to write into", async () => {
  const { code, stderr } = await cli(["log", "-"], { ...world, stdin: text });
  expect(code).toBe(2);
  expect(stderr).toContain("give the file");
});

test("a file with problems of its own is left alone", async () => {
  const path = garden(text.replace("crop: tomato", "crop: tomatoe"));
  const { code, stderr } = await cli(["log", path], world);
  expect(code).toBe(1);
  expect(stderr).toContain("did you mean `tomato`?");
});

describe("the file itself", () => {
  test("keeps its byte order mark, its line ends and its mode", async () => {
    const windows = `\ufeff${text.replaceAll("\n", "\r\n")}`;
    const path = garden(windows);
    chmodSync(path, 0o640);
    await log(path, "--planting", "toms", "--stock", "30 mL");
    const after = readFileSync(path, "utf8");
    expect(after.startsWith(windows)).toBe(true);
    expect(after.slice(windows.length)).toBe(
      "log:\r\n  - { on: 2027-07-01, planting: toms, stock: 30 mL }\r\n",
    );
    expect(statSync(path).mode & 0o777).toBe(0o640);
  });

  test("that is a link stays one, and what it points to is written", async () => {
    const path = garden();
    const link = join(scratchFolder(), "link.yaml");
    symlinkSync(path, link);
    await log(link, "--planting", "toms", "--stock", "30 mL");
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(logOf(path)).toHaveLength(1);
    expect(readdirSync(dirname(link))).toEqual(["link.yaml"]);
  });

  test("that changed meanwhile is left as it is", async () => {
    const path = garden();
    const read = readFileSync(path);
    writeFileSync(path, "changed by an editor\n");
    await expect(writeText(path, "ours\n", aShell().shell, read)).rejects.toMatchObject({
      exitCode: 3,
      message: expect.stringContaining("it was changed meanwhile") as string,
    });
    expect(readFileSync(path, "utf8")).toBe("changed by an editor\n");
    expect(readdirSync(dirname(path))).toEqual(["garden.yaml"]);
  });

  test("that cannot be written is told with exit code 3 and left whole", async () => {
    const folder = join(scratchFolder(), "closed");
    mkdirSync(folder);
    const path = join(folder, "garden.yaml");
    writeFileSync(path, text);
    chmodSync(folder, 0o555);
    const isRoot = process.getuid?.() === 0;
    const { code } = await cli(["log", path, "--planting", "toms", "--stock", "1 mL"], world);
    chmodSync(folder, 0o755);
    if (!isRoot) {
      expect(code).toBe(3);
      expect(readFileSync(path, "utf8")).toBe(text);
    }
  });
});

test("a planting fed both ways is logged way by way", async () => {
  const path = garden(
    gardenText({
      sprayer: "2 L",
      season: { from: "2027-03-01", to: "2027-10-31" },
      ...planted({
        id: "tree",
        crop: "apple",
        plants: undefined,
        transplanted: undefined,
        established: true,
        bloom: "2027-05-05",
        water: "10 L",
        spray: "2 L",
        feed: "foliar",
      }),
    }),
  );
  const { rounds } = await planOn(path, "2027-03-01");
  const day = rounds[0]?.day ?? "";
  const { code } = await cli(["log", path, "--on", day], { today: day });
  expect(code).toBe(0);
  expect(logOf(path)[0]).toMatchObject({ on: day, planting: "tree" });
});

test("the example in the middle of its season takes another entry", async () => {
  const path = garden(readFileSync(examplePath("mid-season"), "utf8"));
  const argv = ["log", path, "--on", "2027-07-05", "--planting", "peppers", "--stock", "15 mL"];
  const { code, stdout } = await cli([...argv, "--batch", "B1"], { today: "2027-07-05" });
  expect({ code, stdout }).toMatchObject({ code: 0 });
  expect(logOf(path)).toHaveLength(6);
  expect(readFileSync(path, "utf8").split("\n")).toEqual(
    expect.arrayContaining(readFileSync(examplePath("mid-season"), "utf8").split("\n")),
  );
});

test("an amount far beyond the plan is asked about, and written where it is meant", async () => {
  const path = garden();
  const half = ["log", path, "--planting", "toms", "--stock", "0.5 L"];
  const { code, stderr } = await cli(half, world);
  expect(code).toBe(2);
  expect(stderr).toMatch(
    /^--stock: 500 mL is \d+ times the [\d.]+ mL that the plan gives at most on a day: check the amount and its unit; if it was really so much, add --so-much\n$/,
  );
  expect(readFileSync(path, "utf8")).toBe(text);
  expect(await cli([...half, "--so-much"], world)).toMatchObject({ code: 0 });
  expect(readFileSync(path, "utf8")).toContain("stock: 0.5 L");
});

test("an amount of twice the plan is the grower's own affair", async () => {
  const argv = ["log", garden(), "--planting", "toms", "--stock", "60 mL"];
  expect(await cli(argv, world)).toMatchObject({ code: 0 });
});
