/** Last pick, habit, row and cover, as a grower meets them at the commands. */
// @ts-nocheck

import { expect, test } from "vitest";
import { parse } from "yaml";
import type { GardenFile } from "../../src/compiled/garden-file.js";
import { gardenText, planted, type PlantingDiffers } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";

async function problemOf(differs: PlantingDiffers): Promise<string> {
  const { code, stderr } = await cli(["check", "-"], { stdin: gardenText(planted(differs)) });
  expect(code).toBe(1);
  return stderr;
}

test("a row that is chosen is one of those that `crops` prints, and the problem names them", async () => {
  const problem = await problemOf({ row: "mediterranean" });
  const { stdout } = await cli(["crops", "tomato"]);
  const ids = [...stdout.matchAll(/([a-z-]+): \d+\/\d+/g)].map(([, id]) => id);
  expect(ids).toHaveLength(5);
  expect(problem).toContain(`its rows are ${ids.join(", ")}`);
});

test("a habit is only for crops that have two, and the problem names them", async () => {
  expect(await problemOf({ crop: "green bean", habit: "bush" })).toContain(
    "is not told apart by its habit: leave `habit` out: it is for tomato",
  );
});

test("a crop that is picked once has no last pick, and the problem says what to write", async () => {
  expect(await problemOf({ crop: "cabbage", picked_until: "2027-09-10" })).toContain(
    "cabbage is not: write `removed:` with the day it is taken out",
  );
});

test("next year's file keeps covers and the last pick in their year", async () => {
  const cover = { kind: "fleece", from: "2027-04-01", to: "2027-05-20", warmer: "2 C" };
  const [bed] = planted({ picked_until: "2027-10-10" }).beds as object[];
  const file = scratchFile("garden.yaml", gardenText({ beds: [{ ...bed, cover }] }));
  const next = await cli(["new", "--from", file, "--today", "2027-11-05"]);
  expect(next.code).toBe(0);
  expect((parse(next.stdout) as GardenFile).beds[0]?.cover).toEqual({
    ...cover,
    from: "2028-04-01",
    to: "2028-05-20",
  });
  expect(next.stdout).toContain("#   picked_until: 2028-10-10");
  const checked = await cli(["check", "-", "--today", "2027-11-05"], { stdin: next.stdout });
  expect({ code: checked.code, stderr: checked.stderr }).toEqual({ code: 0, stderr: "" });
});
