// @ts-nocheck
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { cli, examplePath, scratchFolder } from "../support/run-cli.js";

const file = examplePath("back-garden");
const us = examplePath("shared-garden");

describe("sheet", () => {
  test("makes one page that needs nothing else, for the paper of the garden's measures", async () => {
    const { code, stdout, stderr } = await cli(["sheet", file]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(stdout).toMatch(/^<!doctype html>/i);
    expect(stdout).toContain("Weir Cottage");
    expect(stdout).toContain("210mm 297mm");
    expect((await cli(["sheet", us])).stdout).toContain("215.9mm 279.4mm");
    expect((await cli(["sheet", us, "--paper", "a4"])).stdout).toContain("210mm 297mm");
  });

  test("--svg gives the picture alone", async () => {
    expect((await cli(["sheet", file, "--svg"])).stdout).toMatch(/^<svg[\s\S]*<\/svg>\s*$/);
  });

  test("--calcium gives the page on where the calcium comes from, and never with --svg", async () => {
    const { code, stdout } = await cli(["sheet", us, "--calcium"]);
    expect(code).toBe(0);
    expect(stdout).toContain("where its calcium comes from");
    expect(stdout).toContain("215.9mm 279.4mm");
    expect((await cli(["sheet", us, "--calcium", "--svg"])).code).toBe(2);
  });

  test("of a watered garden has its water a week, and what to do about the longest dry time", async () => {
    const dry = join(scratchFolder(), "dry.yaml");
    writeFileSync(dry, readFileSync(file, "utf8").replace(/^ {4}watering: .*\n/gm, ""));
    const options = ["--today", "2027-06-14"];
    expect((await cli(["sheet", file, ...options])).stdout).toContain("Water a week");
    expect((await cli(["sheet", dry, ...options])).stdout).not.toContain("Water a week");
    const first = async (garden: string) =>
      (await cli(["sheet", garden, "--calcium", ...options])).stdout;
    expect(await first(file)).toContain("while you are away: have someone water");
    expect(await first(dry)).toContain("How much is watered is not in the garden file");
  });

  test("an unknown paper is wrong usage", async () => {
    expect((await cli(["sheet", file, "--paper", "a5"])).code).toBe(2);
  });

  test("--out writes the file", async () => {
    const out = join(scratchFolder(), "sheet.html");
    expect(await cli(["sheet", file, "--out", out])).toMatchObject({ code: 0, stdout: "" });
    expect(readFileSync(out, "utf8")).toBe((await cli(["sheet", file])).stdout);
  });
});

describe("labels", () => {
  const batches = async (): Promise<string[]> => {
    const plan = JSON.parse((await cli(["plan", "--json", file])).stdout) as {
      stock: { making: { batches: { id: string }[] } };
    };
    return plan.stock.making.batches.map((batch) => batch.id);
  };

  test("makes a label for every bottle, with what a label must say", async () => {
    const { code, stdout } = await cli(["labels", file]);
    expect(code).toBe(0);
    for (const id of await batches()) expect(stdout).toContain(id.replace("batch-", "Batch "));
    expect(stdout).toMatch(/not for drinking/i);
    expect(stdout).toMatch(/children/i);
  });

  test("--batch leaves the labels of one batch", async () => {
    const [first] = await batches();
    const { stdout } = await cli(["labels", file, "--batch", first ?? ""]);
    expect(stdout).toContain(">Batch 1");
    expect(stdout).not.toContain(">Batch 2");
    expect((await cli(["labels", file])).stdout).toContain(">Batch 2");
    const wrong = await cli(["labels", file, "--batch", "nope"]);
    expect(wrong.code).toBe(2);
    expect(wrong.stderr).toContain(first);
  });

  test.each([
    [["--size", "big"]],
    [["--size", "300x300"]],
    [["--size", "5x5"]],
    [["--columns", "two"]],
    [["--gap-down", "-3"]],
    [["--size", "80x40", "--columns", "9"]],
  ])("%j is wrong usage, told in words", async (argv) => {
    const { code, stderr } = await cli(["labels", file, ...argv]);
    expect(code).toBe(2);
    expect(stderr).not.toContain(" at ");
  });

  test("a size of one's own is laid out on the paper", async () => {
    const { code, stdout } = await cli(["labels", us, "--size", "80x60", "--gap-across", "4 mm"]);
    expect(code).toBe(0);
    expect(stdout).toContain("80mm");
  });

  test("--sizes lists the sheets that are known", async () => {
    expect((await cli(["labels", file, "--sizes"])).stdout).toMatch(/^63\.5x38\.1 +a4 +3 x 7$/m);
  });
});
