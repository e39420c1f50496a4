/** A sign after the feeding of a planting has ended: how many more, from when until when. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import { chooseDays } from "../../src/days/choose-days.js";
import { type FeedingCourse, feedingCourses } from "../../src/days/courses.js";
import { reopened, standingAsPlanned, standingAsTold } from "../../src/log/reopened.js";
import type { NotGiven } from "../../src/log/past.js";
import { matchRules } from "../../src/rules/match.js";
import type { FeedRule } from "../../src/rules/rule.js";
import { sightingsOn } from "../../src/rules/signs.js";
import { plantingLife } from "../../src/stages/planting-life.js";
import { loadTables } from "../../src/tables.js";
import { aGarden, aPlanting } from "../support/a-garden.js";

const { catalogue, builtInRules, signs } = loadTables();
const { season, ...place } = aGarden();
const planting = aPlanting();
const usualRule = builtInRules.find(({ id }) => id === "tomato-cordon-drench") as FeedRule;
const crop = catalogue.crops.find(({ key }) => key === "tomato");
if (crop === undefined) throw new Error("no tomato");

interface Told {
  given?: readonly string[];
  missed?: readonly string[];
  seen: readonly string[];
  sign?: string;
  rule?: Partial<FeedRule>;
  lastPick?: string;
  untoldTo?: string;
}

/** Tomatoes that flower from 17 June, and are picked from 1 August to the last pick. */
function coursesOf({ given = [], missed = [], seen, sign, rule, ...told }: Told): FeedingCourse[] {
  const picked = { ...planting, pickedUntil: day(told.lastPick ?? "2027-10-10") };
  const life = plantingLife(picked, crop as NonNullable<typeof crop>, { season, ...place });
  const matched = matchRules(picked, crop as NonNullable<typeof crop>, life, [
    { ...usualRule, ...rule },
  ]);
  const sightings = sightingsOn(
    planting,
    crop,
    seen.map((on) => ({
      on: day(on),
      planting: "toms",
      sign: sign ?? "blossom-end-rot",
      path: [],
    })),
    signs,
  );
  const past = {
    given: given.map((on) => ({ planting: "toms", day: day(on) })),
    notGiven: missed.map((on): NotGiven => ({
      planting: "toms",
      bed: "south",
      route: "drench",
      day: day(on),
      why: "log",
    })),
  };
  return [
    ...reopened(
      feedingCourses(planting, matched.spans, season),
      [{ planting, life, sightings }],
      standingAsTold(past, told.untoldTo === undefined ? undefined : day(told.untoldTo)),
      season,
    ),
  ];
}

const ids = (courses: readonly FeedingCourse[]): string[] => courses.map(({ course }) => course.id);
const four = ["2027-06-20", "2027-07-04", "2027-07-18", "2027-08-01"];

describe("after all feedings of a course", () => {
  test("two more open, the first within seven days of the sign", () => {
    const [ended, opened, ...none] = coursesOf({ given: four, seen: ["2027-08-20"] });
    expect(none).toEqual([]);
    expect(ended?.course).toMatchObject({ id: "toms/drench", coverTo: "2027-08-01" });
    expect(opened).toMatchObject({
      route: "drench",
      openedBySignOn: "2027-08-20",
      spans: [{ rule: { id: "tomato-cordon-drench" }, from: "2027-08-20", to: "2027-09-11" }],
    });
    expect(opened?.course).toEqual({
      id: "toms/drench/after-2027-08-20",
      first: { earliest: "2027-08-20", latest: "2027-08-27" },
      phases: [{ from: "2027-08-20", shortestDays: 10, targetDays: 14, longestDays: 18 }],
      feedings: 2,
      // 28 days free before the last pick on 10 October.
      coverTo: "2027-09-11",
    });
  });

  test("the first keeps the shortest gap from the last one given", () => {
    const [, opened] = coursesOf({ given: four, seen: ["2027-08-02"] });
    expect(opened?.course.first).toEqual({ earliest: "2027-08-11", latest: "2027-08-11" });
  });

  test("those that were missed count as well", () => {
    const [given, missed] = [four.slice(0, 2), four.slice(2)];
    expect(ids(coursesOf({ given, missed, seen: ["2027-08-20"] }))).toHaveLength(2);
    expect(ids(coursesOf({ given, seen: ["2027-08-20"] }))).toEqual(["toms/drench"]);
  });

  test("one made up for is no feeding less", () => {
    const given = ["2027-06-20", "2027-07-04", "2027-07-21"];
    const missed = ["2027-07-18"];
    expect(ids(coursesOf({ given, missed, seen: ["2027-07-25"] }))).toEqual(["toms/drench"]);
    const all = { given: [...given, "2027-08-04"], missed };
    expect(ids(coursesOf({ ...all, seen: ["2027-08-20"] }))).toHaveLength(2);
  });

  test("those whose weeks went by before anything was told count too", () => {
    const given = ["2027-07-25", "2027-08-08"];
    expect(ids(coursesOf({ given, seen: ["2027-08-20"], untoldTo: "2027-07-20" }))).toHaveLength(2);
    expect(ids(coursesOf({ given, seen: ["2027-08-20"] }))).toHaveLength(1);
  });

  test("one given on the day of the sign is still of the course, so nothing opens", () => {
    expect(ids(coursesOf({ given: four, seen: ["2027-08-01"] }))).toEqual(["toms/drench"]);
  });
});

test("a sign while the course is open leaves the courses as they are", () => {
  const seen = ["2027-07-20"];
  expect(coursesOf({ given: four.slice(0, 3), seen })).toEqual(coursesOf({ seen: [] }));
});

test("after the last day of the stages that are fed, two more open too", () => {
  const rule: Partial<FeedRule> = { stages: ["flowering"] };
  expect(ids(coursesOf({ seen: ["2027-06-25"], rule }))).toEqual(["toms/drench"]);
  const [ended, opened] = coursesOf({ seen: ["2027-06-26"], rule });
  expect(ended?.course.coverTo).toBe("2027-06-25");
  expect(opened?.course.first).toEqual({ earliest: "2027-06-26", latest: "2027-07-03" });
});

describe("nothing opens", () => {
  test("when a fruit that sets then is not picked any more", () => {
    const late = { given: four, seen: ["2027-09-12"] };
    expect(ids(coursesOf(late))).toEqual(["toms/drench"]);
    expect(ids(coursesOf({ ...late, lastPick: "2027-10-11" }))).toHaveLength(2);
  });

  test("after a rule's stop before harvest", () => {
    const rule: Partial<FeedRule> = { stages: ["flowering"], stopBeforeHarvestDays: 3 };
    expect(ids(coursesOf({ seen: ["2027-07-28"], rule }))).toHaveLength(2);
    expect(ids(coursesOf({ seen: ["2027-07-29"], rule }))).toEqual(["toms/drench"]);
  });

  test("for a sign that opens none, or one not known on the crop", () => {
    for (const sign of ["white-crust", "wilting-at-noon", "bitter-pit"])
      expect(ids(coursesOf({ given: four, seen: ["2027-08-20"], sign })), sign).toHaveLength(1);
  });
});

describe("a second sign", () => {
  const more = ["2027-08-22", "2027-09-05"];

  test("adds nothing while the two are not given", () => {
    const seen = ["2027-08-20", "2027-08-30"];
    expect(ids(coursesOf({ given: [...four, ...more.slice(0, 1)], seen }))).toHaveLength(2);
  });

  test("opens two more after them", () => {
    const seen = ["2027-08-20", "2027-09-08"];
    const courses = coursesOf({ given: [...four, ...more], seen, lastPick: "2027-10-31" });
    expect(ids(courses)).toEqual([
      "toms/drench",
      "toms/drench/after-2027-08-20",
      "toms/drench/after-2027-09-08",
    ]);
    expect(courses[1]?.course.coverTo).toBe("2027-09-05");
    expect(courses[2]?.course.first).toEqual({ earliest: "2027-09-15", latest: "2027-09-15" });
  });
});

test("where nobody tells what was given, what is planned counts, and stays", () => {
  const life = plantingLife(planting, crop, { season, ...place });
  const rule = { ...usualRule, stopBeforeLastPickDays: 0 };
  const courses = feedingCourses(planting, matchRules(planting, crop, life, [rule]).spans, season);
  const allowed = Array.from({ length: 150 }, (_, n) => addDays(day("2027-06-01"), n));
  const seen = { on: day("2027-08-25"), planting: "toms", sign: "blossom-end-rot", path: [] };
  const sightings = sightingsOn(planting, crop, [seen], signs);
  const planned = chooseDays({ allowedDays: allowed, courses: courses.map((one) => one.course) });
  const days = planned.feedings.map((feeding) => feeding.day);
  expect(days).toHaveLength(4);
  const standing = standingAsPlanned((those) => those, allowed);
  const [ended, opened] = reopened(courses, [{ planting, life, sightings }], standing, season);
  expect(ended?.course).toMatchObject({ heldDays: days, coverTo: days.at(-1) });
  expect(opened?.course.first.earliest).toBe("2027-08-25");
});
