// @ts-nocheck
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { basename, dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { gardenText } from "../support/a-garden.js";
import { type CliResult, cli, scratchFile } from "../support/run-cli.js";
import { growing } from "./a-live-garden.js";

const today = "2027-07-01";
const aGarden = (): string => scratchFile("plot.yaml", gardenText(growing({}, { id: "more" })));
const lockOf = (file: string): string => join(dirname(file), `.${basename(file)}.lock`);
const logOf = (file: string, planting: string, pause?: () => Promise<void>): Promise<CliResult> =>
  cli(["log", file, "--planting", planting, "--stock", "30mL"], { today, ...(pause && { pause }) });

/** Another process that is at work on a garden: this one's own parent. */
function heldByAnother(file: string): void {
  writeFileSync(lockOf(file), `${process.ppid} ${hostname()} a1`);
}

describe("two that write into one garden at once", () => {
  test("both end up in the file", async () => {
    const file = aGarden();
    const runs: Promise<CliResult>[] = [];
    const afterThe = (other: number) => async (): Promise<void> => {
      await runs[other];
    };
    runs.push(logOf(file, "toms", afterThe(1)), logOf(file, "more", afterThe(0)));
    const both = await Promise.all(runs);
    expect(both.map(({ code }) => code)).toEqual([0, 0]);
    const text = readFileSync(file, "utf8");
    for (const planting of ["toms", "more"]) expect(text).toContain(`planting: ${planting}, stock`);
  });

  test.each([
    ["log", ["--planting", "toms", "--stock", "30mL"]],
    ["calendar", ["--out", "plot.ics"]],
  ])("and one that waits too long: %s says so and writes nothing", async (command, argv) => {
    const file = aGarden();
    const before = readFileSync(file, "utf8");
    heldByAnother(file);
    const said = await cli([command, file, ...argv], { today, pause: () => Promise.resolve() });
    expect(said).toMatchObject({ code: 3, stdout: "" });
    expect(said.stderr).toMatch(
      /plot\.yaml: process \d+ on .* is working on it, so nothing was written: try/,
    );
    expect(readFileSync(file, "utf8")).toBe(before);
  });

  test("publish says so and writes nothing", async () => {
    const file = aGarden();
    heldByAnother(file);
    const folder = join(dirname(file), "public");
    const said = await cli(["publish", folder, file], { today, pause: () => Promise.resolve() });
    expect(said).toMatchObject({ code: 3, stdout: "" });
    expect(said.stderr).toContain("is working on it, so nothing was written");
    rmSync(lockOf(file));
    expect(await cli(["publish", folder, file], { today })).toMatchObject({ code: 0 });
  });

  test.each([["plan"], ["check"], ["calendar"], ["log", "--dry-run", "--planting", "toms"]])(
    "commands that only read do not wait: %s",
    async (command, ...argv) => {
      const file = aGarden();
      heldByAnother(file);
      const pause = (): Promise<void> => Promise.reject(new Error("it waited"));
      expect(await cli([command, file, ...argv], { today, pause })).toMatchObject({ code: 0 });
    },
  );
});
