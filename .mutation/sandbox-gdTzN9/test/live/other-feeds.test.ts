// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, day, daysBetween } from "../../src/dates.js";
import type { OtherFeedMix, Plan } from "../../src/season/season-plan.js";
import { aheadDays, growing, planOn } from "./a-live-garden.js";

const nettle = { name: "nettle", every: "14 days", rate: "100 mL per L" };
const salts = { name: "salts", every: "14 days", rate: "2 mL per L", holds: ["phosphate"] };

function mixesOf(plan: Plan, feed: string): (OtherFeedMix & { day: string })[] {
  return plan.rounds.flatMap((round) =>
    (round.feeds ?? [])
      .filter((mix) => mix.feed === feed)
      .map((mix) => ({ ...mix, day: round.day })),
  );
}

function daysOf(plan: Plan, feed: string): string[] {
  return [...new Set(mixesOf(plan, feed).map((mix) => mix.day))];
}

describe("the days of another feed", () => {
  test("come every so many days while something grows", () => {
    const days = daysOf(planOn("2027-03-01", { feeds: [nettle] }), "nettle");
    expect(days.length).toBeGreaterThan(8);
    for (const [i, on] of days.entries())
      if (i > 0) expect(daysBetween(day(days[i - 1] ?? ""), day(on))).toBe(14);
  });

  test("fall on the weekdays it names", () => {
    const feeds = [{ name: "nettle", days: ["sun"], rate: "100 mL per L" }];
    const days = daysOf(planOn("2027-06-01", { feeds }), "nettle");
    expect(days.slice(0, 3).every((on) => new Date(on).getUTCDay() === 0)).toBe(true);
    expect(days.length).toBeGreaterThan(8);
  });

  test("wait for a day on which the grower can, and are counted on from it", () => {
    const feeding = { days: ["wed"] };
    const days = daysOf(planOn("2027-03-01", { feeds: [nettle], feeding }), "nettle");
    for (const [i, on] of days.entries())
      if (i > 0) expect(daysBetween(day(days[i - 1] ?? ""), day(on))).toBe(14);
    expect(days.every((on) => new Date(on).getUTCDay() === 3)).toBe(true);
  });

  test("keep to its own span", () => {
    const feeds = [{ ...nettle, from: "2027-06-10", to: "2027-07-10" }];
    expect(daysOf(planOn("2027-03-01", { feeds }), "nettle")).toEqual([
      "2027-06-10",
      "2027-06-24",
      "2027-07-08",
    ]);
  });

  test("are counted on from the last one in the log, late or early", () => {
    const log = [{ on: "2027-06-20", feed: "nettle" }];
    const days = daysOf(planOn("2027-06-28", { feeds: [nettle], log }), "nettle");
    expect(days.slice(0, 3)).toEqual(["2027-06-20", "2027-07-04", "2027-07-18"]);
    const overdue = daysOf(planOn("2027-07-09", { feeds: [nettle], log }), "nettle");
    expect(overdue.slice(0, 3)).toEqual(["2027-06-20", "2027-07-09", "2027-07-23"]);
  });

  test("keep their count while the log holds none of it", () => {
    const log = [{ on: "2027-06-20", planting: "toms" }];
    const whole = daysOf(planOn("2027-03-01", { feeds: [nettle] }), "nettle");
    const days = daysOf(planOn("2027-06-28", { feeds: [nettle], log }), "nettle");
    expect(days).toEqual(whole.filter((on) => on >= "2027-06-28"));
  });

  test("given today are not planned for today again", () => {
    const feeds = [{ name: "nettle", days: ["mon"], rate: "100 mL per L" }];
    const log = [{ on: "2027-06-28", feed: "nettle" }];
    const days = daysOf(planOn("2027-06-28", { feeds, log }), "nettle");
    expect(days.slice(0, 2)).toEqual(["2027-06-28", "2027-07-05"]);
    expect(mixesOf(planOn("2027-06-28", { feeds, log }), "nettle")[0]?.given).toBe(true);
  });
});

describe("what the log says of another feed", () => {
  test("is a round that was given", () => {
    const log = [{ on: "2027-06-20", feed: "nettle" }];
    const round = planOn("2027-06-28", { feeds: [nettle], log }).rounds.find(
      (r) => r.day === "2027-06-20",
    );
    expect(round).toMatchObject({ given: true, beds: [], stockMl: 0 });
  });

  test("counts for the planting it names, with its amount", () => {
    const beds = growing({}, { id: "more", water: "3 L" });
    const log = [{ on: "2027-06-20", feed: "nettle", planting: "more", stock: "150 mL" }];
    const plan = planOn("2027-06-28", { ...beds, feeds: [nettle], log });
    expect(mixesOf(plan, "nettle")[0]).toMatchObject({
      plantings: ["more"],
      waterL: 3,
      rateMlPerL: 50,
      given: true,
    });
  });

  test("is no feeding of calcium, and takes nothing from its bottles", () => {
    const stock = { batches: [{ id: "B1", made: "2027-05-10", volume: "1 L" }], keep: "fridge" };
    const log = [{ on: "2027-06-20", feed: "nettle", stock: "500 mL" }];
    const plan = planOn("2027-06-28", { feeds: [nettle], stock, log });
    expect(plan.stock?.inHand?.[0]?.leftMl).toBe(1000);
    expect(aheadDays(plan)).toEqual(aheadDays(planOn("2027-06-28", { stock })));
  });
});

describe("the gap that calcium keeps", () => {
  const gapDays = 3;
  const near = (a: string, b: string): boolean => Math.abs(daysBetween(day(a), day(b))) < gapDays;

  test("is kept from every day of a feed that settles it", () => {
    const plan = planOn("2027-03-01", { feeds: [salts], stock: { keep: "fridge" } });
    const feedDays = daysOf(plan, "salts");
    expect(aheadDays(plan).length).toBeGreaterThan(2);
    for (const on of aheadDays(plan)) expect(feedDays.some((f) => near(f, on))).toBe(false);
    expect(plan.warnings).toEqual([]);
  });

  test("is kept from a day in the log", () => {
    const log = [
      { on: "2027-06-18", planting: "toms" },
      { on: "2027-07-05", feed: "salts" },
    ];
    const plan = planOn("2027-07-05", { feeds: [salts], log });
    expect(aheadDays(plan)[0]).toBe("2027-07-08");
    const late = plan.warnings.find(({ code }) => code === "window-served-late");
    expect(late?.mend).toMatch(/move the other feed that is too near to \w{3} \d Jul/);
  });

  test("is kept by the feed from calcium already given", () => {
    const log = [
      { on: "2027-06-21", feed: "salts" },
      { on: "2027-07-04", planting: "toms" },
    ];
    const plan = planOn("2027-07-05", { feeds: [salts], log });
    expect(daysOf(plan, "salts").slice(0, 2)).toEqual(["2027-06-21", "2027-07-07"]);
  });

  test("is none where the feed holds nothing that settles it", () => {
    const plan = planOn("2027-03-01", { feeds: [nettle] });
    expect(aheadDays(plan)).toEqual(aheadDays(planOn("2027-03-01")));
  });

  test("does not hold for plantings that the feed is not for", () => {
    const beds = growing({}, { id: "more" });
    const feeds = [{ ...salts, days: ["mon", "wed", "fri"], every: undefined, for: ["more"] }];
    const plan = planOn("2027-03-01", { ...beds, feeds });
    expect(aheadDays(plan)).toEqual(aheadDays(planOn("2027-03-01")));
    expect(aheadDays(plan, "more")).toEqual([]);
  });
});

test("another feed is dosed by the can, bed by bed", () => {
  const plan = planOn("2027-06-01", { feeds: [nettle] });
  const [mix] = mixesOf(plan, "nettle");
  expect(mix?.waterL).toBe(12);
  expect(mix?.fills.map((fill) => [fill.count, fill.waterL, fill.stockMl])).toEqual([
    [1, 10, 1000],
    [1, 2, 200],
  ]);
});

test("it shares the round of calcium where both fall on one day", () => {
  const first = aheadDays(planOn("2027-03-01"))[0] ?? "";
  const feeds = [{ ...nettle, from: first, to: addDays(day(first), 1) }];
  const round = planOn("2027-03-01", { feeds }).rounds.find((r) => r.day === first);
  expect(round?.beds).toHaveLength(1);
  expect(round?.feeds).toHaveLength(1);
});
