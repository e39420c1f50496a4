/** Stages and plantings as a person says them. */
// @ts-nocheck

import type { StageName } from "../crops/index.js";
import type { Say } from "./say.js";

/** `fruit set` */
export function stageWords(stage: StageName): string {
  return stage.replaceAll("-", " ");
}

/** `courgette` for `courgette (zucchini)`, where room is short. */
export function cropWords(cropName: string): string {
  return cropName.replace(/ \(.*\)$/, "");
}

export interface Named {
  readonly name: string;
  readonly cropName: string;
}

/**
 * `toms (tomato)`, or the crop alone where it says the same.
 *
 * @param marked the name as it is shown
 */
export function plantingWords<T>(say: Say<T>, { name, cropName }: Named, marked: T): T {
  const crop = cropWords(cropName);
  return name === crop || name === cropName ? marked : say`${marked} (${crop})`;
}
