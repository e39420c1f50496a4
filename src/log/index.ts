export { batchNamed, type KnownBatch, knownBatches } from "./batch-names.js";
export { bottleEdits, stepEdits, undoEdit } from "./batch-steps.js";
export { entriesOfDay } from "./entries.js";
export {
  asScheduled,
  type GivenFeeding,
  givenFeedings,
  type GivenStock,
  type LoggedFeeding,
  resumed,
} from "./given.js";
export { heldAlready } from "./repeats.js";
export { daysAround, fedDays, roundOf, type WhatOf } from "./rounds-near.js";
export { dayOfFile, futureRecords, gardenOn, keepsLog, unknownBatches } from "./records.js";
