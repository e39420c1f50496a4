/** The label sheets of the data file. */
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import {
  labelSheet,
  type LabelSheet,
  type LabelSheetRow,
} from "../../../src/outputs/print/label-sheets.js";

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
