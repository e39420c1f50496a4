/** Plantings that are fed more often, or less often, than their calendar tells. */
// @ts-nocheck

import type { Day } from "../dates.js";
import type { Published } from "../published/index.js";
import type { FeedingSpan, Plan } from "../season/index.js";
import { given } from "../values.js";

/** Feedings that are still to come, of one planting. */
export interface FeedingChange {
  readonly planting: string;
  readonly cropName: string;
  /** As the calendar tells. */
  readonly was: number;
  /** As they are planned now. */
  readonly now: number;
  /** Absent where it is not fed at all. */
  readonly feeding?: FeedingSpan;
  /** Why it is fed, or why not. */
  readonly reason: string;
}

/** In the order of the garden file; a planting that only moves to other days is not among them. */
export function feedingChanges(before: Published, plan: Plan): FeedingChange[] {
  const [was, now] = [comingIn(before, plan.today), comingIn(plan.published, plan.today)];
  return plan.plantings
    .map(({ id, cropName, feeding, reason }) => ({
      planting: id,
      cropName,
      was: was.get(id) ?? 0,
      now: now.get(id) ?? 0,
      ...given({ feeding }),
      reason,
    }))
    .filter((change) => change.was !== change.now);
}

/** By planting. */
function comingIn({ rounds }: Published, today: Day): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { day, mixes } of rounds)
    for (const { planting } of day < today ? [] : mixes.flatMap(({ fed }) => fed))
      counts.set(planting, (counts.get(planting) ?? 0) + 1);
  return counts;
}
