export * from "./amounts.js";
export * from "./decode.js";
export * from "./garden.js";
export type { GardenFile } from "./garden-file.js";
export { parseQuantity, parseRate, parseWater, type Parsed, type UnitContext } from "./quantity.js";
export { located, readYaml, type SourceFile } from "./read.js";
export { findUnit, type Unit, type UnitKind, type UnitTable } from "./units.js";
export { usualValues, type Usual } from "./usual.js";
export { validateGarden, type GardenTables } from "./validate.js";
