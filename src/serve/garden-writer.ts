/** How the server writes into garden files: by the code of `log`, which lies above. */
import { createHash } from "node:crypto";
import type { GardenEdit } from "../garden/index.js";
import type { FormOutcome } from "../outputs/index.js";
import type { Tick } from "../ticks/index.js";
import type { AsOf } from "./garden-source.js";

/** What became of something to be written; `undo` are the edits that take it back. */
export type Outcome =
  | Exclude<FormOutcome, { readonly kind: "written" }>
  | {
      readonly kind: "written";
      readonly told: string;
      /** Refused where what they take has changed since. */
      readonly undo: readonly GardenEdit[];
    };

/** Of a garden file without a byte order mark: its SHA-256 in hex. */
export function hashOfText(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}

/** A whole file from the writing page. */
export interface Saving {
  readonly text: string;
  /** Of the text that the page was opened with. */
  readonly openedHash: string;
}

export type Saved =
  | { readonly kind: "saved"; readonly hash: string }
  /** The file holds another text by now. */
  | { readonly kind: "conflict"; readonly text: string; readonly hash: string }
  | { readonly kind: "refused"; readonly told: readonly string[] };

/** Trouble is a value; each throws for bugs only. The file is changed whole or not at all. */
export interface GardenWriter {
  readonly tick: (file: string, tick: Tick, asOf: AsOf) => Promise<Outcome>;
  readonly takeBack: (file: string, undo: readonly GardenEdit[], asOf: AsOf) => Promise<Outcome>;
  /** A text with problems is saved, too: it is the grower's own. */
  readonly save: (file: string, saving: Saving) => Promise<Saved>;
}
