// @ts-nocheck
export { dayOfStep, visitOf } from "./batches-told.js";
export { planStock, soonestStock } from "./batches.js";
export { bottleText, kitchenVolumeText, spoonsText, vesselText, weightText } from "./kitchen.js";
export type { BatchSize, Recipe, RecipeMeans, RecipeStep } from "./recipe-types.js";
export { recipe } from "./recipe.js";
export { shellsFor, shellsSinceLastBatch } from "./shells.js";
export { type Standing, standingBatches } from "./standing.js";
export {
  assumedStrainer,
  bottleStock,
  recipeMeans,
  referenceStockGPerL,
  soundRecipe,
} from "./usual-stock.js";
export { visitMinutes } from "./visit-minutes.js";
