export { type Asked, readTick, tickFields } from "./form.js";
export type { Fields, FormProblem } from "./form-reader.js";
export type { BedToTick, PlantingToTick, RoundToTick, StepToTick, TickSheet } from "./sheet.js";
export { isAsSeen, standingOf, type Told } from "./standing.js";
export type { Standing, Tick, Ticked, TickedEntry } from "./tick.js";
export { tickSheet, type TickTables } from "./tick-sheet.js";
