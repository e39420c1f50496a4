/** Weather files whose temperatures are far from what the place has then: most likely in another unit. */
// @ts-nocheck

import type { PlaceClimate } from "./climate.js";
import type { PlaceWarning } from "./place-climate.js";
import { measuresInWords, type PlaceMeasures } from "./place-words.js";
import type { ToldFile } from "./weather-days.js";
import { weatherOn } from "./weather-on.js";

/** Fewer days may all be of one cold spell. */
const fewestDays = 5;
/** Few spells of weather are so far off that long; degF taken for degC, or degC for degF, some 20 C and more. */
const farthestC = 12;

export function unlikeMeans(
  files: readonly ToldFile[],
  climate: PlaceClimate,
  measures: PlaceMeasures,
): PlaceWarning[] {
  const means = { climate, days: new Map<never, never>() };
  return files.flatMap(({ file, rows }) => {
    const offC = rows.map(({ day, temperatures }) => {
      const usual = weatherOn(means, day);
      return (temperatures.minC + temperatures.maxC - usual.minC - usual.maxC) / 2;
    });
    const meanOffC = offC.reduce((sum, c) => sum + c, 0) / offC.length;
    if (rows.length < fewestDays || Math.abs(meanOffC) <= farthestC) return [];
    const degrees = measuresInWords[measures].degrees(Math.abs(meanOffC));
    return [
      {
        code: "weather-unit",
        message: `the days of the weather file ${file} are on average ${degrees} ${meanOffC > 0 ? "warmer" : "colder"} than the means of the place on those days`,
        mend: "check whether its temperatures are in F or C, and call its columns by that: tmin_f and tmax_f, or tmin_c and tmax_c",
      },
    ];
  });
}
