/** What growers write in words of their own, through the commands. */
import { expect, test } from "vitest";
import { type GardenDiffers, gardenText } from "../support/a-garden.js";
import { cli, type CliResult, scratchFile } from "../support/run-cli.js";
import { growing } from "./a-live-garden.js";

function plan(differs: GardenDiffers): Promise<CliResult> {
  const file = scratchFile("garden.yaml", gardenText({ ...growing({}), ...differs }));
  return cli(["plan", file], { today: "2027-07-05" });
}

const nettle = { name: "nettle", rate: "100 mL per L" };

test.each<[string, written: GardenDiffers, meant: GardenDiffers]>([
  [
    "days of the week in full, in any case",
    { feeding: { days: ["Mon", "Thursday"] }, feeds: [{ ...nettle, days: ["SUNDAY", "Wed"] }] },
    { feeding: { days: ["mon", "thu"] }, feeds: [{ ...nettle, days: ["sun", "wed"] }] },
  ],
  [
    "signs with blanks and capitals",
    { signs: [{ on: "2027-07-02", planting: "toms", sign: "Blossom end rot" }] },
    { signs: [{ on: "2027-07-02", planting: "toms", sign: "blossom-end-rot" }] },
  ],
])("%s", async (_, written, meant) => {
  const found = await plan(written);
  expect(found).toMatchObject({ code: 0, stderr: "" });
  expect(found.stdout).toBe((await plan(meant)).stdout);
});
