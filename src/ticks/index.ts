export { entriesOfTick } from "./entries-of-tick.js";
export { type Asked, readTick, tickFields } from "./form.js";
export type { Fields, FormProblem } from "./form-reader.js";
export { markOf } from "./seen.js";
export type { BedToTick, PlantingToTick, RoundToTick, StepToTick, TickSheet } from "./sheet.js";
export { isAsSeen, standingOf, type Told } from "./standing.js";
export { feedAsBed, type Standing, type Tick, type Ticked, type TickedEntry } from "./tick.js";
export { tickSheet, type TickTables } from "./tick-sheet.js";
export { entriesInWords, missedInWords, nameOfTicked, seenInWords, stepInWords } from "./told.js";
