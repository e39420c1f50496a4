// @ts-nocheck
export type { AmendedCalcium } from "./amended.js";
export type { CalciumAmount } from "./extent.js";
export { feedWhen } from "./feed-when.js";
export type { CannotTell, DecidingFact, Judgement } from "./judgement.js";
export type { PublishedNeed } from "./need.js";
export { exactly, type Range, scaled, summed, widest } from "./range.js";
export type { SoilCalcium } from "./soil.js";
export { calciumSums, type PlantingCalcium } from "./sums.js";
export type { CalciumTables } from "./tables.js";
export {
  type FeedingVerdict,
  feedingVerdicts,
  type SeasonWaterL,
  type Verdicts,
} from "./verdicts.js";
export type { WaterCalcium } from "./water.js";
