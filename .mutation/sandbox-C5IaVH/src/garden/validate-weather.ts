// @ts-nocheck
import type { GardenFile } from "../compiled/garden-file.js";
import { given } from "../values.js";
import type { Entry } from "./fields.js";
import type { WeatherFiles } from "./garden.js";
import { liesElsewhere } from "./validate-settings.js";

const names = ["seen", "forecast"] as const;

/** The weather files that a garden names; what is in them is not looked at here. */
export function validateWeather(file: Entry<GardenFile>): WeatherFiles | undefined {
  if (file.raw.weather === undefined) return undefined;
  const entry = file.inner("weather");
  for (const name of names) {
    const path = entry.text(name);
    if (path === undefined || !liesElsewhere(path)) continue;
    entry.report({
      code: "weather-file",
      path: entry.at(name),
      message: `\`${path}\` does not lie beside the garden file or below it`,
      mend: "put the file there, and write its name, like weather.csv or weather/seen.csv",
    });
  }
  requireClimate(file);
  return given({ seen: entry.text("seen"), forecast: entry.text("forecast") });
}

/** Files end some day, and the days after their last one are those of the means. */
function requireClimate(file: Entry<GardenFile>): void {
  const { climate } = file.raw;
  const isOff = climate === "off";
  const hasLongitude = file.inner("location").number("longitude") !== undefined;
  if (!isOff && (climate !== undefined || hasLongitude)) return;
  file.report({
    code: "weather-without-climate",
    path: ["weather"],
    atKey: true,
    message: isOff
      ? "the weather files go with the climate of the place, and that is `off`"
      : "weather files need the climate of the place for the days after their last one",
    mend: isOff
      ? "remove `climate: off`, or `weather`"
      : "add `longitude` to `location`, or the monthly means under `climate`",
  });
}
