export * from "./amounts.js";
export * from "./decode.js";
export * from "./garden.js";
export type { GardenFile } from "./garden-file.js";
export {
  parsePercent,
  parseQuantity,
  parseRate,
  parseWater,
  type Parsed,
  type UnitContext,
} from "./quantity.js";
export { hemisphereFromZone } from "./hemisphere.js";
export { located, readYaml, type SourceFile } from "./read.js";
export { findUnit, type Unit, type UnitKind, type UnitTable } from "./units.js";
export { usualValues, type Usual } from "./usual.js";
export { validateGarden } from "./validate.js";
export type { GardenTables } from "./validation.js";
export { knownZone, suggestZone } from "./zones.js";
export { addToLog, type NewLogEntry } from "./write-log.js";
