export { bottleLabels, type LabelOptions, type LabelTrouble } from "./bottle-labels.js";
export { labelRows, type BottleLabel, type LabelDose } from "./label-rows.js";
export {
  labelSheet,
  ownSheet,
  type LabelSheet,
  type LabelSheetRow,
  type OwnSheet,
} from "./label-sheets.js";
export { gardenPage, type PageOptions, type SubscribeLinks } from "./page.js";
export { pageScript } from "./page-script.js";
export { pageStyle } from "./page-style.js";
export { papers, type Paper } from "./paper.js";
export { seasonSheet, type SheetOptions } from "./season-sheet.js";
export { seasonSvg, type PictureOptions } from "./season-svg.js";
