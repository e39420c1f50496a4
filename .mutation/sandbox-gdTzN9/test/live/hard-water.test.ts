/** Water so hard that the can is told to be too alkaline: whose figure to look at. */
// @ts-nocheck

import { expect, test } from "vitest";
import { gardenText } from "../support/a-garden.js";
import { cli } from "../support/run-cli.js";

async function checked(sourceWater: object): Promise<string> {
  const { stdout } = await cli(["check", "-"], {
    stdin: gardenText({ source_water: sourceWater }),
  });
  return stdout.replace(/\s+/g, " ");
}

test("an alkalinity that nobody gave is asked for, one that was given is to be checked", async () => {
  expect(await checked({ hardness: "400 mg/L" })).toContain(
    "give the water's `alkalinity:`, which is taken to be as high as its hardness",
  );
  const given = await checked({ hardness: "400 mg/L", alkalinity: "400 mg/L" });
  expect(given).toContain("check the figures of the source water");
  expect(await checked({ hardness: "400 mg/L", alkalinity: "150 mg/L" })).not.toContain("is at pH");
});
