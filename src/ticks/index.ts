export type { BedToTick, PlantingToTick, RoundToTick, StepToTick, TickSheet } from "./sheet.js";
export type { Standing, Tick, Ticked } from "./tick.js";
