export { pageScript } from "./page-script.js";
export { pageStyle } from "./page-style.js";
export { gardenPage } from "./page.js";
