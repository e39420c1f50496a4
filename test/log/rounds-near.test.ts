import { describe, expect, test } from "vitest";
import { addDays, day, daysBetween } from "../../src/dates.js";
import { daysAround, fedDays, roundOf } from "../../src/log/rounds-near.js";
import { growing, intervalOf, planOn } from "../live/a-live-garden.js";

const log = [{ on: "2027-06-14", planting: "toms" }];
const plan = planOn("2027-06-16", { ...growing({}, { id: "more" }), log });
const [given, next, after] = fedDays(plan, { planting: "toms" });
if (given === undefined || next === undefined || after === undefined)
  throw new Error("the plan feeds the tomatoes three times at least");
const half = Math.floor(intervalOf(plan).shortestDays / 2);

describe("the round of a day", () => {
  test("is that day's, given or not", () => {
    expect([given.isWritten, given.day]).toEqual([true, "2027-06-14"]);
    expect(roundOf(plan, given.day, { planting: "toms" })).toBe(given.day);
    expect(roundOf(plan, next.day, {})).toBe(next.day);
  });

  test("is the nearest that is not given yet, at most half the shortest gap away", () => {
    const of = { planting: "toms" };
    expect(roundOf(plan, addDays(after.day, 1), of)).toBe(after.day);
    expect(roundOf(plan, addDays(next.day, -half), of)).toBe(next.day);
    const between = addDays(next.day, -half - 1);
    expect(daysBetween(given.day, between)).toBeGreaterThan(0);
    expect(roundOf(plan, between, of)).toBeUndefined();
    expect(roundOf(plan, addDays(given.day, 1), of)).toBeUndefined();
  });

  test("is of the planting or the bed asked for", () => {
    expect(roundOf(plan, next.day, { bed: "north" })).toBeUndefined();
    expect(daysAround(plan, day("2027-03-01"), { bed: "south" })).toEqual([
      fedDays(plan, { bed: "south" })[0]?.day,
    ]);
  });

  test("has the days before and after told", () => {
    expect(daysAround(plan, addDays(next.day, 1), { planting: "toms" })).toEqual([
      next.day,
      after.day,
    ]);
  });
});
