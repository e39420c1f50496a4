export { gardenPage, pageScript, pageStyle } from "./page/index.js";
export { seasonSvg } from "./picture/index.js";
export {
  bottleLabels,
  labelRows,
  labelSheet,
  type LabelSheet,
  type LabelSheetRow,
  ownSheet,
  type Paper,
  seasonSheet,
} from "./print/index.js";
