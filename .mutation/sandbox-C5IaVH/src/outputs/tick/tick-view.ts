/** What a tick page shows beside the sheet: the server knows it. */
// @ts-nocheck

import type { Day } from "../../dates.js";
import type { Problem } from "../../problem.js";

export interface TickView {
  /** The garden's name. */
  readonly title: string;
  /** The last part of the page's own address, to which its forms go. */
  readonly address: string;
  readonly timezone: string;
  /** In the garden's zone. */
  readonly today: Day;
  /** Of the form that was just sent, or is asked for by its id. */
  readonly outcome?: FormOutcome;
  /** The last ten written, the newest first. */
  readonly lately: readonly WrittenLately[];
  /** A new random id, for one form of this page. */
  readonly newFormId: () => string;
  /** Over https and on this computer alone a browser keeps the page for times without a network. */
  readonly mayWorkOffline: boolean;
  /** Of the garden file as it is now, when the sheet is of an earlier one. */
  readonly problems: readonly Problem[];
  /** The page on which the garden file itself is written, relative; absent where there is none. */
  readonly filePage?: string;
}

/** What became of a form. */
export type FormOutcome =
  | { readonly kind: "written"; readonly told: string }
  /** The file said so before. */
  | { readonly kind: "already"; readonly told: string }
  /** The thing changed since the page was made: what the file says now, and what was to be written. */
  | { readonly kind: "conflict"; readonly now: string; readonly wanted: string }
  /** A line for each problem, with its mend. */
  | { readonly kind: "refused"; readonly told: readonly string[] };

export interface WrittenLately {
  /** Id of the form: `of` of a form that takes it back. */
  readonly form: string;
  readonly told: string;
  /** Not once it has been taken back, or where the file can't be brought back to what it was. */
  readonly canTakeBack: boolean;
  readonly isTakenBack?: true;
}
