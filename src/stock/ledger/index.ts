export { checkBatches } from "./ledger-check.js";
export { bottlesInHand } from "./ledger-log.js";
export {
  bottleChanges,
  bottlesInOrder,
  closeBooks,
  doseMl,
  drawDown,
  needsInOrder,
  wholeMl,
} from "./ledger.js";
