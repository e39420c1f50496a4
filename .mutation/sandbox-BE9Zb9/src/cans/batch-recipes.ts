/** How each batch of a making plan is made. */
// @ts-nocheck

import type { Garden } from "../garden/index.js";
import type { BatchRecipe } from "../season/index.js";
import {
  type PlannedBatch,
  type Recipe,
  recipeMeans,
  soundRecipe,
  type StockTables,
} from "../stock/index.js";

/** In the order of the batches. Throws where the garden's own recipe has trouble, which is a bug. */
export function batchRecipes(
  batches: readonly PlannedBatch[],
  { stock, amounts }: Pick<Garden, "stock" | "amounts">,
  tables: StockTables,
): BatchRecipe[] {
  const means = { ...recipeMeans(tables.chemistry, stock), amounts };
  const known = new Map<number, Recipe>();
  return batches.map(({ id, volumeMl }) => {
    const made = known.get(volumeMl) ?? soundRecipe(tables, volumeMl, means);
    known.set(volumeMl, made);
    const { acidG, vinegarMl, waterMl, vesselL, steps } = made;
    const acid = vinegarMl === undefined ? { acidG } : { vinegarMl };
    return { batch: id, ...acid, waterMl, vesselL, steps };
  });
}
