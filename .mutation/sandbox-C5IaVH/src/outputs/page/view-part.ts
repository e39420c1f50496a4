// @ts-nocheck
import { type Html, withCode } from "../html.js";

export interface ViewPart {
  /** Stays the same while the garden is written. */
  readonly id: string;
  readonly markup: string;
}

export function partsOf(parts: Readonly<Record<string, Html | undefined>>): ViewPart[] {
  return Object.entries(parts).map(([id, part]) => ({
    id,
    markup: part === undefined ? "" : withCode(part).markup,
  }));
}
