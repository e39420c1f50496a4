// @ts-nocheck
export { bedWatering, growingSpans } from "./bed-watering.js";
export type { WateringTables } from "./by-weather.js";
export { isLongDry, longestDryGap } from "./dry-gap.js";
export { wateringFactors } from "./factors.js";
export { type Ground, groundsOf } from "./growing.js";
export type { BedWatering, DryGap, Shortfall, WateringDay, WateringWeek } from "./watering.js";
export { isWateredOn, wateringDays } from "./watering-days.js";
export { lessRounds } from "./weeks.js";
