/** Why a mixture has no answer: an expected outcome, so a value. */
// @ts-nocheck

import type { Finding, Result } from "../../problem.js";

export interface MixTrouble extends Pick<Finding, "message" | "mend"> {
  readonly code:
    | "not-a-quantity"
    | "temperature-out-of-range"
    | "no-water"
    | "no-liquid-left"
    | "not-kitchen-vinegar"
    | "not-a-share"
    | "does-not-settle";
}

export type MixResult<T> = Result<T, MixTrouble>;

export function trouble(code: MixTrouble["code"], message: string, mend: string): MixTrouble {
  return { code, message, mend };
}

export function failed(...problems: MixTrouble[]): { ok: false; problems: MixTrouble[] } {
  return { ok: false, problems };
}

export function isQuantity(value: number): boolean {
  return value >= 0 && Number.isFinite(value);
}

/** One trouble for each named number that is negative or not finite. */
export function badQuantities(quantities: Readonly<Record<string, number>>): MixTrouble[] {
  return Object.entries(quantities)
    .filter(([, value]) => !isQuantity(value))
    .map(([name, value]) =>
      trouble("not-a-quantity", `${name} is ${value}`, "give a number, nought or more"),
    );
}

/** A trouble as a finding at its place in the garden file. */
export function troubleAt({ code, message, mend }: MixTrouble, path: Finding["path"]): Finding {
  return { code, path, message, mend };
}
