/** Weather files of tests: what is told of each day, or what is wrong. */
// @ts-nocheck

import { weatherDays, type WeatherDays } from "../../src/climate/index.js";
import { day } from "../../src/dates.js";
import { type Problem, problemLine, type Result } from "../../src/problem.js";
import { given } from "../../src/values.js";

export interface Told {
  readonly seen?: string;
  readonly forecast?: string;
  readonly today?: string;
  readonly since?: string;
  /** First day of the season. */
  readonly season?: string;
}

export function readTold({
  seen,
  forecast,
  today = "2028-01-01",
  since = "2026-01-01",
  season = "2026-01-01",
}: Told): Result<WeatherDays> {
  const textOf = (file: string, text: string | undefined) =>
    text === undefined ? undefined : { file, text };
  const texts = { seen: textOf("seen.csv", seen), forecast: textOf("next.csv", forecast) };
  return weatherDays(given(texts), { today: day(today), since: day(since), season: day(season) });
}

export function weatherOf(told: Told): WeatherDays {
  const weather = readTold(told);
  if (!weather.ok) throw new Error(weather.problems.map(problemLine).join("\n"));
  return weather.value;
}

/** `day min max rain` in degC and mm, rounded to tenths, in the order of the days. */
export function daysIn(seen: string): string[] {
  const tenths = (value: number): string => String(Math.round(value * 10) / 10 + 0);
  return [...weatherOf({ seen }).days].map(([d, { minC, maxC, rainMm }]) =>
    [d, tenths(minC), tenths(maxC), rainMm === undefined ? "-" : tenths(rainMm)].join(" "),
  );
}

export function problemsOfWeather(told: Told): readonly Problem[] {
  const weather = readTold(told);
  if (weather.ok) throw new Error("the weather has no problems");
  return weather.problems;
}

export function problemsIn(seen: string): readonly Problem[] {
  return problemsOfWeather({ seen });
}

/** `code line:column` of each problem. */
export function placesIn(seen: string): string[] {
  return problemsIn(seen).map(({ code, at }) => `${code} ${at.line}:${at.column}`);
}
