// @ts-nocheck
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { gardenText, planted, type GardenDiffers } from "../support/a-garden.js";
import { earlierOf } from "../support/calendars.js";
import { cli, scratchFolder } from "../support/run-cli.js";
import { growing } from "./a-live-garden.js";

const spring = "2027-05-01";
const july = "2027-07-21";

/** What a grower changes in July that would have made another spring. */
const edits: readonly (readonly [what: string, edit: GardenDiffers])[] = [
  ["other weekdays", { feeding: { days: ["tue", "fri"] } }],
  ["a holiday in June", { feeding: { away: [{ from: "2027-06-11", to: "2027-06-27" }] } }],
  ["an entry a bed", { calendar: { group: "bed" } }],
  ["more water", growing({ water: "5 L per plant" })],
  ["another date of planting out", growing({ transplanted: "2027-04-24" })],
  ["no feeding at all", planted({ feed: false })],
  ["another can", { can: "5 L" }],
];

/** The calendar of spring, and what becomes of it after an edit in July. */
async function overAnEdit(edit: GardenDiffers, use: string): Promise<[string, string]> {
  const folder = scratchFolder();
  const [garden, out] = [join(folder, "plot.yaml"), join(folder, "plot.ics")];
  const written = async (differs: GardenDiffers, today: string): Promise<string> => {
    writeFileSync(garden, gardenText({ id: "weir-cottage", ...growing({}), ...differs }));
    const { code, stderr } = await cli(["calendar", garden, "--out", out, "--for", use], { today });
    expect({ code, stderr }).toMatchObject({ code: 0 });
    return readFileSync(out, "utf8");
  };
  return [await written({}, spring), await written(edit, july)];
}

describe.each(["import", "subscription"])("what is past in a calendar for %s", (use) => {
  test.each(edits)("stands byte for byte after %s", async (_, edit) => {
    const [before, after] = await overAnEdit(edit, use);
    const past = earlierOf(before).events.filter(({ day }) => day < july);
    expect(past.filter(({ key }) => key.startsWith("feeding/")).length).toBeGreaterThan(1);
    for (const { text } of past) expect(after).toContain(text);
  });
});
