/** Whether some of the stock stays undissolved in a mixed can or sprayer. */
// @ts-nocheck

import type { MixedCan } from "./season-plan.js";

/** mg/L; nobody sees or feels less: our choice. */
const leastSolidMgPerL = 1;

export function leavesSolid(can: MixedCan | undefined): can is MixedCan {
  return can !== undefined && can.settlesMgPerL >= leastSolidMgPerL;
}
