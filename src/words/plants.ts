/** Stages and plantings as a person says them. */
import type { StageName } from "../crops/index.js";
import type { Say } from "./say.js";

const stageNames: Readonly<Record<StageName, string>> = {
  seedling: "seedling",
  establishment: "establishment",
  vegetative: "vegetative",
  heading: "heading",
  "root-swelling": "root swelling",
  flowering: "flowering",
  "fruit-set": "fruit set",
  "fruit-growth": "fruit growth",
  ripening: "ripening",
  harvest: "harvest",
  "after-harvest": "after harvest",
};

/** `fruit set` */
export function stageWords(stage: StageName): string {
  return stageNames[stage];
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
