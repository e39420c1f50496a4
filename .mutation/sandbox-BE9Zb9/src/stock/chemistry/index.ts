// @ts-nocheck
export { type AcidDose, acidMeasures, scaledAcid } from "./acid.js";
export { waterDensityKgPerL } from "./activity.js";
export { type Brew, brewBatch, type BrewInput, closedVessel, fizzing, openAir } from "./brew.js";
export { type CanInput, type CanLiquid, type CanPart, dilute, diluteTogether } from "./can.js";
export { type Chemistry, prepareChemistry } from "./constants.js";
export { brewAtPh, type Jar } from "./measured-ph.js";
export { readiness, shellWanted } from "./readiness.js";
export {
  rainWater,
  tapCalciumMgPerL,
  waterFindings,
  type WaterReport,
  waterReport,
} from "./source-water.js";
export { atStrength, type StockLiquid, strained, whitePassed } from "./stock-liquid.js";
export {
  badQuantities,
  failed,
  type MixResult,
  type MixTrouble,
  trouble,
  troubleAt,
} from "./trouble.js";
