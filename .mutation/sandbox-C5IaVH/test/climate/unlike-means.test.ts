// @ts-nocheck
import { describe, expect, test } from "vitest";
import { unlikeMeans } from "../../src/climate/index.js";
import { cruPoints, placeWeather } from "../support/a-place.js";
import { weatherOf } from "./a-weather-file.js";

const { climate } = placeWeather(cruPoints.eugene);

/** Of a file with the same weather on so many days of May, whose mean at the place is some 14 C. */
function warned(header: string, weather: string, days: number): string[] {
  const rows = Array.from({ length: days }, (_, i) => `2027-05-1${i},${weather}\n`);
  const { files } = weatherOf({ seen: `date,${header}\n${rows.join("")}` });
  return unlikeMeans(files, climate, "metric").map(({ message }) => message);
}

describe("a weather file that is far from the means of its days", () => {
  test("is warned of, with how far", () => {
    expect(warned("tmin_c,tmax_c", "43,57", 5)).toEqual([
      expect.stringMatching(
        /^the days of the weather file seen.csv are on average 3\d\.\d C warmer than the means/,
      ),
    ]);
    expect(warned("tmin_f,tmax_f", "6,20", 9)).toEqual([
      expect.stringMatching(/ on average 2\d\.\d C colder than the means/),
    ]);
  });

  test("is not where it is of fewer than five days, or only of a warm week", () => {
    expect(warned("tmin_c,tmax_c", "43,57", 4)).toEqual([]);
    expect(warned("tmin_c,tmax_c", "16,32", 9)).toEqual([]);
    expect(warned("tmin_f,tmax_f", "43,66", 9)).toEqual([]);
  });
});
