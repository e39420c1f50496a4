export { planStock } from "./batches.js";
export { checkBatches } from "./ledger-check.js";
export { bottlesInHand } from "./ledger-log.js";
export { doseMl, wholeMl } from "./ledger.js";
export type * from "./making-problem.js";
export { useByOf, wayOfMaking, type MakingRules, type WayOfMaking } from "./making-rules.js";
export { shellsFor, shellsSinceLastBatch } from "./shells.js";
export { type AcidDose } from "./acid.js";
export { brewBatch, closedVessel, fizzing, openAir, type Brew, type BrewInput } from "./brew.js";
export { dilute, type CanInput, type CanLiquid } from "./can.js";
export { prepareChemistry, type Chemistry, type ChemistryData } from "./constants.js";
export { brewAtPh, type BrewAtPh, type Jar } from "./measured-ph.js";
export { readiness, shellWanted, type JarSeen, type Readiness } from "./readiness.js";
export { recipe, type BatchSize, type Recipe, type RecipeMeans } from "./recipe.js";
export { type RecipeStep } from "./recipe-steps.js";
export { bottleText, kitchenVolumeText, spoonsText, vesselText, weightText } from "./kitchen.js";
export { rainWater, tapCalciumMgPerL, type WaterReport } from "./source-water.js";
export { atStrength, strained, type PourStyle, type StockLiquid } from "./stock-liquid.js";
export { type MixResult, type MixTrouble } from "./trouble.js";
export {
  bottleStock,
  recipeMeans,
  referenceStockGPerL,
  stockAsMeasured,
  type Measured,
} from "./usual-stock.js";
export type { StockTables } from "./garden-liquids.js";
export { seasonStock, type StockSide } from "./season-stock.js";
