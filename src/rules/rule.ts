/** A feed rule: crop or group and stages -> how much, how often, which way, and on whose word. */
import type { Habit, StageName } from "../crops/index.js";
import type { Route } from "../garden/index.js";

/**
 * published: a trial or extension text found that it helps;
 * common-practice: growers do it, no trial known;
 * cause-unclear: growers do it, but what looks like the disorder may be another;
 * disputed: trials disagree;
 * advised-against: trials or extension found no effect or harm.
 * The last is fed only when the grower asks.
 */
export type Evidence =
  "published" | "common-practice" | "cause-unclear" | "disputed" | "advised-against";

/** When, how often and at which rate a crop is fed; `reason` and `source` are printed as they stand. */
export interface FeedRule {
  readonly id: string;
  /** Crop keys or group names it is for. */
  readonly crops: readonly string[];
  readonly groups: readonly string[];
  readonly stages: readonly StageName[];
  readonly route: Route;
  readonly disorder: string;
  /** mL of stock per litre of can water, at the reference stock strength. */
  readonly rateMlPerL: number;
  /** Calcium that the rate stands for, mg per litre of can water. */
  readonly calciumMgPerL: number;
  readonly interval: FeedInterval;
  /** Days after the first fed stage begins within which the first feeding belongs. */
  readonly firstWithinDays: number;
  readonly highestRateMlPerL: number;
  /** Shown when a wish is refused for passing a limit. */
  readonly limitsReason: string;
  /** No feeding in the last days before harvest begins; 0 for none. */
  readonly stopBeforeHarvestDays: number;
  /** At most so many in one course; no limit where absent. */
  readonly feedings?: number;
  /** Only for plantings of that habit. */
  readonly habit?: Habit;
  /** No feeding in the last days before the last pick; 0 for none. */
  readonly stopBeforeLastPickDays: number;
  /** Above it a spray may burn leaves; air, degC. No limit is known where absent, and none is of a drench. */
  readonly highestTemperatureC?: number;
  readonly evidence: Evidence;
  /** Fed without being asked for. */
  readonly byDefault: boolean;
  readonly reason: string;
  readonly source: string;
  readonly own: boolean;
}

export interface FeedInterval {
  readonly shortestDays: number;
  readonly targetDays: number;
  readonly longestDays: number;
}
