import type { StageName } from "../crops/index.js";
import type { DaySpan } from "../dates.js";

/** One stage of one planting, with its dates and where they come from. Both ends count. */
export interface StageSpan extends DaySpan {
  readonly stage: StageName;
  /** BBCH codes, as in `69-71`. */
  readonly bbch: string;
  /** In words, e.g. `FAO-56 Table 11, Tomato, Mediterranean, planted April/May; scaled ...`. */
  readonly origin: string;
}
