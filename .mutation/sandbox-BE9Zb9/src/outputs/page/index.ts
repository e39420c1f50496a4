// @ts-nocheck
export { pageScript } from "./page-script.js";
export { narrowTables, pageStyle } from "./page-style.js";
export { gardenPage } from "./page.js";
export { type PlanView, planView } from "./plan-view.js";
export { reasonsView } from "./reasons-view.js";
export type { ViewPart } from "./view-part.js";
export { recipePage } from "./recipe-page.js";
