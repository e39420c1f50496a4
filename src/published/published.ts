/** Days already published, from an earlier plan or calendar. */
import type { Day } from "../dates.js";

export interface Published {
  /** Days that had a round. */
  readonly days: readonly Day[];
  /** Days of each planting and route, where the earlier plan tells them: `planting/route`. */
  readonly feedings?: ReadonlyMap<string, readonly Day[]>;
  /** Rounds above the fewest that may be spent on keeping them; as the garden has it unless given. */
  readonly extraRounds?: number;
}
