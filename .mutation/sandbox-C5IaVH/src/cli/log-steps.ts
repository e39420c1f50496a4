/** Steps of a batch as they are typed: as the keys of the garden file, with dashes. */
// @ts-nocheck

import type { BatchStepKey } from "../garden/index.js";

export const stepWords = ["shells-out", "acid-in", "made", "thrown-away", "missed"] as const;
export type StepWord = (typeof stepWords)[number];

const keys: Readonly<Record<StepWord, BatchStepKey>> = {
  "shells-out": "shells_out",
  "acid-in": "acid_in",
  made: "made",
  "thrown-away": "thrown_away",
  missed: "missed",
};

export function stepKey(word: StepWord): BatchStepKey {
  return keys[word];
}

export function stepWordOf(key: BatchStepKey): string {
  return key.replace("_", "-");
}
