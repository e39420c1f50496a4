export { checkBatches } from "./ledger-check.js";
export { bottlesInHand } from "./ledger-log.js";
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
