/** Sheets of labels, by their dimensions. */
import { mixedNumber } from "../../garden/index.js";
import { type Paper, papers } from "./paper.js";

export interface LabelSheet {
  /** Width by height in mm, `63.5x38.1`. */
  readonly name: string;
  readonly paper: Paper;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly columns: number;
  readonly rows: number;
  /** From the sheet's edge to the first label. */
  readonly marginLeftMm: number;
  readonly marginTopMm: number;
  /** From the left edge of one label to that of the next. */
  readonly columnPitchMm: number;
  readonly rowPitchMm: number;
}

/** `label-sheets.yaml` as it is written. */
export interface LabelSheetRow {
  readonly name: string;
  readonly paper: Paper;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly columns: number;
  readonly rows: number;
  readonly margin_left_mm: number;
  readonly margin_top_mm: number;
  readonly column_pitch_mm: number;
  readonly row_pitch_mm: number;
  readonly source: string;
}

/** A row of `label-sheets.yaml` -> sheet, mm. */
export function labelSheet(row: LabelSheetRow): LabelSheet {
  return {
    name: row.name,
    paper: row.paper,
    widthMm: row.width_mm,
    heightMm: row.height_mm,
    columns: row.columns,
    rows: row.rows,
    marginLeftMm: row.margin_left_mm,
    marginTopMm: row.margin_top_mm,
    columnPitchMm: row.column_pitch_mm,
    rowPitchMm: row.row_pitch_mm,
  };
}

/** As labels for letter paper are sold: `4 x 2 in`. */
export function sizeInInches(widthMm: number, heightMm: number): string {
  const inches = (mm: number): string => mixedNumber(mm / mmPerInch);
  return `${inches(widthMm)} x ${inches(heightMm)} in`;
}

// Exact by definition.
export const mmPerInch = 25.4;

/** What a person measures on a sheet of their own; the rest follows. */
export interface OwnSheet {
  readonly paper: Paper;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly columns?: number;
  readonly rows?: number;
  readonly marginLeftMm?: number;
  readonly marginTopMm?: number;
  /** Between one label and the next. */
  readonly columnGapMm?: number;
  readonly rowGapMm?: number;
}

/** As many labels as fit when no number is given, in the middle of the sheet when no margin is. */
export function ownSheet(own: OwnSheet): LabelSheet {
  const { paper, widthMm, heightMm } = own;
  const { columns, columnGapMm, marginLeftMm, rows, rowGapMm, marginTopMm } = own;
  const across = along(papers[paper].widthMm, widthMm, columnGapMm, columns, marginLeftMm);
  const down = along(papers[paper].heightMm, heightMm, rowGapMm, rows, marginTopMm);
  return {
    name: `${widthMm}x${heightMm}`,
    paper,
    widthMm,
    heightMm,
    columns: across.count,
    rows: down.count,
    marginLeftMm: across.marginMm,
    marginTopMm: down.marginMm,
    columnPitchMm: across.pitchMm,
    rowPitchMm: down.pitchMm,
  };
}

function along(
  sheetMm: number,
  labelMm: number,
  gapMm = 0,
  ownCount?: number,
  ownMarginMm?: number,
): { count: number; marginMm: number; pitchMm: number } {
  const pitchMm = labelMm + gapMm;
  const roomMm = sheetMm - (ownMarginMm ?? 0);
  const count = ownCount ?? Math.max(1, Math.floor((roomMm + gapMm) / pitchMm + 1e-9));
  const usedMm = count * pitchMm - gapMm;
  return { count, pitchMm, marginMm: ownMarginMm ?? Math.max(0, (sheetMm - usedMm) / 2) };
}

/** What keeps the labels from the sheet, in words; undefined when they fit it. */
export function sheetTrouble(sheet: LabelSheet): string | undefined {
  const { widthMm, heightMm, name } = papers[sheet.paper];
  const numbers = [sheet.widthMm, sheet.heightMm, sheet.columns, sheet.rows];
  if (
    !numbers.every((n) => Number.isFinite(n) && n > 0) ||
    !Number.isInteger(sheet.columns * sheet.rows)
  )
    return "a label has no size, or a sheet no labels";
  if (sheet.columnPitchMm < sheet.widthMm - overlapMm && sheet.columns > 1)
    return "the labels of a row lie over each other";
  if (sheet.rowPitchMm < sheet.heightMm - overlapMm && sheet.rows > 1)
    return "the labels of a column lie over each other";
  const rightMm = sheet.marginLeftMm + (sheet.columns - 1) * sheet.columnPitchMm + sheet.widthMm;
  const bottomMm = sheet.marginTopMm + (sheet.rows - 1) * sheet.rowPitchMm + sheet.heightMm;
  if (sheet.marginLeftMm < 0 || rightMm > widthMm + overlapMm)
    return `${sheet.columns} labels of ${sheet.widthMm} mm are wider than ${name} paper (${widthMm} mm)`;
  if (sheet.marginTopMm < 0 || bottomMm > heightMm + overlapMm)
    return `${sheet.rows} labels of ${sheet.heightMm} mm are taller than ${name} paper (${heightMm} mm)`;
  return undefined;
}

/** Dimensions are told rounded. */
const overlapMm = 0.1;
