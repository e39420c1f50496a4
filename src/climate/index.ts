export {
  type DayWeather,
  type DegreeDayMethod,
  degreeDayMethods,
  type MonthlyMeans,
  type PlaceClimate,
  type PlaceWeather,
  type Thresholds,
  type Warmer,
  type Warmth,
} from "./climate.js";
export type { Normals } from "./normals.js";
export { placeClimate, type PlaceWarning } from "./place-climate.js";
export { unpackNormals } from "./unpack-normals.js";
