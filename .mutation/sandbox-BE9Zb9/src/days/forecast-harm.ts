/** What a forecast has against a feeding: rain that washes it away, heat in which sprayed leaves burn. */
// @ts-nocheck

import type { ClimateConstants, DayWeather, PlaceWeather } from "../climate/index.js";
import { addDays, type Day } from "../dates.js";
import {
  type Bed,
  type Cover,
  keepsRainOut,
  standsOn,
  type Usual,
  vesselOf,
  warmerUnder,
} from "../garden/index.js";
import type { ForecastHarm } from "../published/index.js";
import { type FeedingCourse, ruleOn } from "./courses.js";

/** Undefined where a forecast has nothing against feeding the course on that day, or there is none. */
export type HarmOf = (course: FeedingCourse, day: Day) => ForecastHarm | undefined;

interface HarmTables {
  readonly climate: ClimateConstants;
  readonly usual: Usual;
}

/** Rows of the weather files for today and later count; what was seen and what the means give do not. */
export function forecastHarm(
  beds: readonly Bed[],
  place: PlaceWeather | undefined,
  { climate, usual }: HarmTables,
): HarmOf {
  const covers = new Map(beds.map(({ id, cover }) => [id, cover]));
  const coverOn = (bed: string, day: Day): Cover | undefined => {
    const cover = covers.get(bed);
    return cover && standsOn(cover, day) ? cover : undefined;
  };
  const forecastOn = (day: Day): DayWeather | undefined => {
    const weather = place?.days.get(day);
    return weather?.from === "forecast" ? weather : undefined;
  };
  const rainOn = ({ planting }: FeedingCourse, on: Day): { on: Day; mm: number } => {
    const cover = coverOn(planting.bed, on);
    const mm = cover && keepsRainOut(cover) ? 0 : (forecastOn(on)?.rainMm ?? 0);
    return { on, mm };
  };
  return (course, day) => {
    const isSprayed = vesselOf(course.route) === "sprayer";
    // A day's rain may all fall after the feeding.
    const [today, next] = [rainOn(course, day), rainOn(course, addDays(day, 1))];
    const rain = today.mm > next.mm ? today : next;
    if (rain.mm > (isSprayed ? climate.spray_rain_mm : climate.drench_rain_mm))
      return { kind: "rain", ...rain };
    const limitC = ruleOn(course, day).highestTemperatureC;
    const outdoors = forecastOn(day);
    if (!isSprayed || limitC === undefined || outdoors === undefined) return undefined;
    const cover = coverOn(course.planting.bed, day);
    const maxC = outdoors.maxC + (cover ? warmerUnder(cover, usual) : 0);
    return maxC > limitC ? { kind: "heat", on: day, maxC, limitC } : undefined;
  };
}
