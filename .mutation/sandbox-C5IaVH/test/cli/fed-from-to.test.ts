/** What `plan` says of each planting: fed from when until when, why, and the key that changes it. */
// @ts-nocheck

import { expect, test } from "vitest";
import { gardenText, planted, type PlantingDiffers } from "../support/a-garden.js";
import { cli } from "../support/run-cli.js";

async function fedLine(planting: PlantingDiffers): Promise<string> {
  const stdin = gardenText(planted({ id: "it", transplanted: undefined, ...planting }));
  const { code, stdout, stderr } = await cli(["plan", "-"], { stdin });
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return /\nFed\n- ((?:.+\n)+)/.exec(stdout)?.[1]?.replace(/\s+/g, " ").trim() ?? "";
}

const cucumber = { crop: "cucumber", sown: "2027-05-01" };

test.each([
  [
    "as many feedings as the rule gives",
    { crop: "tomato", transplanted: "2027-05-20" },
    /The rule gives 4 feedings\. `through: harvest` changes that\.$/,
    { through: "harvest" },
  ],
  [
    "a stage that ends",
    { crop: "pumpkin", sown: "2027-05-10" },
    /The rule feeds until fruit growth ends, on \d+ \w{3}, and no further feeding falls due by then\. `through: harvest` changes that\.$/,
    { through: "harvest" },
  ],
  [
    "the season's end",
    cucumber,
    /The season ends on 31 Oct, taken as the last pick, and a feeding in the 14 days before it .*\. `picked_until` changes that\.$/,
    { picked_until: "2027-09-20" },
  ],
  [
    "the day until which it is picked",
    { ...cucumber, picked_until: "2027-09-20" },
    /The last pick is on 20 Sep, and a feeding in the 14 days before it .*\. `picked_until` changes that\.$/,
    { picked_until: "2027-10-10" },
  ],
  [
    "its removal",
    { ...cucumber, removed: "2027-09-20" },
    /It is removed on 20 Sep\. `removed` changes that\.$/,
    { removed: "2027-10-10" },
  ],
  [
    "the usual lengths of its stages",
    { crop: "cabbage", transplanted: "2027-05-01", feed: true, through: "harvest" },
    /Its harvest ends on \d+ \w{3}, by the usual lengths of its stages\. `days_to_harvest` changes that\.$/,
    { days_to_harvest: 100 },
  ],
  [
    "its harvest, before which nothing is given",
    { crop: "celery", transplanted: "2027-05-20" },
    /Harvest begins on \d+ \w{3}, and nothing is given in the 3 days before it\. `days_to_harvest` changes that\.$/,
    { days_to_harvest: 130 },
  ],
])("%s is told, with a key that does change it", async (_, planting, told, key) => {
  const line = await fedLine(planting);
  expect(line).toMatch(told);
  expect(await fedLine({ ...planting, ...key })).not.toBe(line);
});
