// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../../src/dates.js";
import { monthsOf, percent, timeScale } from "../../../src/outputs/picture/time-scale.js";
import { planOf, weirCottage } from "../gardens.js";

const plan = planOf(weirCottage);

describe("time across the picture", () => {
  const scale = timeScale(plan);

  test("goes from the first day of the season to the last", () => {
    expect(scale.span).toEqual(plan.garden.season);
    expect(scale.start(scale.span.from)).toBe(0);
    expect(scale.start(addDays(scale.span.to, 1))).toBe(1);
  });

  test("gives each day the same room", () => {
    const days = 245;
    expect(scale.start(day("2027-03-02"))).toBeCloseTo(1 / days, 9);
    expect(scale.middle(day("2027-06-01"))).toBeCloseTo(92.5 / days, 9);
  });

  test("cuts what lies outside the season", () => {
    expect(scale.start(day("2026-12-01"))).toBe(0);
    expect(scale.shows({ from: day("2026-12-01"), to: day("2027-02-28") })).toBe(false);
    expect(scale.shows({ from: day("2026-12-01"), to: day("2027-03-01") })).toBe(true);
  });

  test("is written in per cent", () => {
    expect(percent(0.123456)).toBe("12.35%");
  });

  test("begins earlier when a batch does", () => {
    const { stock } = plan;
    if (stock === undefined) throw new Error("no stock");
    const batches = stock.making.batches.map((b) => ({ ...b, startOn: day("2027-02-20") }));
    expect(batches.length).toBeGreaterThan(0);
    const early = timeScale({ ...plan, stock: { ...stock, making: { ...stock.making, batches } } });
    expect(early.span.from).toBe("2027-02-20");
  });
});

describe("months", () => {
  test("are cut at both ends and leave no day out", () => {
    expect(monthsOf({ from: day("2027-11-15"), to: day("2028-03-02") })).toEqual([
      { from: "2027-11-15", to: "2027-11-30" },
      { from: "2027-12-01", to: "2027-12-31" },
      { from: "2028-01-01", to: "2028-01-31" },
      { from: "2028-02-01", to: "2028-02-29" },
      { from: "2028-03-01", to: "2028-03-02" },
    ]);
  });

  test("of a season within one month are one", () => {
    const span = { from: day("2027-01-31"), to: day("2027-01-31") };
    expect(monthsOf(span)).toEqual([span]);
  });
});
