// @ts-nocheck
export type { GrowthPeriods } from "./growth-periods.js";
export type { LastDay } from "./last-day.js";
export type { Here, Place } from "./place.js";
export { plantingLife, type PlantingLife } from "./planting-life.js";
export { lifeSpan, stageNearest, stageOn, type StageSpan, type StageWarmth } from "./stage-span.js";
export { ofThisYear } from "./this-year.js";
