/** What growers write in words of their own, through the commands. */
// @ts-nocheck

import { expect, test } from "vitest";
import { type GardenDiffers, gardenText } from "../support/a-garden.js";
import { cli, type CliResult, scratchFile } from "../support/run-cli.js";
import { growing } from "./a-live-garden.js";

function planOfText(text: string): Promise<CliResult> {
  return cli(["plan", scratchFile("garden.yaml", text)], { today: "2027-07-05" });
}

function plan(differs: GardenDiffers): Promise<CliResult> {
  return planOfText(gardenText({ ...growing({}), ...differs }));
}

/** A bed of two plantings, watered as a whole. */
function bed(differs: object): Pick<GardenDiffers, "beds"> {
  const dates = { transplanted: "2027-04-10", days_to_harvest: 140 };
  const plantings = ["toms", "more"].map((id) => ({ id, crop: "tomato", plants: 3, ...dates }));
  return { beds: [{ id: "south", ...differs, plantings }] };
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
  ["half a gallon", { amounts: "us", can: "half gallon" }, { amounts: "us", can: "0.5 gal" }],
  [
    "a quarter, and a half more",
    { amounts: "us", can: "a quarter of a gallon", sprayer: "1 and a half gallons" },
    { amounts: "us", can: "1/4 gal", sprayer: "1.5 gal" },
  ],
  [
    "millimetres of water on a bed",
    bed({ area: "4 m2", water: "25 mm" }),
    bed({ area: "4 m2", water: "25 L per m2" }),
  ],
  [
    "an inch of water",
    growing({ water: "1 inch", area: "2 m2" }),
    growing({ water: "50.8 L", area: "2 m2" }),
  ],
  [
    "alkalinity in meq/L, hardness in mval/L",
    { source_water: { alkalinity: "2 meq/L", hardness: "3 mval/L" } },
    { source_water: { alkalinity: "100.086 mg/L", hardness: "150.129 mg/L" } },
  ],
  [
    "degrees of carbonate hardness",
    { source_water: { alkalinity: "10 dKH", hardness: "14 °dH" } },
    { source_water: { alkalinity: "178.4795905629759 mg/L", hardness: "14 dH" } },
  ],
])("%s", async (_, written, meant) => {
  const found = await plan(written);
  expect(found).toMatchObject({ code: 0, stderr: "" });
  expect(found.stdout).toBe((await plan(meant)).stdout);
});

const file = gardenText(growing({ water: undefined }));

/** What `plan` says of the file with one text put in the place of another. */
async function saidOf(found: string, written: string): Promise<string> {
  expect(file).toContain(found);
  const { code, stderr } = await planOfText(file.replace(found, written));
  expect(code).toBe(1);
  return stderr;
}

test.each([
  ["can: 10 L", "can: 1,5 L", "`1,5 L` has a comma in the number: write 1.5 L"],
  ["can: 10 L", "can: 1,500 mL", "write thousands without a comma, like 1500 mL"],
  ["plants: 6", "plants: 6\n        water: 1,5 L per plant", ": write 1.5 L per plant"],
  ["plants: 6", "plants: 6\n        water: 6 m", "`6 m` is too large to be meant"],
  ["plants: 6", "plants: 6\n        rate: 10 mL in 4,5 L", ": write 10 mL in 4.5 L"],
  ["plants: 6", "plants: 6\n        level: 1,5", "comma in the number 1,5: write 1.5"],
  ["can: 10 L", "stock: { vinegar: '5,5 %' }", "`5,5 %` has a comma in the number: write 5.5 %"],
  [
    "can: 10 L",
    "stock: { bottles: 1,5 L }",
    "the key `5 L` is not known here: write numbers with a point, like 1.5 L",
  ],
  ["id: south", "id: balcony pots", "`id` cannot be balcony pots: write `balcony-pots`"],
  ["id: south", "id: Kübel (Hof)", "write `Kubel-Hof`"],
  ["id: south", "id: теплица 1?", "like south"],
])("`%s` as `%s` is told with the way to mend it", async (found, written, words) => {
  expect(await saidOf(found, written)).toContain(words);
});

test("a depth of water on ground of no known area is told with the way to mend it", async () => {
  const { code, stderr } = await plan(bed({ water: "25 mm" }));
  expect(code).toBe(1);
  expect(stderr).toContain(
    "the water is a depth, but the area of toms is not given: add `area: 2 m2` to it or to its bed",
  );
});
