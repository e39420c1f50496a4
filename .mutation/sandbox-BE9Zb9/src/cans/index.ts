// @ts-nocheck
export { assembleRounds } from "./assemble.js";
export { canDemands } from "./demands.js";
export { type FeedDays, keepingGaps, otherFeedDays, otherFeedMixes } from "./other-feeds.js";
export { seasonStock, type StockSide } from "./season-stock.js";
