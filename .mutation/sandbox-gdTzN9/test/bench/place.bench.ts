/**
 * What its place costs a plan: the same garden with the climate of its place and with `climate: off`,
 * the examples of a few beds and of 40; the place is to cost at most 30 ms. The table of means is read
 * once in a process, which is told beside. And 40 beds with ten years of daily weather: under 300 ms.
 *
 * What the place costs is told as time of the processor, which other programs do not lengthen.
 */
// @ts-nocheck

import { readFileSync } from "node:fs";
import { bench, describe } from "vitest";
import { type DayWeather, weatherOn } from "../../src/climate/index.js";
import { addDays, day } from "../../src/dates.js";
import type { PlaceSources } from "../../src/garden-place.js";
import { loadNormals } from "../../src/tables.js";
import { planFile } from "../support/a-garden.js";
import { cruPoints, placeWeather } from "../support/a-place.js";
import { examplePath } from "../support/run-cli.js";

const beforeReading = process.cpuUsage();
const normals = await loadNormals();
const { user, system } = process.cpuUsage(beforeReading);
console.log(`the table of means: ${((user + system) / 1000).toFixed(1)} ms`);

function planned(text: string, sources: PlaceSources): void {
  const plan = planFile(text, undefined, undefined, sources);
  if (!plan.ok) throw new Error(plan.problems.map(({ message }) => message).join("\n"));
}

function processorMs(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}

/** Turn about, so that both meet the same state of the machine. */
function tellCost(name: string, withPlace: () => void, without: () => void): void {
  const pairs = Array.from({ length: 25 }, () => [processorMs(without), processorMs(withPlace)]);
  const [off, on] = [0, 1].map((i) => median(pairs.map((pair) => pair[i] ?? 0)));
  const cost = (on ?? 0) - (off ?? 0);
  console.log(
    `${name}: ${off?.toFixed(1)} ms without, ${on?.toFixed(1)} ms with: ${cost.toFixed(1)} ms`,
  );
}

describe.each(["back-garden", "shared-garden"])("%s", (name) => {
  const text = readFileSync(examplePath(name), "utf8");
  const off = `climate: off\n${text}`;
  const withPlace = (): void => {
    planned(text, { normals });
  };
  const without = (): void => {
    planned(off, {});
  };
  withPlace();
  tellCost(name, withPlace, without);
  bench("with its place", withPlace, { iterations: 20, time: 0 });
  bench("with `climate: off`", without, { iterations: 20, time: 0 });
});

describe("ten years of daily weather, 40 beds", () => {
  const shared = readFileSync(examplePath("shared-garden"), "utf8");
  const place = placeWeather(cruPoints.eugene);
  const first = day("2018-01-01");
  const rows = Array.from({ length: 3652 }, (_, i) => {
    const on = addDays(first, i);
    const { minC, maxC }: DayWeather = weatherOn(place, on);
    const byC = 4 * Math.sin(i * 1.7);
    return `${on},${(minC + byC).toFixed(1)},${(maxC + byC).toFixed(1)},1.2`;
  });
  const seen = ["date,tmin_c,tmax_c,rain_mm", ...rows, ""].join("\n");
  const text = `weather: { seen: weather.csv }\n${shared}`;
  const withWeather = (): void => {
    planned(text, { normals, weather: { seen } });
  };
  const without = (): void => {
    planned(shared, { normals });
  };
  withWeather();
  tellCost("ten years of daily weather", withWeather, without);
  bench("with the weather", withWeather, { iterations: 10, time: 0 });
  bench("with the means alone", without, { iterations: 10, time: 0 });
});
