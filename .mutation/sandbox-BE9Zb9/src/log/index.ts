// @ts-nocheck
export {
  batchNamed,
  type DoneToBatch,
  isCalled,
  type KnownBatch,
  knownBatches,
} from "./batch-names.js";
export { bottling, stepEdits, undoEdit, writtenVolume } from "./batch-steps.js";
export { entriesOfDay, entriesOfPublished, isOpen } from "./entries.js";
export {
  asScheduled,
  type GivenFeeding,
  type GivenStock,
  type LoggedFeeding,
  resumed,
} from "./given.js";
export { firstPublished, passedWithout } from "./passed-windows.js";
export { type NotGiven, type Past, pastOf } from "./past.js";
export { type PastFeedDay, pastOfFeed } from "./past-of-feed.js";
export { lessMissed } from "./progress.js";
export { notToday, settledToday } from "./settled-today.js";
export {
  dayBefore,
  dayOfFile,
  futureRecords,
  gardenOn,
  keepsLog,
  unknownBatches,
} from "./records.js";
export { reopened, standingAsPlanned, standingAsTold } from "./reopened.js";
export { heldAlready } from "./repeats.js";
export { daysAround, fedDays, feedsOfDay, roundOf, type WhatOf } from "./rounds-near.js";
export { steadyFeedings } from "./steady-feedings.js";
