// @ts-nocheck
import { expect, test } from "vitest";
import { type DayWeather, weatherOn } from "../../src/climate/index.js";
import { type Day, day, eachDay } from "../../src/dates.js";
import { cruPoints, placeWeather } from "../support/a-place.js";

const seen: DayWeather = { minC: 1, maxC: 9, rainMm: 4, from: "seen" };
const place = placeWeather({ ...cruPoints.cordoba, rainMm: Array<number>(12).fill(62) }, [
  [day("2027-06-01"), seen],
]);

test("a day of the files has their weather, its neighbours that of the means", () => {
  expect(weatherOn(place, day("2027-06-01"))).toBe(seen);
  expect(weatherOn(place, day("2027-06-02"))).toMatchObject({ from: "means" });
  expect(weatherOn(place, day("2028-06-01"))).toMatchObject({ from: "means" });
});

test("every year has the same means, leap years too, where 29 February lies between its neighbours", () => {
  for (const date of ["01-01", "02-28", "03-01", "07-15", "12-31"]) {
    const [leap, common] = [2028, 2029].map((year) => weatherOn(place, `${year}-${date}` as Day));
    expect([leap?.minC, leap?.maxC]).toEqual([common?.minC, common?.maxC]);
  }
  const [before, on, after] = ["2028-02-28", "2028-02-29", "2028-03-01"].map((d) =>
    weatherOn(place, day(d)),
  );
  expect(on?.maxC).toBeCloseTo(((before?.maxC ?? NaN) + (after?.maxC ?? NaN)) / 2, 9);
});

test("the days of a month share its mean and its rain", () => {
  for (const [from, to] of [
    ["2027-02-01", "2027-02-28"],
    ["2028-02-01", "2028-02-29"],
    ["2027-12-01", "2027-12-31"],
  ] as const) {
    const days = [...eachDay({ from: day(from), to: day(to) })].map((d) => weatherOn(place, d));
    expect(days.reduce((sum, { rainMm }) => sum + (rainMm ?? NaN), 0)).toBeCloseTo(62, 9);
  }
});

test("where nobody gave rain, days have none told", () => {
  expect(weatherOn(placeWeather(cruPoints.cordoba), day("2027-06-02"))).not.toHaveProperty(
    "rainMm",
  );
});
