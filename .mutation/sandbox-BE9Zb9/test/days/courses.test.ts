/** Fed spans -> courses: where the first feeding belongs, gaps, and the day to be covered. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { day, type DaySpan } from "../../src/dates.js";
import { feedingCourses, intervalFor, ruleOn } from "../../src/days/courses.js";
import type { Route } from "../../src/garden/garden.js";
import type { FedSpan } from "../../src/rules/match.js";
import type { FeedRule } from "../../src/rules/rule.js";
import { loadTables } from "../../src/tables.js";
import { aPlanting } from "../support/a-garden.js";

const rule = loadTables().builtInRules.find((r) => r.id === "solanaceous-drench") as FeedRule;
const other: FeedRule = {
  ...rule,
  id: "other",
  interval: { shortestDays: 5, targetDays: 7, longestDays: 10 },
};
const season: DaySpan = { from: day("2027-03-01"), to: day("2027-10-31") };

function span(from: string, to: string, differs: Partial<FedSpan> = {}): FedSpan {
  return { route: "drench", rule, from: day(from), to: day(to), ...differs };
}

describe("a course", () => {
  test("begins with its first fed stage and is covered to the end of the last", () => {
    const [course] = feedingCourses(aPlanting(), [span("2027-06-17", "2027-07-24")], season);
    expect(course?.course).toEqual({
      id: "toms/drench",
      first: { earliest: "2027-06-17", latest: "2027-06-27" },
      phases: [{ from: "2027-06-17", shortestDays: 10, targetDays: 14, longestDays: 18 }],
      coverTo: "2027-07-24",
    });
  });

  test("changes its gaps where the rule changes", () => {
    const spans = [
      span("2027-06-17", "2027-06-25"),
      span("2027-06-26", "2027-07-24", { rule: other }),
    ];
    const courses = feedingCourses(aPlanting(), spans, season);
    expect(courses).toHaveLength(1);
    expect(courses[0]?.course.phases).toEqual([
      { from: "2027-06-17", shortestDays: 10, targetDays: 14, longestDays: 18 },
      { from: "2027-06-26", shortestDays: 5, targetDays: 7, longestDays: 10 },
    ]);
  });

  test("of its own has a rule that feeds only so many times, a gap after the rule before it", () => {
    const spans = [
      span("2027-05-20", "2027-06-16", { rule: other }),
      span("2027-06-17", "2027-07-24", { rule: { ...rule, feedings: 4 } }),
    ];
    const [before, counted, ...none] = feedingCourses(aPlanting(), spans, season);
    expect(none).toEqual([]);
    expect(before?.course).toMatchObject({ id: "toms/drench", coverTo: "2027-06-12" });
    expect(before?.course).not.toHaveProperty("feedings");
    expect(counted?.course).toMatchObject({
      id: "toms/drench/2",
      first: { earliest: "2027-06-17", latest: "2027-06-27" },
      feedings: 4,
    });
    // Through the harvest nothing is counted; and in four days there is no room for a gap of five.
    const through = aPlanting({ through: "harvest" });
    expect(feedingCourses(through, spans, season)).toHaveLength(1);
    const short = [span("2027-06-13", "2027-06-16", { rule: other }), ...spans.slice(1)];
    expect(feedingCourses(aPlanting(), short, season)).toHaveLength(1);
  });

  test("is one for each route, and one more after a hole", () => {
    const foliar: Route = "foliar";
    const spans = [
      span("2027-06-01", "2027-06-10"),
      span("2027-06-12", "2027-06-20"),
      span("2027-06-21", "2027-06-30", { route: foliar }),
    ];
    expect(feedingCourses(aPlanting(), spans, season).map((c) => c.course.id)).toEqual([
      "toms/drench",
      "toms/drench/2",
      "toms/foliar/3",
    ]);
  });

  test("is cut to the season, and left out where it lies outside", () => {
    const spans = [
      span("2026-01-01", "2026-02-01"),
      span("2027-02-20", "2027-03-20"),
      span("2027-10-20", "2027-11-20"),
    ];
    const courses = feedingCourses(aPlanting(), spans, season);
    expect(courses.map(({ course }) => [course.first.earliest, course.coverTo])).toEqual([
      ["2027-03-01", "2027-03-20"],
      ["2027-10-20", "2027-10-31"],
    ]);
  });

  test("is first fed no later than it ends", () => {
    const [course] = feedingCourses(aPlanting(), [span("2027-06-17", "2027-06-20")], season);
    expect(course?.course.first.latest).toBe("2027-06-20");
  });
});

describe("a planting's own interval", () => {
  test("is the target, with a week around it, so that one feeding day a week serves it", () => {
    expect(intervalFor(aPlanting({ interval: "14 days" }), rule)).toEqual({
      shortestDays: 11,
      targetDays: 14,
      longestDays: 17,
    });
  });

  test("stays within the rule's bounds", () => {
    const shorter = intervalFor(aPlanting({ interval: "12 days" }), rule);
    expect(shorter).toEqual({ shortestDays: 10, targetDays: 12, longestDays: 15 });
    const longer = intervalFor(aPlanting({ interval: "17 days" }), rule);
    expect(longer).toEqual({ shortestDays: 14, targetDays: 17, longestDays: 18 });
  });

  test("is the rule's own where none is wished for", () => {
    expect(intervalFor(aPlanting(), rule)).toEqual(rule.interval);
  });
});

describe("the rule of a day", () => {
  const spans = [
    span("2027-06-17", "2027-06-25"),
    span("2027-06-26", "2027-07-24", { rule: other }),
  ];
  const [course] = feedingCourses(aPlanting(), spans, season);

  test("is that of the span that the day lies in, or after", () => {
    if (course === undefined) throw new Error("no course");
    expect(ruleOn(course, day("2027-06-25")).id).toBe("solanaceous-drench");
    expect(ruleOn(course, day("2027-06-26")).id).toBe("other");
    expect(ruleOn(course, day("2027-08-01")).id).toBe("other");
    expect(ruleOn(course, day("2027-06-01")).id).toBe("solanaceous-drench");
  });

  test("a course without spans is our own bug", () => {
    if (course === undefined) throw new Error("no course");
    expect(() => ruleOn({ ...course, spans: [] }, day("2027-06-25"))).toThrow("has no spans");
  });
});
