/** How long the work of each visit to a batch takes. */
// @ts-nocheck

import type { MakingStep } from "../making-problem.js";
import type { MakingRules } from "../making-rules.js";

/** Minutes of work, the waiting between the visits left out. */
export function visitMinutes({ work }: MakingRules): Readonly<Record<MakingStep, number>> {
  return {
    "dry-shells": work.dry_shells.minutes,
    "add-acid": work.add_acid.minutes,
    strain: work.strain.minutes,
  };
}
