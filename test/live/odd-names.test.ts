/** Names over several lines, with letters that hide, and right to left, through the real commands. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { hiddenIn } from "../../src/legible.js";
import { gardenText, referenceBottle } from "../support/a-garden.js";
import { eventsIn } from "../support/ics.js";
import { cli, scratchFile, scratchFolder } from "../support/run-cli.js";

const feeds = [
  {
    name: "Nettle tea",
    rate: "5 mL per L",
    every: "2 weeks",
    from: "2027-06-01",
    to: "2027-08-31",
    for: ["south"],
  },
];
const plainGarden = gardenText({ ...referenceBottle, feeds });
/** The same names, as people paste them. */
const overLines = plainGarden
  .replace("garden: Weir Cottage", "garden: |\n  Weir\n\n  Cottage\n")
  .replace("name: Nettle tea", 'name: "Nettle\\n  tea "')
  .replace("crop: tomato", "crop: >-\n          tomato\n")
  .replace(
    "id: toms",
    'id: toms\n        name: "  Tall \\t ones"\n        variety: |\n          early\n          cherry',
  );

describe("a garden whose names stand on several lines", () => {
  test("is planned and printed with each on one", async () => {
    const file = scratchFile("garden.yaml", overLines);
    for (const command of [
      ["plan"],
      ["why", "toms"],
      ["calendar"],
      ["sheet"],
      ["labels"],
      ["batch"],
    ]) {
      const [name = "", ...more] = command;
      const { code, stdout, stderr } = await cli([name, file, ...more]);
      expect({ command, code, stderr }).toEqual({ command, code: 0, stderr: "" });
      expect(stdout).not.toMatch(/Weir\s*\n|Weir  |Weir\\n|Nettle\\n|Nettle  tea|early\\n/);
    }
    const plan = await cli(["plan", file]);
    expect(plan.stdout).toMatch(/^Weir Cottage/);
    expect(plan.stdout).toContain("Nettle tea");
  });

  test("writes into it, and the name means the same as before", async () => {
    const file = scratchFile("garden.yaml", overLines);
    const world = { today: "2027-06-20" };
    const logged = await cli(["log", file, "--feed", "Nettle  tea", "--on", "2027-06-15"], world);
    expect(logged).toMatchObject({ code: 0, stderr: `${file}: written\n` });
    const text = readFileSync(file, "utf8");
    expect(text.startsWith(overLines.slice(0, overLines.indexOf("beds:")))).toBe(true);
    expect(text).toContain("Nettle tea");
    expect((await cli(["check", file], world)).code).toBe(0);
    await cli(["log", file, "--undo"], world);
    expect(readFileSync(file, "utf8")).toBe(`${overLines}log: []\n`);
  });

  test("keeps every UID of the calendar that it published under such names", async () => {
    const folder = scratchFolder();
    const [file, out] = [join(folder, "garden.yaml"), join(folder, "garden.ics")];
    writeFileSync(file, plainGarden);
    await cli(["calendar", file, "--out", out], { today: "2027-03-01" });
    // As a version wrote it that took the line breaks into the names.
    const before = readFileSync(out, "utf8")
      .replace(/\r\n /g, "")
      .replaceAll('"feed":"Nettle tea"', String.raw`"feed":"Nettle\\n  tea "`)
      .replaceAll("mL: Nettle tea", String.raw`mL: Nettle\n  tea `)
      .replace("NAME:Weir Cottage", String.raw`NAME:Weir\nCottage`);
    expect(before).toContain(String.raw`"feed":"Nettle\\n  tea "`);
    writeFileSync(out, before);
    writeFileSync(file, overLines);
    const { code } = await cli(["calendar", file, "--out", out], { today: "2027-07-01" });
    expect(code).toBe(0);
    const now = readFileSync(out, "utf8");
    const uids = (text: string): string[] =>
      eventsIn(text)
        .map(({ uid }) => uid)
        .sort();
    expect(uids(now)).toEqual(uids(before));
    // What is past stays as it was told.
    expect(now).toContain(String.raw`SUMMARY:Feed 2 cans\, 60 mL: Nettle\n  tea `);
    expect(now).toContain("60 mL: Nettle tea\r\n");
    expect(now.replace(/\r\n /g, "").match(/"feed":"[^"]*"/g)).toEqual(
      Array.from({ length: 7 }, () => '"feed":"Nettle tea"'),
    );
    await cli(["calendar", file, "--out", out], {
      today: "2027-07-01",
      now: "2027-07-01T20:00:00Z",
    });
    expect(readFileSync(out, "utf8")).toBe(now);
  });
});

describe("a name in which a letter hides", () => {
  test.each([
    ["\u202e", "U+202E", "a sign that turns the text around it"],
    ["\u2067", "U+2067", "a sign that turns the text around it"],
    ["\u200f", "U+200F", "a sign that turns the text around it"],
    ["\u001b", "U+001B", "a control character"],
    ["\u007f", "U+007F", "a control character"],
    ["\u009b", "U+009B", "a control character"],
    ["\u2028", "U+2028", "a line break of another kind"],
    ["\u200b", "U+200B", "a sign that nobody sees"],
    ["\u00ad", "U+00AD", "a sign that nobody sees"],
  ])("is refused with its place and a mend: %j", async (letter, code, kind) => {
    const file = scratchFile("g.yaml", plainGarden.replace("Weir C", `Weir ${letter}C`));
    for (const command of ["check", "plan", "calendar"]) {
      const told = await cli([command, file]);
      expect(told).toMatchObject({ code: 1, stdout: "" });
      expect(told.stderr).toBe(
        `${file}:2:14: \`garden\` holds ${kind}, ${code}: take it out, or write it anew\n`,
      );
    }
    const { problems } = JSON.parse((await cli(["check", file, "--json"])).stdout) as {
      problems: { code: string; fix?: unknown }[];
    };
    expect(problems).toMatchObject([
      { code: "hidden-letter", fix: { to: { line: 2, column: 15 }, text: "" } },
    ]);
  });

  test.each([
    [
      'garden: "Weir \\u202eCottage"',
      "2:9: `garden` holds a sign that turns the text around it, U+202E: take out its escape",
    ],
    [
      'garden: "Weir \\ud83cCottage"',
      "2:9: `garden` holds half a letter, U+D83C: take out its escape",
    ],
    [
      '"gar\\u200bden": Weir Cottage',
      "2:1: this key holds a sign that nobody sees, U+200B: take out its escape",
    ],
  ])(
    "is refused where it is written as an escape, and where it is a key: %s",
    async (line, told) => {
      const file = scratchFile("g.yaml", plainGarden.replace("garden: Weir Cottage", line));
      expect((await cli(["check", file])).stderr).toBe(`${file}:${told}\n`);
    },
  );

  test("is refused in a rule file too", async () => {
    const folder = scratchFolder();
    const file = join(folder, "garden.yaml");
    writeFileSync(file, `${plainGarden}rules: mine.yaml\n`);
    writeFileSync(join(folder, "mine.yaml"), "version: 1\nrules:\n  - id: a\u202eb\n");
    expect((await cli(["check", file])).stderr).toBe(
      "mine.yaml:3:10: `id` holds a sign that turns the text around it, U+202E: take it out, or write it anew\n",
    );
  });
});

test("names of other scripts and emoji are as good as any", async () => {
  const names = ["בית הסכר", "بيت السد", "खेत क्‍ष", "باغچهٔ نمی‌دانم", "ផ្ទះ\u200bសួន", "👩‍🌾 Hof 🏴󠁧󠁢󠁳󠁣󠁴󠁿"];
  for (const name of names) {
    const file = scratchFile("g.yaml", gardenText({ garden: name, feeds }));
    const { code, stdout } = await cli(["plan", file]);
    expect(code).toBe(0);
    expect(stdout.startsWith(name)).toBe(true);
  }
});

describe("what is printed never acts on a terminal", () => {
  const bad = "\u001b[31m\u202ered\u0007";
  const shown = "\\u001b[31m\\u202ered\\u0007";
  const world = { color: true, columns: 80 };

  test.each([
    [["check", `${bad}.yaml`], 3],
    [["check", `a\nb${bad}.yaml`], 3],
    [["why", examplePathOf(), bad], 2],
    [["labels", examplePathOf(), "--batch", bad], 2],
    [["crops", bad], 2],
    [["help", bad], 2],
    [["completion", bad], 2],
    [["plan", examplePathOf(), "--today", bad], 2],
    [["plan", examplePathOf(), `--${bad}`], 2],
    [[bad], 2],
    [["log", examplePathOf(), "--planting", bad], 2],
    [["log", examplePathOf(), "--sign", bad, "--planting", "toms"], 2],
    [["batch", "--shells", bad], 2],
    [["changes", `${bad}.ics`, examplePathOf()], 3],
  ])("whatever the command line says: %j", async (argv, code) => {
    const told = await cli(argv, world);
    expect(told.code).toBe(code);
    expect(hiddenIn(told.stdout + told.stderr)).toBeUndefined();
    expect(told.stderr).toContain(shown);
  });

  test("whatever a file's values are, in problems and as JSON", async () => {
    const file = scratchFile(
      "g.yaml",
      gardenText({ timezone: "Nowhere" }).replace("Nowhere", `Nowhere #${bad}`) + `${bad}: 1\n`,
    );
    for (const more of [[], ["--json"]]) {
      const { stdout, stderr } = await cli(["check", file, ...more], world);
      expect(hiddenIn(stdout + stderr)).toBeUndefined();
    }
  });

  test("whatever an earlier calendar says; what it says is not printed at length", async () => {
    const folder = scratchFolder();
    const [file, out] = [join(folder, "garden.yaml"), join(folder, "garden.ics")];
    writeFileSync(file, plainGarden);
    await cli(["calendar", file, "--out", out], { today: "2027-03-01" });
    const odd = readFileSync(out, "utf8").replace(
      /^SUMMARY:.*/gm,
      `SUMMARY:${bad}${"é".repeat(3000)}`,
    );
    writeFileSync(out, odd);
    const told = await cli(["changes", out, file], { ...world, today: "2027-03-02" });
    expect(told).toMatchObject({ code: 0, stderr: "" });
    expect(told.stdout).toContain(shown);
    expect(hiddenIn(told.stdout.replace(/\u001b\[(1|22)m/g, ""))).toBeUndefined();
    for (const line of told.stdout.split("\n")) expect(line.length).toBeLessThan(200);
  });

  test("but a garden file goes to a pipe as the grower wrote it", async () => {
    const file = scratchFile("g.yaml", `# ${bad}\n${gardenText()}`);
    const argv = ["new", "--from", file, "--today", "2027-11-20"];
    expect((await cli(argv)).stdout).toContain(`# ${bad}`);
    const onScreen = await cli(argv, world);
    expect(onScreen.stdout).toContain(`# ${shown}`);
    expect(hiddenIn(onScreen.stdout)).toBeUndefined();
  });

  test("a file's name with a line break makes no line of its own", async () => {
    const folder = scratchFolder();
    const file = join(folder, "a\nall is well.yaml");
    writeFileSync(file, gardenText({ timezone: "Nowhere" }));
    const { stderr } = await cli(["check", file]);
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
    expect(stderr).toContain("a\\u000aall is well.yaml:3:11:");
  });
});

function examplePathOf(): string {
  return new URL("../../examples/back-garden.yaml", import.meta.url).pathname;
}
