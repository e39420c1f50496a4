/** The label sheets of the data file. */
// @ts-nocheck

import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { day } from "../../../src/dates.js";
import type { Amounts } from "../../../src/garden/index.js";
import {
  labelSheet,
  type LabelSheet,
  type LabelSheetRow,
} from "../../../src/outputs/print/label-sheets.js";
import type { BottleLabel } from "../../../src/outputs/print/label-rows.js";
import { loadTables } from "../../../src/tables.js";
import { cropWords } from "../../../src/words/index.js";
import type { Plan } from "../../../src/season/index.js";
import { planOf } from "../gardens.js";

export const labelSheetRows = (
  parse(
    readFileSync(new URL("../../../src/outputs/print/label-sheets.yaml", import.meta.url), "utf8"),
  ) as {
    label_sheets: LabelSheetRow[];
  }
).label_sheets;

export const labelSheets: readonly LabelSheet[] = labelSheetRows.map(labelSheet);

export function sheetNamed(name: string): LabelSheet {
  const sheet = labelSheets.find((s) => s.name === name);
  if (sheet === undefined) throw new Error(`no label sheet ${name}`);
  return sheet;
}

export const allAmounts = ["metric", "imperial", "us"] as const satisfies Amounts[];
const canAndWater: Readonly<Record<Amounts, readonly [can: string, water: string]>> = {
  metric: ["9 L", "2 L"],
  imperial: ["2 imp gal", "0.5 imp gal"],
  us: ["2 gal", "0.5 gal"],
};

/** A garden of the crops with the longest names, each fed, and of a tree that is sprayed. */
export function longNames(amounts: Amounts, pour = "shaken"): Plan {
  const crops = [...loadTables().catalogue.crops]
    .sort((a, b) => cropWords(b.name).length - cropWords(a.name).length)
    .slice(0, 10);
  const [can, water] = canAndWater[amounts];
  const beds = crops.map(
    ({ key }) =>
      `{ id: b-${key}, plantings: [{ id: ${key}, crop: ${key}, feed: true, plants: 12, transplanted: 2027-05-15, water: ${water} per plant }] }`,
  );
  return planOf(`version: 1
garden: The kitchen garden behind the old parsonage
timezone: Europe/Dublin
season: { from: 2027-03-01, to: 2027-10-31 }
amounts: ${amounts}
can: ${can}
feeding: { days: [wed, sat] }
stock: { acid: citric, pour: ${pour}, keep: fridge }
beds:
  - { id: tree, plantings: [{ id: apple, crop: apple, plants: 1 }] }
${beds.map((bed) => `  - ${bed}`).join("\n")}
`);
}

/** The label of one bottle of a small metric garden. */
export const aLabel = (differs: Partial<BottleLabel> = {}): BottleLabel => ({
  garden: "Weir Cottage",
  batch: "B1",
  bottle: 1,
  bottlesOfBatch: 1,
  madeOn: day("2027-05-08"),
  useBy: day("2027-08-06"),
  strengthGPerL: 17.7,
  pour: "shaken",
  amounts: "metric",
  doses: [{ vessel: "9 L can", stock: ["22 mL"], crops: ["pepper", "tomato"] }],
  dosesInShort: [{ vessel: "9 L can", stock: ["22 mL"], crops: [] }],
  ...differs,
});
