/** Garden files as other programs leave them, through the commands. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import type { GardenFile } from "../../src/compiled/garden-file.js";
import { gardenText } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";
import { growing } from "./a-live-garden.js";

const today = "2027-07-01";
const text = gardenText(growing({}));
const garden = parse(text) as GardenFile;

/** The file after a feeding, a stage and a batch of its own are written down. */
async function afterLogs(name: string, before: string): Promise<string> {
  const file = scratchFile(name, before);
  for (const argv of [
    ["--planting", "toms", "--stock", "30 mL", "--on", "2027-06-28"],
    ["--planting", "toms", "--stage", "flowering", "--on", "2027-06-20"],
    ["--batch", "B1", "--step", "made", "--volume", "1 L", "--on", "2027-06-10"],
  ])
    expect(await cli(["log", file, ...argv], { today })).toMatchObject({ code: 0 });
  return readFileSync(file, "utf8");
}

const said = {
  log: [{ on: "2027-06-28", planting: "toms", stock: "30 mL" }],
  seen: [{ stage: "flowering", on: "2027-06-20" }],
  batches: [{ id: "B1", made: "2027-06-10", volume: "1 L" }],
};

describe("a garden file that is JSON", () => {
  test.each([
    ["on one line", undefined, ""],
    ["set in by two blanks", 2, "\n"],
    ["set in by tabs", "\t", "\n"],
  ])("stays so, %s", async (_, indent, end) => {
    const written = (value: unknown): string => JSON.stringify(value, null, indent) + end;
    const after = await afterLogs("garden.json", written(garden));
    const { log, beds, stock } = JSON.parse(after) as GardenFile;
    expect({ log, seen: beds[0]?.plantings[0]?.seen, batches: stock?.batches }).toEqual(said);
    expect(after).toBe(written(JSON.parse(after)));
  });

  test("keeps lines that a person laid out", async () => {
    const before = JSON.stringify(
      { ...garden, log: null, stock: { batches: [] } },
      null,
      2,
    ).replace(/\[\s+"mon"[^\]]*\]/, '["mon", "tue", "fri"]');
    const after = await afterLogs("garden.json", before);
    expect(after).toContain('"days": ["mon", "tue", "fri"]');
    expect(after).toContain(
      '"log": [{ "on": "2027-06-28", "planting": "toms", "stock": "30 mL" }]',
    );
    const { log, beds, stock } = JSON.parse(after) as GardenFile;
    expect({ log, seen: beds[0]?.plantings[0]?.seen, batches: stock?.batches }).toEqual(said);
  });

  test("is as it was when what was written is taken out again", async () => {
    const before = `${JSON.stringify({ ...garden, log: [] }, null, 2)}\n`;
    const file = scratchFile("garden.json", before);
    await cli(["log", file, "--planting", "toms", "--stock", "30 mL"], { today });
    expect(readFileSync(file, "utf8")).not.toBe(before);
    expect(await cli(["log", file, "--undo"], { today })).toMatchObject({ code: 0 });
    expect(readFileSync(file, "utf8")).toBe(before);
  });
});

describe("line ends", () => {
  const inFeeds = afterLogs("plot.yaml", text);

  test.each([
    ["of Windows", "\r\n"],
    ["of a carriage return alone", "\r"],
  ])("%s are read, and written", async (_, end) => {
    const after = await afterLogs("plot.yaml", text.replaceAll("\n", end));
    expect(after).toBe((await inFeeds).replaceAll("\n", end));
  });

  test("of a carriage return alone count as lines, also for next year's file", async () => {
    const file = scratchFile("plot.yaml", text.replaceAll("\n", "\r"));
    const { stdout } = await cli(["new", "--from", file], { today });
    const { stdout: inLines } = await cli(["new", "--from", scratchFile("plot.yaml", text)], {
      today,
    });
    expect(stdout).toBe(inLines.replaceAll("\n", "\r"));
    const wrong = scratchFile(
      "plot.yaml",
      text.replaceAll("\n", "\r").replace("version: 1", "version: 7"),
    );
    expect((await cli(["check", wrong])).stderr).toMatch(/plot\.yaml:1:10: /);
    const lower = scratchFile(
      "plot.yaml",
      text.replaceAll("\n", "\r").replace("Europe/Dublin", "Nowhere"),
    );
    expect((await cli(["check", lower])).stderr).toMatch(/plot\.yaml:3:11: /);
  });

  test("of both kinds stay, line by line, and a byte order mark stays", async () => {
    const [first = "", ...rest] = text.split("\n");
    const mixed = `\ufeff${first}\r\n${rest.join("\n")}`;
    const after = await afterLogs("plot.yaml", mixed);
    for (const [i, line] of mixed.split("\n").entries())
      expect(after.split("\n").includes(line) || `line ${i}: ${line}`).toBe(true);
    expect(after.startsWith(`\ufeff${first}\r\n`)).toBe(true);
  });
});

describe("a list left empty", () => {
  const empty = (file: string): Promise<unknown> => cli(["plan", file, "--json"], { today });

  test.each(["log", "signs", "feeds"])("says nothing: %s", async (key) => {
    const left = scratchFile("plot.yaml", `${text}${key}:\n`);
    const none = scratchFile("plot.yaml", `${text}${key}: []\n`);
    const told = await empty(left);
    expect(told).toMatchObject({ code: 0, stderr: "" });
    expect(told).toEqual(await empty(none));
  });

  test.each([
    ["stock", "stock:\n  batches:\n"],
    ["feeding", "feeding:\n  days: [mon]\n  away:\n"],
  ])("says nothing in %s either", async (key, lines) => {
    const file = scratchFile("plot.yaml", `${gardenText({ ...garden, [key]: undefined })}${lines}`);
    expect(await empty(file)).toMatchObject({ code: 0, stderr: "" });
  });

  test("is written into", async () => {
    const after = await afterLogs("plot.yaml", `${text}log:\nsigns: # none yet\n`);
    expect(after).toContain(
      "log:\n  - { on: 2027-06-28, planting: toms, stock: 30 mL }\nsigns: # none yet\n",
    );
  });

  test.each(["beds", "can", "stock", "calendar"])(
    "is no other key: %s asks for its value",
    async (key) => {
      const file = scratchFile(
        "plot.yaml",
        `${gardenText({ ...garden, [key]: undefined })}${key}:\n`,
      );
      const { code, stderr } = await cli(["check", file], { today });
      expect(code).toBe(1);
      expect(stderr).toContain(`\`${key}\` has no value: give it one, like `);
    },
  );
});
