/** What a planting's stages depend on beside the planting and its crop. */
// @ts-nocheck

import type { PlaceClimate, Warmer, Warmth } from "../climate/index.js";
import type { Crop } from "../crops/index.js";
import type { Day } from "../dates.js";
import type { Amounts, Garden } from "../garden/index.js";

export interface Place extends Pick<Garden, "hemisphere" | "season"> {
  /** Measures in which days are told; metric when not given. */
  readonly amounts?: Amounts;
  /** Absent where the climate is not known, or not asked for. */
  readonly here?: Here;
  /** The median first frost after a day; undefined where none is to be expected, or a cover stands over the bed on that day. */
  readonly firstFrostAfter?: (day: Day) => Day | undefined;
}

/** The climate of a planting's place. */
export interface Here {
  readonly climate: PlaceClimate;
  readonly warmth: Warmth;
  readonly wish: Garden["warmth"];
  /** Temperature at which young plants are raised, degC. */
  readonly raisedAtC: number;
  /** Warmth moves a date by no more, since no sum is known better. */
  readonly mostShiftDays: number;
  /** A table's row is known in degree days to this share of it, at best. */
  readonly rowBandShare: number;
  /** What the bed's cover adds. */
  readonly cover: readonly Warmer[];
  readonly cropOf: (key: string) => Crop | undefined;
}
