// @ts-nocheck
export { bottleLabels } from "./bottle-labels.js";
export { calciumSheet } from "./calcium-sheet.js";
export { labelRows } from "./label-rows.js";
export {
  labelSheet,
  type LabelSheet,
  type LabelSheetRow,
  mmPerInch,
  ownSheet,
  sizeInInches,
} from "./label-sheets.js";
export type { Paper } from "./paper.js";
export { seasonSheet } from "./season-sheet.js";
export { shortSheet } from "./short-sheet.js";
