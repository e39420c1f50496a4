/** The visits to a batch. */
import type { Day } from "../../dates.js";
import type { MakingStep, PlannedBatch } from "../making-problem.js";
import type { RecipeStep } from "./recipe-types.js";

/** At which each step of the recipe is done. */
export const visitOf: Readonly<Record<RecipeStep["key"], MakingStep>> = {
  "dry-shells": "dry-shells",
  crush: "add-acid",
  mix: "add-acid",
  wait: "add-acid",
  check: "strain",
  strain: "strain",
  store: "strain",
  use: "strain",
};

export function dayOfStep(
  { id, steps }: Pick<PlannedBatch, "id" | "steps">,
  step: MakingStep,
): Day {
  const visit = steps.find((s) => s.step === step);
  if (visit === undefined) throw new Error(`${id} has no day to ${step}`);
  return visit.day;
}
