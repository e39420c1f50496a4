/** One piece of advice on a garden that is right as it stands; `code` stays, `message` may be put in other words. */
export interface Advice {
  readonly code: string;
  /** Ids of the plantings it is about; empty for the whole garden. */
  readonly plantings: readonly string[];
  readonly message: string;
}
