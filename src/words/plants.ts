/** Stages and crops as a person says them. */

/** `fruit set` */
export function stageWords(stage: string): string {
  return stage.replaceAll("-", " ");
}

/** `courgette` for `courgette (zucchini)`, where room is short. */
export function cropWords(cropName: string): string {
  return cropName.replace(/ \(.*\)$/, "");
}
