// @ts-nocheck
export { leftWithoutDay, noLongerNeeded, takenAsMade, waitsForStock } from "./batch-notes.js";
export { missedOf, takenAsGiven, takenForRenamed } from "./past-notes.js";
export type { Advice } from "./advice-type.js";
export { gardenAdvice } from "./advice.js";
export {
  type BatchReport,
  type BatchToMake,
  daysFrom,
  daysOf,
  makingReport,
  type MakingReport,
  recipeReport,
  type RecipeReport,
} from "./batch-report.js";
export { type FeedingChange, feedingChanges } from "./feeding-changes.js";
export { feedingSpan } from "./feeding-span.js";
export { forecastWarnings, movedNotes } from "./forecast-notes.js";
export { outsideSeason } from "./outside-season.js";
export { emptiedNotes, strayNotes, usedDefaults, windowWarnings } from "./plan-notes.js";
export { type FeedingReason, type PlantingReasons, reasonsFor } from "./reasons.js";
export { signNotes } from "./sign-notes.js";
export { wasteAdvice } from "./waste-advice.js";
