export { announcement } from "./announcement.js";
export { batchedLines } from "./batched-lines.js";
export { type AsOf, gardenSource, type GardenSource } from "./garden-source.js";
export { publishGardens } from "./publish.js";
export { serveGardens } from "./serve.js";
export { stopOnSignals } from "./signals.js";
export type { Trouble } from "./trouble.js";
