export {
  type DayWeather,
  degreeDayMethods,
  type MonthlyMeans,
  type PlaceClimate,
  type PlaceWeather,
  type Thresholds,
  type Warmer,
  type Warmth,
} from "./climate.js";
export { type ClimateConstants, climateConstants } from "./constants.js";
export {
  type FirstFrost,
  type FrostDays,
  type FrostEstimate,
  frostOf,
  type FrostRules,
  type LastFrost,
  type SeasonFrost,
} from "./frost.js";
export { dailyShares } from "./smoothed-year.js";
export { dayLengthH } from "./sun.js";
export { warmthOf } from "./warmth.js";
export { meadowMmOn, weatherOn } from "./weather-on.js";
export { daysInMonth } from "./year-ring.js";
export type { Normals } from "./normals.js";
export type { PlaceMeasures } from "./place-words.js";
export { placeClimate, type PlaceWarning } from "./place-climate.js";
export { toldOfSeason } from "./told-of-season.js";
export { turnedYear } from "./turned-year.js";
export { inBaseUnit } from "./units.js";
export { unlikeMeans } from "./unlike-means.js";
export { unpackNormals } from "./unpack-normals.js";
export { weatherDays, type WeatherDays } from "./weather-days.js";
