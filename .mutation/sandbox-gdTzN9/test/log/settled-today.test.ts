// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import type { FeedingCourse } from "../../src/days/courses.js";
import { settledToday } from "../../src/log/settled-today.js";
import { aPlanting } from "../support/a-garden.js";

const today = day("2027-06-15");

/** Due for the first time from the 10th on; every 10 to 18 days. */
function aCourse(latest: string, coverTo = "2027-08-20"): FeedingCourse {
  const gap = { shortestDays: 10, targetDays: 14, longestDays: 18 };
  return {
    planting: aPlanting(),
    route: "drench",
    course: {
      id: "toms/0",
      first: { earliest: day("2027-06-10"), latest: day(latest) },
      coverTo: day(coverTo),
      phases: [{ from: day("2027-06-10"), ...gap }],
    },
    spans: [],
  };
}
const todays = [{ planting: "toms", route: "drench" }] as const;

describe("a feeding published for today", () => {
  test("is in the schedule, and the course goes on from it", () => {
    const { schedule, after } = settledToday([aCourse("2027-06-20")], todays, today);
    expect(schedule).toMatchObject({
      feedings: [{ course: "toms/0", day: today, window: { latest: "2027-06-20" } }],
      unmet: [],
    });
    expect(after[0]?.course.lastFed).toBe(today);
  });

  test("that comes late is told as late, by its days", () => {
    const { schedule } = settledToday([aCourse("2027-06-13")], todays, today);
    expect(schedule.feedings).toHaveLength(1);
    expect(schedule.unmet).toMatchObject([{ fedOn: today, lateDays: 2 }]);
  });

  test("stays before its window begins too", () => {
    const early = addDays(day("2027-06-10"), -3);
    const { schedule } = settledToday([aCourse("2027-06-20")], todays, early);
    expect(schedule).toMatchObject({ feedings: [{ day: early }], unmet: [] });
  });

  test("of a course that has ended by now is no more", () => {
    const courses = [aCourse("2027-06-13", "2027-06-14")];
    expect(settledToday(courses, todays, today)).toEqual({
      schedule: { feedings: [], unmet: [] },
      after: courses,
    });
  });
});

test("nothing published for today settles nothing", () => {
  const courses = [aCourse("2027-06-20")];
  expect(settledToday(courses, [], today).after).toEqual(courses);
});
