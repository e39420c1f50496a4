// @ts-nocheck
export { entriesOfTick } from "./entries-of-tick.js";
export { readTick, tickFields } from "./form.js";
export type { Fields } from "./form-reader.js";
export { markOf } from "./seen.js";
export type { BedToTick, PlantingToTick, RoundToTick, StepToTick, TickSheet } from "./sheet.js";
export { isAsSeen, standingOf } from "./standing.js";
export { feedAsBed, type Tick, type Ticked, type TickedEntry } from "./tick.js";
export { tickSheet } from "./tick-sheet.js";
export { entriesInWords, missedInWords, nameOfTicked, seenInWords, stepInWords } from "./told.js";
