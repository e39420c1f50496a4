// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, day, daysBetween } from "../../src/dates.js";
import { daysAround, fedDays, feedsOfDay, roundOf } from "../../src/log/rounds-near.js";
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
    expect(roundOf(plan, given.day, { planting: "toms" }, true)).toBe(given.day);
    expect(roundOf(plan, next.day, {}, true)).toBe(next.day);
  });

  test("is the nearest that is not given yet, at most half the shortest gap away", () => {
    const of = { planting: "toms" };
    expect(roundOf(plan, addDays(after.day, 1), of, true)).toBe(after.day);
    expect(roundOf(plan, addDays(next.day, -half), of, true)).toBe(next.day);
    const between = addDays(next.day, -half - 1);
    expect(daysBetween(given.day, between)).toBeGreaterThan(0);
    expect(roundOf(plan, between, of, true)).toBeUndefined();
    expect(roundOf(plan, addDays(given.day, 1), of, true)).toBeUndefined();
  });

  test("is of the planting or the bed asked for", () => {
    expect(roundOf(plan, next.day, { bed: "north" }, true)).toBeUndefined();
    expect(daysAround(plan, day("2027-03-01"), { bed: "south" })).toEqual([
      { day: fedDays(plan, { bed: "south" })[0]?.day, feeds: [] },
    ]);
  });

  test("has the days before and after told", () => {
    expect(daysAround(plan, addDays(next.day, 1), { planting: "toms" })).toEqual([
      { day: next.day, feeds: [] },
      { day: after.day, feeds: [] },
    ]);
  });

  test("is none to come where that is not meant", () => {
    expect(roundOf(plan, addDays(next.day, -1), {}, false)).toBeUndefined();
    expect(roundOf(plan, addDays(next.day, 1), {}, false)).toBe(next.day);
    expect(roundOf(plan, next.day, {}, false)).toBe(next.day);
  });

  test("has the days of other feeds told where all is meant", () => {
    const from = day("2027-06-20");
    const feeds = [{ name: "nettle", every: "90 days", rate: "5 mL per L", from }];
    const fed = planOn("2027-06-16", { ...growing({}), log, feeds });
    const before = addDays(from, -1);
    const due = fedDays(fed, {}).find((one) => one.day > before);
    const nettle = { day: from, feeds: ["nettle"] };
    expect(feedsOfDay(fed, from)).toEqual(["nettle"]);
    expect(daysAround(fed, before, {})).toEqual([
      { day: given.day, feeds: [] },
      nettle,
      { day: due?.day, feeds: [] },
    ]);
    expect(daysAround(fed, before, { planting: "toms" })).not.toContainEqual(nettle);
  });
});
