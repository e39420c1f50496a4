/** What page, index and plan say first, by the real commands on an example garden. */
// @ts-nocheck

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { cli, examplePath, scratchFolder } from "../support/run-cli.js";

async function published(garden: string, today: string): Promise<(name: string) => string> {
  const folder = scratchFolder();
  const { code, stderr } = await cli(["publish", folder, examplePath(garden), "--index"], {
    today,
  });
  expect(code, stderr).toBe(0);
  return (name) =>
    readFileSync(join(folder, name), "utf8").replaceAll(/<style>[^]*?<\/style>/g, "");
}

test("the day on which the acid has to go in is the page's first line for its readers, and the plan's", async () => {
  const file = await published("back-garden", "2027-05-03");
  const [, day, short, asks] =
    /data-day="([\d-]+)"\s+data-short="([^"]+)"\s+data-asks="(crush [^"]*into the acid; 20 minutes)"/.exec(
      file("back-garden.html"),
    ) ?? [];
  expect(asks).toMatch(/^crush \d+ g of shell, stir into the acid/);
  const { stdout } = await cli(["plan", examplePath("back-garden")], { today: "2027-05-03" });
  expect(stdout).toContain(`${short ?? ""}\n`);
  expect(day).toMatch(/^2027-05-/);
});

test("a published index names each garden's next day and the day on which it was written", async () => {
  const index = (await published("back-garden", "2027-05-03"))("index.html");
  expect(index).toMatch(/Next: Mon 3 May, keep eggshells .*\. Page written Mon 3 May\./);
  expect(index).not.toMatch(/\btoday\b/i);
});

test("a sign is told in the card of its bed, with what the amount was", async () => {
  const page = (await published("mid-season", "2027-07-05"))("mid-season.html");
  expect(page).toContain("41 mL, was 27: blossom-end rot seen 2 Jul");
});
