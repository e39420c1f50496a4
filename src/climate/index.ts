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
export { weatherDays, type WeatherDays, type WeatherTexts } from "./weather-days.js";
