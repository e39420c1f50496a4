// @ts-nocheck
export { serviceWorker } from "./service-worker.js";
export { type GardenToTick, tickIndex } from "./tick-index.js";
export { tickPage } from "./tick-page.js";
export type { FormOutcome, TickView, WrittenLately } from "./tick-view.js";
export { webManifest } from "./web-manifest.js";
