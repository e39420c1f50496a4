/** How each batch of a making plan is made. */
import type { Acid, Garden } from "../garden/index.js";
import type { BatchRecipe } from "../season/index.js";
import {
  type Chemistry,
  type PlannedBatch,
  type MakingRules,
  recipe,
  type Recipe,
  recipeMeans,
} from "../stock/index.js";

/** In the order of the batches. Throws where the garden's own recipe has trouble, which is a bug. */
export function batchRecipes(
  batches: readonly PlannedBatch[],
  { stock, amounts }: Pick<Garden, "stock" | "amounts">,
  { chemistry, making }: { readonly chemistry: Chemistry; readonly making: MakingRules },
): BatchRecipe[] {
  const means = { ...recipeMeans(chemistry, stock), amounts };
  const known = new Map<number, Recipe>();
  const recipeOf = (makeMl: number): Recipe => {
    const before = known.get(makeMl);
    if (before) return before;
    const made = recipe(chemistry, making, { by: "volume", makeMl }, means);
    if (!made.ok) throw new Error(made.problems[0]?.message ?? "no recipe");
    known.set(makeMl, made.value);
    return made.value;
  };
  return batches.map(({ id, volumeMl }) => {
    const made = recipeOf(volumeMl);
    const { waterMl, vesselL, steps } = made;
    return { batch: id, ...acidAmount(stock.acid, made), waterMl, vesselL, steps };
  });
}

function acidAmount(
  acid: Acid,
  { acidG, vinegarMl = 0 }: Recipe,
): Pick<BatchRecipe, "acidG" | "vinegarMl"> {
  switch (acid) {
    case "citric":
      return { acidG };
    case "vinegar":
      return { vinegarMl };
  }
}
