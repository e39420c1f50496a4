/** Days into weeks, and what rounds take off. */
// @ts-nocheck

import { expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { balancedWeeks, joinedWeeks, lessRounds, weekOf } from "../../src/watering/weeks.js";

const monday = day("2027-06-07");

test.each([
  ["2027-06-07", "2027-06-07"],
  ["2027-06-13", "2027-06-07"],
  ["2027-01-01", "2026-12-28"],
  ["1969-12-31", "1969-12-29"],
])("the week of %s begins on Monday %s", (on, from) => {
  expect(weekOf(day(on)).from).toBe(from);
});

test("rain beyond a week's need is lost, and that within it comes off", () => {
  const [week, next] = balancedWeeks(
    [
      { day: monday, needMm: 4, rainMm: 0 },
      { day: day("2027-06-13"), needMm: 4, rainMm: 10 },
      { day: day("2027-06-14"), needMm: 5, rainMm: 1 },
    ],
    2,
  );
  expect(week).toMatchObject({ needMm: 8, rainMm: 10, waterL: 0 });
  expect(next).toMatchObject({ needMm: 5, rainMm: 1, waterL: 8 });
});

test("mm of a bed are over the ground of what grows there that week", () => {
  const week = { from: monday, to: day("2027-06-13") };
  const [joined] = joinedWeeks([
    { areaM2: 3, weeks: [{ ...week, needMm: 20, rainMm: 5, waterL: 45 }] },
    { areaM2: 1, weeks: [{ ...week, needMm: 40, rainMm: 5, waterL: 35 }] },
  ]);
  expect(joined).toEqual({ ...week, needMm: 25, rainMm: 5, waterL: 80 });
});

test("a round's water comes off its own week, down to nothing", () => {
  const weeks = [
    { ...weekOf(monday), waterL: 30 },
    { ...weekOf(day("2027-06-14")), waterL: 5 },
    { ...weekOf(day("2027-06-21")), waterL: 7 },
  ];
  const rounds = new Map([
    [day("2027-06-08"), 12],
    [day("2027-06-13"), 3],
    [day("2027-06-15"), 12],
  ]);
  expect(lessRounds(weeks, rounds).map(({ roundL, leftL }) => [roundL, leftL])).toEqual([
    [15, 15],
    [12, 0],
    [0, 7],
  ]);
});
