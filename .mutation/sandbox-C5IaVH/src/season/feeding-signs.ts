/** What was seen on a planting, as its feedings tell it. */
// @ts-nocheck

import type { Day } from "../dates.js";

export interface SignsOfFeeding {
  /** In order of their days. */
  readonly seen: readonly SignOfFeeding[];
  /** `level` as it would be had none been seen. */
  readonly levelWithout: number;
}

export interface SignOfFeeding {
  /** `blossom-end rot` */
  readonly name: string;
  readonly on: Day;
}
