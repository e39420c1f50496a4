/** What the page asks of its worker, and what that answers. */
// @ts-nocheck

import type { PlanView, ViewPart } from "../outputs/index.js";
import type { Started } from "./checked-start.js";
import type { Answers } from "./starting-garden.js";
import type { Problem } from "../problem.js";

/** A garden file as it is being written, and what it is planned with. */
export interface Writing {
  readonly text: string;
  /** For problems. */
  readonly file: string;
  /** Ms since 1970: tells today in the garden's zone. */
  readonly nowMs: number;
  /** Texts of the files that it names, as far as they were opened, by the names it gives them. */
  readonly named: Readonly<Record<string, string>>;
  /** Text of the calendar that was written before; empty where there is none yet. */
  readonly calendar?: string;
}

export type Making =
  | { readonly kind: "calendar" }
  | { readonly kind: "sheet" }
  | { readonly kind: "labels"; readonly size?: string }
  | { readonly kind: "recipe" }
  | { readonly kind: "page" };

export type Wish =
  | { readonly kind: "plan"; readonly withReasons: boolean }
  | { readonly kind: "make"; readonly what: Making }
  | { readonly kind: "start"; readonly answers: Answers };

export interface Ask {
  readonly turn: number;
  readonly writing: Writing;
  readonly wish: Wish;
}

/** A file that the garden names and that nobody has opened. */
export interface Wanted {
  readonly name: string;
  readonly kind: "named" | "calendar";
  readonly told: string;
}

export type Answered =
  | {
      readonly kind: "plan";
      readonly view: PlanView;
      readonly reasons: readonly ViewPart[];
      readonly wanted: readonly Wanted[];
      readonly garden: string;
    }
  | { readonly kind: "problems"; readonly problems: readonly Problem[] }
  | { readonly kind: "made"; readonly made: Made }
  | { readonly kind: "started"; readonly started: Started }
  /** A bug of ours. */
  | { readonly kind: "failed"; readonly told: string };

export interface Made {
  readonly name: string;
  readonly type: string;
  readonly text: string;
  /** Other sizes to choose from. */
  readonly sizes?: readonly string[];
}

export interface Answer {
  readonly turn: number;
  readonly answered: Answered;
}
