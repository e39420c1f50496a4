export { type Advice, gardenAdvice } from "./advice.js";
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
export { emptiedNotes, strayNotes, usedDefaults, windowWarnings } from "./plan-notes.js";
export { type FeedingReason, type PlantingReasons, reasonsFor } from "./reasons.js";
export { wasteAdvice } from "./waste-advice.js";
export { signNote } from "./sign-notes.js";
