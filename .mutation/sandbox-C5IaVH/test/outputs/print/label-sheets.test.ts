// @ts-nocheck
import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { ownSheet, sheetTrouble } from "../../../src/outputs/print/label-sheets.js";
import { papers } from "../../../src/outputs/print/paper.js";
import { labelSheetRows, labelSheets, sheetNamed } from "./labels-data.js";

describe("the sheets of the data file", () => {
  test("satisfy their schema", () => {
    const url = new URL("../../../schemas/label-sheets.schema.json", import.meta.url);
    const validate = new Ajv2020({ strict: true }).compile(
      JSON.parse(readFileSync(url, "utf8")) as object,
    );
    expect(validate({ label_sheets: labelSheetRows }), JSON.stringify(validate.errors)).toBe(true);
    const [{ source, ...unsourced }] = labelSheetRows as [(typeof labelSheetRows)[number]];
    expect(source).toBeTruthy();
    expect(validate({ label_sheets: [unsourced] })).toBe(false);
  });

  test.each(labelSheets.map((sheet) => [sheet.name, sheet] as const))(
    "%s fits its paper, lies in the middle of it, and is named by its size",
    (name, sheet) => {
      expect(sheetTrouble(sheet)).toBeUndefined();
      const [widthMm, heightMm] = name.split("x").map(Number) as [number, number];
      expect(Math.abs(widthMm - sheet.widthMm)).toBeLessThanOrEqual(0.1);
      expect(Math.abs(heightMm - sheet.heightMm)).toBeLessThanOrEqual(0.1);
      const paper = papers[sheet.paper];
      const rightMm =
        paper.widthMm -
        sheet.marginLeftMm -
        (sheet.columns - 1) * sheet.columnPitchMm -
        sheet.widthMm;
      // Templates are measured; none is off its middle by more than this.
      expect(Math.abs(rightMm - sheet.marginLeftMm)).toBeLessThanOrEqual(1.3);
    },
  );

  test("have names of their own", () => {
    expect(new Set(labelSheets.map(({ name }) => name)).size).toBe(labelSheets.length);
  });
});

describe("a sheet of one's own", () => {
  test("takes as many labels as fit, in the middle of the paper", () => {
    expect(ownSheet({ paper: "a4", widthMm: 60, heightMm: 40 })).toEqual({
      name: "60x40",
      paper: "a4",
      widthMm: 60,
      heightMm: 40,
      columns: 3,
      rows: 7,
      marginLeftMm: 15,
      marginTopMm: 8.5,
      columnPitchMm: 60,
      rowPitchMm: 40,
    });
  });

  test("keeps to what was measured", () => {
    const sheet = ownSheet({
      paper: "letter",
      widthMm: 90,
      heightMm: 50,
      columns: 2,
      rows: 4,
      marginLeftMm: 10,
      marginTopMm: 12,
      columnGapMm: 5,
      rowGapMm: 3,
    });
    expect(sheet).toMatchObject({
      columns: 2,
      rows: 4,
      marginLeftMm: 10,
      marginTopMm: 12,
      columnPitchMm: 95,
      rowPitchMm: 53,
    });
    expect(sheetTrouble(sheet)).toBeUndefined();
  });

  test("is the whole paper for one label of its size", () => {
    const sheet = ownSheet({ paper: "a4", widthMm: 210, heightMm: 297 });
    expect(sheet).toMatchObject({ columns: 1, rows: 1, marginLeftMm: 0, marginTopMm: 0 });
    expect(sheetTrouble(sheet)).toBeUndefined();
  });

  test.each([
    [{ widthMm: 0 }, "no size"],
    [{ widthMm: NaN }, "no size"],
    [{ widthMm: 120, columns: 2 }, "wider than A4"],
    [{ heightMm: 100, rows: 3 }, "taller than A4"],
    [{ columnGapMm: -5 }, "over each other"],
    [{ rowGapMm: -5 }, "over each other"],
    [{ marginLeftMm: 200 }, "wider than A4"],
    [{ marginTopMm: -1 }, "taller than A4"],
  ])("is refused with %j: %s", (differs, words) => {
    const own = ownSheet({ paper: "a4", widthMm: 60, heightMm: 40, ...differs });
    expect(sheetTrouble(own)).toContain(words);
  });

  test("can be written as one of the data file", () => {
    const { paper, widthMm, heightMm } = sheetNamed("70x37");
    expect(ownSheet({ paper, widthMm, heightMm })).toMatchObject({ columns: 3, rows: 8 });
  });
});
