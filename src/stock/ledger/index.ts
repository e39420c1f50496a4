export { bottlesInHand, checkBatches, type Taken } from "./ledger-log.js";
export {
  bottleChanges,
  bottlesInOrder,
  closeBooks,
  doseMl,
  drawDown,
  needsInOrder,
  type OpenNeed,
  wholeMl,
} from "./ledger.js";
