export {
  counted,
  decimal,
  gramsText,
  litersPerImperialGallon,
  litersPerUsGallon,
  mixedNumber,
  mlPerTeaspoon,
  stockText,
  totalOf,
  totalStockText,
  volumeText,
  withoutDust,
} from "./amounts.js";
export { decodeText } from "./decode.js";
export {
  type Acid,
  type Amounts,
  type BatchInHand,
  type Bed,
  type CalendarWishes,
  type Garden,
  type KeptIn,
  type LogEntry,
  type OtherFeed,
  type Planting,
  type PourStyle,
  type Route,
  routes,
  type SignSeen,
  type SourceWater,
  type StockSettings,
  type Strainer,
} from "./garden.js";
export { hemisphereFromZone, type ZoneHalves, zoneHalves } from "./hemisphere.js";
export {
  absurdSize,
  type Bounds,
  type Parsed,
  parsePercent,
  parseQuantity,
  parseRate,
  rateBounds,
  type UnitContext,
} from "./quantity.js";
export { located, readYaml, type SourceFile } from "./read.js";
export type { UnitKind } from "./units.js";
export { type Usual, usualValues } from "./usual.js";
export { validateGarden } from "./validate.js";
export type { GardenTables } from "./validation.js";
export { feedingL, type Vessel, vesselL, vesselOf, vessels } from "./vessels.js";
export { addToLog, type NewLogEntry } from "./write-log.js";
export { knownZone, suggestZone } from "./zones.js";
