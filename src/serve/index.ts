export { announcement } from "./announcement.js";
export { gardenSource } from "./garden-source.js";
export type { GardenSource, Loaded, PageView, SourceParts } from "./garden-source.js";
export type { Limits } from "./http-server.js";
export type { SubscribeLinks } from "./links.js";
export { publishGardens, type PublishOptions, type Published } from "./publish.js";
export { serveGardens, type GardenServer, type ServeOptions } from "./serve.js";
export { stopOnSignals } from "./signals.js";
export type { Trouble } from "./trouble.js";
