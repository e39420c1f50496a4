export { gardenPage, type PageOptions, type SubscribeLinks } from "./page.js";
export { pageScript } from "./page-script.js";
export { pageStyle } from "./page-style.js";
export { seasonSvg, type PictureOptions } from "./season-svg.js";
export type { BottleInHand } from "./bottles.js";
