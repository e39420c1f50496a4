/** Lines to type that write down what was done. */
// @ts-nocheck

import type { MakingStep } from "../stock/index.js";

const stepWords: Readonly<Record<MakingStep, string>> = {
  "dry-shells": "shells-out",
  "add-acid": "acid-in",
  strain: "made",
};

/** `feedround log garden.yaml --batch batch-2 --step acid-in` */
export function stepCommand(step: MakingStep, batch: string): string {
  return logCommand(batch, stepWords[step]);
}

export function throwAwayCommand(batch: string): string {
  return logCommand(batch, "thrown-away");
}

/** The step with its command, as a line of its own. */
export function writeStepDown(step: MakingStep, batch: string): string {
  const volume = step === "strain" ? ", with --volume where it makes more or less" : "";
  return `Then write it down${volume}: ${stepCommand(step, batch)}`;
}

export function writeThrownAway(batch: string): string {
  return `When it is thrown away, write it down: ${throwAwayCommand(batch)}`;
}

/** The name of the garden file is the grower's; `garden.yaml` stands for it. */
function logCommand(batch: string, step: string): string {
  return `feedround log garden.yaml --batch ${batch} --step ${step}`;
}
