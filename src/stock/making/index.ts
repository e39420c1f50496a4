export { planStock } from "./batches.js";
export { bottleText, kitchenVolumeText, spoonsText, vesselText, weightText } from "./kitchen.js";
export type { RecipeStep } from "./recipe-steps.js";
export { type BatchSize, recipe, type Recipe, type RecipeMeans } from "./recipe.js";
export { shellsSinceLastBatch } from "./shells.js";
export { dayOfStep, visitOf } from "./visits.js";
export { bottleStock, recipeMeans, referenceStockGPerL } from "./usual-stock.js";
