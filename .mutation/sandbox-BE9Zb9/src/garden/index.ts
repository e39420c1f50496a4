// @ts-nocheck
export {
  calciumIn,
  counted,
  enoughStockText,
  litersPerImperialGallon,
  litersPerVolume,
  pouredText,
  rateIn,
  rateMeasures,
  rateText,
  stockText,
  sumOfStockText,
  strengthFigure,
  strengthText,
  totalOf,
  totalStockText,
  volumeText,
  withoutDust,
} from "./amounts.js";
export { keepsRainOut, standsOn, warmerUnder } from "./cover.js";
export {
  dayOfMonth,
  daysAway,
  dayText,
  fullDate,
  longDay,
  monthName,
  nameOfMonth,
  shortDate,
  shortDay,
} from "./day-words.js";
export { decodeText, largestFileBytes, largestGardenBytes } from "./decode.js";
export { eggSize } from "./egg-sizes.js";
export {
  type Acid,
  type Amounts,
  type BatchBegun,
  type BatchInHand,
  type Bed,
  type CalendarWishes,
  type Cover,
  type CoverKind,
  type EggSize,
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
  type WateringDays,
  type WateringWish,
  type WeatherFiles,
} from "./garden.js";
export { hemisphereFromZone, type ZoneHalves, zoneHalves } from "./hemisphere.js";
export { namedFiles } from "./named-files.js";
export { decimal, mixedNumber } from "./numbers.js";
export { placeAndZone } from "./place-and-zone.js";
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
export { parseTemperature } from "./temperature.js";
export type {
  Amendment,
  AmendmentKind,
  Extract,
  Fineness,
  Mulch,
  Soil,
  SoilKind,
  SoilTest,
} from "./soil.js";
export type { UnitKind } from "./units.js";
export { litersPerUsGallon, mlPerCup, mlPerTeaspoon, squareFeetPerM2 } from "./us-measures.js";
export { type Usual, usualValues } from "./usual.js";
export { validateGarden } from "./validate.js";
export type { GardenTables } from "./validation.js";
export { feedingL, type Vessel, vesselL, vesselOf, vessels } from "./vessels.js";
export { type CarriedOver, yearLater } from "./next-year.js";
export {
  batchStepKeys,
  type BatchStepKey,
  type GardenEdit,
  type NewBatch,
  type NewLogEntry,
} from "./garden-edit.js";
export { editGarden } from "./write-garden.js";
export { nextYearText } from "./write-next-year.js";
export { signKey } from "./validate-records.js";
export { knownZone, suggestZone, todayAt } from "./zones.js";
