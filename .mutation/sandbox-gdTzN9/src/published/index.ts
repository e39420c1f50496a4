// @ts-nocheck
export {
  type ForecastHarm,
  type Moved,
  nothingPublished,
  type Published,
  type PublishedBatch,
  type PublishedMix,
  type PublishedPour,
  type PublishedRound,
} from "./published.js";
export { type Renamed, withNewIds } from "./renamed.js";
export { isPublished, readRecord, recordLines, type RecordLine } from "./record.js";
