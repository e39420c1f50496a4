export { announcement } from "./announcement.js";
export { type AsOf, gardenSource, type GardenSource, type PlannedGarden } from "./garden-source.js";
export { type GardenWriter, hashOfText, type Outcome, type Saved } from "./garden-writer.js";
export { publishGardens } from "./publish.js";
export { batchedLines } from "./request-log.js";
export { serveGardens } from "./serve.js";
export { stopOnSignals } from "./signals.js";
export type { Trouble } from "./system-trouble.js";
export { todayIn } from "./today.js";
