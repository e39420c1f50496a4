export { assembleRounds } from "./assemble.js";
export { canDemands } from "./demands.js";
export { keepingGaps, otherFeedDays, otherFeedMixes } from "./other-feeds.js";
export { seasonStock } from "./season-stock.js";
