export { planStock } from "./batches.js";
export { checkBatches } from "./ledger-check.js";
export { bottlesInHand } from "./ledger-log.js";
export { doseMl, wholeMl } from "./ledger.js";
export type * from "./making-problem.js";
export { useByOf, wayOfMaking, type MakingRules, type WayOfMaking } from "./making-rules.js";
export { shellsFor, shellsSinceLastBatch } from "./shells.js";
