export { assembleRounds } from "./assemble.js";
export { canDemands } from "./demands.js";
export { keepingGaps, otherFeedDays, otherFeedMixes, type FeedDays } from "./other-feeds.js";
export { seasonStock, type StockSide } from "./season-stock.js";
