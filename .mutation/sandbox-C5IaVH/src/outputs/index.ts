// @ts-nocheck
export {
  gardenPage,
  narrowTables,
  pageScript,
  pageStyle,
  type PlanView,
  planView,
  reasonsView,
  recipePage,
  type ViewPart,
} from "./page/index.js";
export { seasonSvg } from "./picture/index.js";
export {
  bottleLabels,
  calciumSheet,
  labelRows,
  labelSheet,
  type LabelSheet,
  type LabelSheetRow,
  mmPerInch,
  ownSheet,
  type Paper,
  seasonSheet,
  shortSheet,
  sizeInInches,
} from "./print/index.js";
export {
  type FormOutcome,
  type GardenToTick,
  serviceWorker,
  tickIndex,
  tickPage,
  type TickView,
  webManifest,
  type WrittenLately,
} from "./tick/index.js";
