// @ts-nocheck
export interface Advice {
  readonly code: string;
  /** Ids of the plantings it is about; empty for the whole garden. */
  readonly plantings: readonly string[];
  readonly message: string;
}
