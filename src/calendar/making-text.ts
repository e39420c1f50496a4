/** The steps of a batch in words: what to do, how much of everything, and what to mind. */
import { type Amounts, counted, gramsText, totalStockText, volumeText } from "../garden/index.js";
import type { BatchRecipe } from "../season/index.js";
import type { MakingStep, PlannedBatch, RecipeStep } from "../stock/index.js";

export type StepName = MakingStep;

/** A batch to make, and how. */
export interface Making {
  readonly batch: PlannedBatch;
  readonly recipe: BatchRecipe;
}

type Some<T> = readonly [T, ...T[]];

/** Steps of the recipe that belong to each visit. */
const recipeStepsOf: Readonly<Record<StepName, readonly RecipeStep["key"][]>> = {
  "dry-shells": ["dry-shells"],
  "add-acid": ["crush", "mix", "wait"],
  strain: ["check", "strain", "store", "use"],
};

/** @example "Start 1 L of stock: 62 g of shell, 50 g of citric acid, 1 L of water" */
export function stepSummary(step: StepName, makings: Some<Making>, amounts: Amounts): string {
  const sum = (of: (making: Making) => number) => makings.reduce((n, m) => n + of(m), 0);
  const stock = totalStockText(
    sum(({ batch }) => batch.volumeMl),
    amounts,
  );
  const what = makings.length === 1 ? `${stock} of stock` : `${makings.length} batches, ${stock}`;
  switch (step) {
    case "dry-shells": {
      const eggs = sum(({ batch }) => batch.eggs);
      return `Boil ${counted(eggs, "eggshell")} and set them out to dry, for ${what}`;
    }
    case "add-acid": {
      const vinegarMl = sum(({ recipe }) => recipe.vinegarMl ?? 0);
      const acidG = sum(({ recipe }) => recipe.acidG ?? 0);
      const waterMl = sum(({ recipe }) => recipe.waterMl);
      const parts = [
        `${gramsText(sum(({ batch }) => batch.shellG))} of shell`,
        ...(acidG > 0 ? [`${gramsText(acidG)} of citric acid`] : []),
        ...(vinegarMl > 0 ? [`${liquid(vinegarMl, amounts)} of vinegar`] : []),
        ...(waterMl > 0 ? [`${liquid(waterMl, amounts)} of water`] : []),
      ];
      return `Start ${what}: ${parts.join(", ")}`;
    }
    case "strain": {
      const bottles = counted(
        sum(({ batch }) => batch.bottles),
        "bottle",
      );
      return `Strain and bottle ${what}: ${bottles}, use by ${makings[0].batch.useBy}`;
    }
  }
}

export function stepDescription(
  step: StepName,
  makings: Some<Making>,
  amounts: Amounts,
): readonly string[] {
  const keys = recipeStepsOf[step];
  const cautions = makings.flatMap(({ recipe }) =>
    recipe.steps.filter(({ key }) => keys.includes(key)).flatMap((s) => s.cautions),
  );
  return [
    ...makings.flatMap(({ batch, recipe }) => [
      `${batch.id} (${totalStockText(batch.volumeMl, amounts)}):`,
      ...recipe.steps.filter(({ key }) => keys.includes(key)).map(({ text }) => `- ${text}`),
      `- ${nextLine(step, batch)}`,
      "",
    ]),
    ...[...new Set(cautions)].map((caution) => `Mind: ${caution}`),
  ];
}

function nextLine(step: StepName, { id, steps, useBy, serves }: PlannedBatch): string {
  const dayOf = (name: StepName) => steps.find((s) => s.step === name)?.day ?? "";
  switch (step) {
    case "dry-shells":
      return `Add the acid on ${dayOf("add-acid")}, strain on ${dayOf("strain")}.`;
    case "add-acid":
      return `Strain and bottle it on ${dayOf("strain")}.`;
    case "strain": {
      const [first, last] = [serves[0]?.day, serves.at(-1)?.day];
      const days = first === last ? `on ${first ?? ""}` : `from ${first ?? ""} to ${last ?? ""}`;
      const use = first === undefined ? "" : ` It is poured ${days}.`;
      return `On the label: ${id}, use by ${useBy}.${use}`;
    }
  }
}

function liquid(ml: number, amounts: Amounts): string {
  return volumeText(Math.round(ml) / 1000, amounts);
}
