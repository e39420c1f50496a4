// @ts-nocheck
import { describe, expect, it, test } from "vitest";
import { addDays, day, type Day, eachDay } from "../../src/dates.js";
import { chooseDays } from "../../src/days/choose-days.js";
import type { Course, ScheduleProblem } from "../../src/days/schedule-problem.js";
import { faultsOf } from "./check-schedule.js";
import { randomProblem, usualGaps } from "./random-problem.js";

const may1 = day("2027-05-01");

function daily(days: number, from: Day = may1): Day[] {
  return [...eachDay({ from, to: addDays(from, days - 1) })];
}

/** Fed weekly for four weeks from the first of May, between 5 and 9 days apart. */
function weekly(id: string, change: Partial<Course> = {}): Course {
  return {
    id,
    first: { earliest: may1, latest: addDays(may1, 3) },
    phases: [{ from: may1, shortestDays: 5, targetDays: 7, longestDays: 9 }],
    coverTo: addDays(may1, 27),
    ...change,
  };
}

function daysOf(problem: ScheduleProblem, course: string): string[] {
  return chooseDays(problem)
    .feedings.filter((f) => f.course === course)
    .map((f) => f.day.slice(5));
}

it("gives an empty schedule for no courses", () => {
  expect(chooseDays({ allowedDays: daily(10), courses: [] })).toEqual({ feedings: [], unmet: [] });
});

it("names the first window of every course when no day is allowed", () => {
  expect(chooseDays({ allowedDays: [], courses: [weekly("a")] })).toEqual({
    feedings: [],
    unmet: [
      { course: "a", window: { earliest: "2027-05-01", latest: "2027-05-04" }, lateDays: 25 },
    ],
  });
});

it("owes nothing to a course that would begin after its end", () => {
  const late = weekly("a", { first: { earliest: day("2027-06-01"), latest: day("2027-06-05") } });
  expect(chooseDays({ allowedDays: daily(60), courses: [late] })).toEqual({
    feedings: [],
    unmet: [],
  });
});

it("feeds a short course once, by its end, when the first window reaches beyond it", () => {
  const short = weekly("a", { coverTo: addDays(may1, 2) });
  const problem = { allowedDays: [addDays(may1, 1), addDays(may1, 3)], courses: [short] };
  expect(chooseDays(problem).feedings).toEqual([
    {
      course: "a",
      day: "2027-05-02",
      window: { earliest: "2027-05-01", latest: "2027-05-03" },
    },
  ]);
});

it("feeds as few times as the longest gap lets it, then nearest to the target", () => {
  // Three feedings do, if the last is on the 20th or later: two gaps of 8 days from the 4th.
  expect(daysOf({ allowedDays: daily(40), courses: [weekly("a")] }, "a")).toEqual([
    "05-04",
    "05-12",
    "05-20",
  ]);
});

it("feeds early where nothing else decides", () => {
  // The last of four must be on the 23rd or later: gaps of 7 days do from the 2nd, 3rd or 4th.
  const course = weekly("a", { coverTo: addDays(may1, 30) });
  expect(daysOf({ allowedDays: daily(40), courses: [course] }, "a")).toEqual([
    "05-02",
    "05-09",
    "05-16",
    "05-23",
  ]);
});

it("puts courses on shared days", () => {
  const courses = [
    weekly("a"),
    weekly("b", { first: { earliest: addDays(may1, 2), latest: addDays(may1, 5) } }),
  ];
  const { feedings } = chooseDays({ allowedDays: daily(40), courses });
  expect(new Set(feedings.map((f) => f.day)).size).toBe(3);
  expect(feedings).toHaveLength(6);
});

it("lets a course pass over a round that comes too soon for it", () => {
  const slow = weekly("slow", {
    phases: [{ from: may1, shortestDays: 12, targetDays: 14, longestDays: 16 }],
  });
  const problem = { allowedDays: daily(40), courses: [weekly("quick"), slow] };
  expect(daysOf(problem, "quick")).toEqual(["05-04", "05-12", "05-20"]);
  expect(daysOf(problem, "slow")).toEqual(["05-04", "05-20"]);
});

it("counts the first window from a feeding already given", () => {
  const problem = {
    allowedDays: daily(40),
    courses: [weekly("a", { lastFed: addDays(may1, 4) })],
  };
  expect(chooseDays(problem).feedings[0]).toEqual({
    course: "a",
    day: "2027-05-12",
    window: { earliest: "2027-05-10", latest: "2027-05-14" },
  });
});

it("owes nothing when a feeding already given covers the course", () => {
  const fed = weekly("a", { lastFed: addDays(may1, 20) });
  expect(chooseDays({ allowedDays: daily(40), courses: [fed] })).toEqual({
    feedings: [],
    unmet: [],
  });
});

it("feeds late rather than too soon when nobody is there, and counts on from the late day", () => {
  // Away from the 6th to the 19th.
  const allowedDays = daily(40).filter((d) => d < "2027-05-06" || d > "2027-05-19");
  const { feedings, unmet } = chooseDays({ allowedDays, courses: [weekly("a")] });
  expect(feedings.map((f) => [f.day, f.window.earliest, f.window.latest])).toEqual([
    ["2027-05-04", "2027-05-01", "2027-05-04"],
    ["2027-05-20", "2027-05-09", "2027-05-13"],
  ]);
  expect(unmet).toEqual([
    {
      course: "a",
      window: { earliest: "2027-05-09", latest: "2027-05-13" },
      fedOn: "2027-05-20",
      lateDays: 7,
    },
  ]);
});

it("takes the gap from the stage of the feeding it starts from", () => {
  const course = weekly("a", {
    phases: [
      { from: may1, shortestDays: 5, targetDays: 7, longestDays: 7 },
      { from: addDays(may1, 14), shortestDays: 13, targetDays: 14, longestDays: 14 },
    ],
  });
  expect(daysOf({ allowedDays: daily(40), courses: [course] }, "a")).toEqual([
    "05-01",
    "05-08",
    "05-15",
  ]);
});

it("keeps a course off the days it avoids", () => {
  const avoidDays = daily(3, day("2027-05-10"));
  const days = daysOf({ allowedDays: daily(40), courses: [weekly("a", { avoidDays })] }, "a");
  expect(days).toEqual(["05-04", "05-13", "05-20"]);
});

describe("a course that owes only so many feedings", () => {
  const counted = (feedings: number, change: Partial<Course> = {}): ScheduleProblem => ({
    allowedDays: daily(200),
    courses: [weekly("a", { feedings, coverTo: addDays(may1, 180), ...change })],
  });

  test("has them all, at the rule's interval, where its end lies far off, and no more", () => {
    expect(daysOf(counted(4), "a")).toEqual(["05-01", "05-08", "05-15", "05-22"]);
    expect(chooseDays(counted(4)).unmet).toEqual([]);
  });

  test("has fewer where its end comes first, as without the limit", () => {
    const near = { coverTo: addDays(may1, 27) };
    expect(daysOf(counted(4, near), "a")).toEqual(["05-04", "05-12", "05-20"]);
  });

  test("has none where it owes none", () => {
    expect(chooseDays(counted(0))).toEqual({ feedings: [], unmet: [] });
    expect(chooseDays(counted(0, { lastFed: may1 }))).toEqual({ feedings: [], unmet: [] });
  });

  test("goes on from a feeding already given", () => {
    expect(daysOf(counted(2, { lastFed: may1 }), "a")).toEqual(["05-08", "05-15"]);
  });

  test("is fed late rather than robbed of one, and not late after its last", () => {
    // Away from the 6th to the 29th.
    const allowedDays = daily(200).filter((d) => d < "2027-05-06" || d > "2027-05-29");
    const two = { ...counted(2), allowedDays };
    expect(daysOf(two, "a")).toEqual(["05-04", "05-30"]);
    expect(chooseDays(two).unmet).toMatchObject([{ fedOn: "2027-05-30", lateDays: 17 }]);
    const one = { ...counted(1), allowedDays };
    expect(daysOf(one, "a")).toEqual(["05-01"]);
    expect(chooseDays(one).unmet).toEqual([]);
  });

  test("keeps its number where another course has rounds to share", () => {
    const problem = { ...counted(4), courses: [...counted(4).courses, weekly("b")] };
    expect(daysOf(problem, "a")).toHaveLength(4);
    expect(faultsOf(problem, chooseDays(problem))).toEqual([]);
  });
});

it("feeds on held days, late or needless as they are, and on none between them", () => {
  const heldDays = [addDays(may1, 5), addDays(may1, 26)];
  const problem = { allowedDays: daily(40), courses: [weekly("a", { heldDays })] };
  expect(daysOf(problem, "a")).toEqual(["05-06", "05-27"]);
  expect(chooseDays(problem).unmet).toMatchObject([{ lateDays: 2 }, { lateDays: 12 }]);
});

it("handles gaps that span more than 31 and more than 63 allowed days", () => {
  const course = (id: string, longestDays: number): Course =>
    weekly(id, {
      phases: [{ from: may1, shortestDays: 20, targetDays: 30, longestDays }],
      coverTo: addDays(may1, 180),
    });
  const problem = {
    allowedDays: daily(200),
    courses: [course("a", 45), course("b", 70), course("c", 100)],
  };
  expect(faultsOf(problem, chooseDays(problem))).toEqual([]);
  expect(chooseDays(problem).unmet).toEqual([]);
  expect(new Set(chooseDays(problem).feedings.map((f) => f.day)).size).toBe(4);
});

it("tells the truth about itself on gardens of every kind", () => {
  for (let seed = 1; seed <= 60; seed++) {
    const problem = randomProblem(seed, {
      courses: 1 + (seed % 20),
      weeks: 10 + (seed % 35),
      daysPerWeek: 1 + (seed % 7),
      holes: seed % 4,
      fedShare: 0.3,
      avoidShare: 0.3,
      countedShare: 0.4,
      ...(seed % 2 === 0 && { gaps: usualGaps }),
    });
    expect(faultsOf(problem, chooseDays(problem)), `seed ${seed}`).toEqual([]);
  }
});

it("gives the same schedule every time", () => {
  const problem = randomProblem(7, { courses: 12, weeks: 40, daysPerWeek: 7, holes: 1 });
  expect(chooseDays(problem)).toEqual(chooseDays(problem));
});
