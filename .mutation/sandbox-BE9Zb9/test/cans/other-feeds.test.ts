/** Other liquid feeds, through the plan of a garden that uses them. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { addDays, type Day, daysBetween, weekdayOf } from "../../src/dates.js";
import type { OtherFeedMix, Plan } from "../../src/season/season-plan.js";
import { aSeason, daysFed, gardenText, planFile, planted } from "../support/a-garden.js";

const nettle = { name: "nettle", rate: "100 mL per L", every: "14 days", holds: ["phosphate"] };
const withFeed = (differs: Record<string, unknown>, more: Record<string, unknown> = {}): Plan =>
  aSeason({ feeds: [{ ...nettle, ...differs }], ...more });
const mixesOf = (plan: Plan): (OtherFeedMix & { day: Day })[] =>
  plan.rounds.flatMap(({ day, feeds = [] }) => feeds.map((feed) => ({ ...feed, day })));
const daysOf = (plan: Plan): Day[] => [...new Set(mixesOf(plan).map(({ day }) => day))];
const apart = (plan: Plan, planting = "toms"): number =>
  Math.min(
    ...daysOf(plan).flatMap((feed) =>
      daysFed(plan, planting).map((fed) => Math.abs(daysBetween(feed, fed as Day))),
    ),
  );

describe("another feed", () => {
  test("is given every so many days, or on its days of the week, within its own span", () => {
    const span = { from: "2027-06-01", to: "2027-07-31" };
    const every = daysOf(withFeed(span));
    expect(every).toEqual(
      Array.from({ length: 5 }, (_, i) => addDays("2027-06-01" as Day, 14 * i)),
    );
    const sundays = daysOf(withFeed({ ...span, every: undefined, days: ["sun"] }));
    expect(new Set(sundays.map(weekdayOf))).toEqual(new Set(["sun"]));
    expect(sundays).toHaveLength(8);
  });

  test("is put on the next day on which the grower feeds, and counted on from that day", () => {
    const feeding = { days: ["sat"] };
    expect(daysOf(withFeed({ from: "2027-06-01", to: "2027-07-10" }, { feeding }))).toEqual([
      "2027-06-05",
      "2027-06-19",
      "2027-07-03",
    ]);
  });

  test("is dosed in cans of the garden's size, for what grows in the bed and no other", () => {
    const twoBeds = {
      beds: [
        ...(planted({}).beds as object[]),
        {
          id: "north",
          plantings: [{ id: "beans", crop: "basil", plants: 2, sown: "2027-04-20", water: "3 L" }],
        },
      ],
    };
    const [mix] = mixesOf(withFeed({ from: "2027-06-10", for: ["toms"] }, twoBeds));
    expect(mix).toMatchObject({ bed: "south", plantings: ["toms"], waterL: 12, rateMlPerL: 100 });
    // 12 L from a 10 L can.
    expect(mix?.fills.map(({ count, waterL, stockMl }) => [count, waterL, stockMl])).toEqual([
      [1, 10, 1000],
      [1, 2, 200],
    ]);
    expect(new Set(mixesOf(withFeed({ from: "2027-06-10" }, twoBeds)).map((m) => m.bed))).toEqual(
      new Set(["south", "north"]),
    );
  });

  test.each(["1 day", "3 days", "5 days"])("calcium keeps a gap of %s from it", (gap) => {
    const plan = withFeed({ gap });
    expect(daysFed(plan).length).toBeGreaterThanOrEqual(2);
    expect(apart(plan)).toBeGreaterThanOrEqual(Number.parseInt(gap));
  });

  test("that holds nothing calcium falls out with may share its day", () => {
    const plan = withFeed({ holds: undefined, every: "1 day" });
    expect(apart(plan)).toBe(0);
    expect(daysFed(plan)).toEqual(daysFed(aSeason()));
  });

  test("for other plantings alone moves no calcium feeding", () => {
    const beds = planted({}, { id: "herbs", crop: "basil" });
    const plan = withFeed({ every: "1 day", gap: "5 days", for: ["herbs"] }, beds);
    expect(daysFed(plan)).toEqual(daysFed(aSeason(beds)));
  });

  test("leaves no day for calcium: the windows missed are said", () => {
    const plan = withFeed({ every: "1 day", gap: "3 days" });
    expect(daysFed(plan)).toEqual([]);
    expect(plan.warnings.map(({ code }) => code)).toContain("window-not-served");
  });

  test("is counted on from the day it was last given", () => {
    const log = [{ on: "2027-06-04", feed: "nettle" }];
    const plan = planFile(gardenText({ feeds: [nettle], log }), undefined, "2027-06-07" as Day);
    if (!plan.ok) throw new Error("the garden has problems");
    expect(daysOf(plan.value).slice(0, 3)).toEqual(["2027-06-04", "2027-06-18", "2027-07-02"]);
    expect(
      mixesOf(plan.value)
        .map(({ given }) => given ?? false)
        .slice(0, 2),
    ).toEqual([true, false]);
  });

  test("says before which day a bottle of it was opened too early, where its shelf life is known", () => {
    const mixes = mixesOf(withFeed({ shelf_life: "30 days" }));
    expect(mixes.length).toBeGreaterThan(3);
    for (const { day, openedSince } of mixes) expect(openedSince).toBe(addDays(day, -30));
    expect(mixesOf(withFeed({})).every((mix) => !("openedSince" in mix))).toBe(true);
  });
});
