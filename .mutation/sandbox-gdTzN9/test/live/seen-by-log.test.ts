// @ts-nocheck
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { cli, scratchFolder } from "../support/run-cli.js";
import { fileText, log, logged } from "./logging.js";

const text = `version: 1
garden: Weir Cottage
timezone: Europe/Dublin
season: { from: 2027-03-01, to: 2027-10-31 }
can: 10 L
beds:
  - id: south
    plantings:
      - { id: toms, crop: tomato, plants: 6, transplanted: 2027-05-20, water: 2 L per plant } # red
      - id: lettuce
        crop: lettuce
        plants: 8
        sown: 2027-05-20
        water: 4 L
signs:
  - { on: 2027-06-20, planting: lettuce, sign: tipburn } # the outer leaves
# the end
`;

function plot(): string {
  const file = join(scratchFolder(), "plot.yaml");
  writeFileSync(file, text);
  return file;
}

const today = "2027-06-25";

describe("a stage", () => {
  test("is written into its planting, and moves what comes", async () => {
    const file = plot();
    const out = await logged(file, today, "--planting", "toms", "--stage", "flowering");
    expect(fileText(file)).toBe(
      text.replace(
        "2 L per plant }",
        "2 L per plant, seen: [{ stage: flowering, on: 2027-06-25 }] }",
      ),
    );
    expect(out).toContain(
      "Written into the plantings of Weir Cottage\n  2027-06-25  toms  flowering seen\n",
    );
    expect(out).toMatch(/^Due next\n {2}toms {2}\w+ \d+ \w+ 2027/m);
    const { stdout } = await cli(["why", file, "toms"], { today });
    expect(stdout).toContain("flowering");
    expect(stdout).toContain("seen");
  });

  test("of another day is that day's, once", async () => {
    const file = plot();
    const seen = ["--planting", "lettuce", "--stage", "heading"] as const;
    await logged(file, today, ...seen, "--on", "2027-06-22");
    expect(fileText(file)).toContain(
      "        water: 4 L\n        seen:\n          - { stage: heading, on: 2027-06-22 }\nsigns:\n",
    );
    const { stderr } = await log(file, today, ...seen);
    expect(stderr).toBe(
      `${file}: the file says so of lettuce already (heading seen on 2027-06-22); nothing was written\n`,
    );
  });

  test("that its crop has not is refused with its place in the file", async () => {
    const file = plot();
    const { code, stderr } = await log(file, today, "--planting", "lettuce", "--stage", "ripening");
    expect(code).toBe(1);
    expect(stderr).toContain("ripening");
    expect(stderr).toContain("nothing was written; the places above are those of the file with it");
  });
});

describe("a sign", () => {
  test("goes behind the others, however it is spelt", async () => {
    const file = plot();
    const sign = ["--planting", "toms", "--sign", "Blossom end rot"] as const;
    const out = await logged(file, today, ...sign);
    const line = "  - { on: 2027-06-25, planting: toms, sign: blossom-end-rot }\n";
    expect(fileText(file)).toBe(text.replace("# the end\n", `${line}# the end\n`));
    expect(out).toContain("Written into the signs of Weir Cottage\n");
    expect((await log(file, today, ...sign)).stderr).toContain(
      "the file says so of toms already (blossom-end-rot on 2027-06-25)",
    );
  });

  test("is shown and not written, where that is asked", async () => {
    const file = plot();
    const argv = ["--planting", "toms", "--sign", "white-crust", "--dry-run"];
    const { stdout, stderr } = await log(file, today, ...argv);
    expect(stdout).toContain("To be written into the signs of Weir Cottage");
    expect(stderr).toContain("nothing was written, as asked");
    expect(fileText(file)).toBe(text);
  });
});

describe("what is asked wrongly", () => {
  test.each<[string, readonly string[], string]>([
    [
      "a sign of no planting",
      ["--sign", "tipburn"],
      "--sign is of a planting: name it with --planting",
    ],
    ["a stage of no planting", ["--stage", "heading"], "--stage is of a planting"],
    [
      "a sign that nobody knows",
      ["--planting", "toms", "--sign", "tipbrun"],
      "--sign: `tipbrun` is not known: did you mean `tipburn`?",
    ],
    [
      "a planting that is not there",
      ["--planting", "tomz", "--stage", "flowering"],
      "there is no planting tomz: did you mean toms?",
    ],
    [
      "a day to come",
      ["--planting", "toms", "--sign", "tipburn", "--on", "2027-06-26"],
      "2027-06-26 is after today, 2027-06-25",
    ],
    [
      "a sign with an amount",
      ["--planting", "toms", "--sign", "tipburn", "--stock", "3 mL"],
      "--stock does not go with --sign",
    ],
    [
      "a sign and a stage",
      ["--planting", "toms", "--sign", "tipburn", "--stage", "flowering"],
      "--stage does not go with --sign",
    ],
  ])("%s", async (_, argv, told) => {
    const { code, stderr } = await log(plot(), today, ...argv);
    expect(code).toBe(2);
    expect(stderr).toContain(told);
  });
});
