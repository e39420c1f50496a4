// @ts-nocheck
export { bottlesInHand, checkBatches, type Emptied, type Taken } from "./ledger-log.js";
export {
  bottleChanges,
  bottlesInOrder,
  closeBooks,
  doseMl,
  drawDown,
  ledgerMl,
  ledgerSum,
  needsInOrder,
  type OpenNeed,
} from "./ledger.js";
