/** Published days that weather doesn't move. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { addDays, type Day, day, daysBetween, eachDay } from "../../src/dates.js";
import { chooseDays } from "../../src/days/choose-days.js";
import type { FeedingCourse } from "../../src/days/courses.js";
import { holding, stretched } from "../../src/days/held-days.js";
import type { Course } from "../../src/days/schedule-problem.js";
import { aPlanting } from "../support/a-garden.js";
import { dice } from "./random-problem.js";

const today = day("2027-06-15");
const allowed = [...eachDay({ from: today, to: day("2027-10-31") })];

/** First fed within 10 days, then every 10 to 18 days. */
function aCourse(from: string, to: string, differs: Partial<Course> = {}): FeedingCourse {
  return {
    planting: aPlanting(),
    route: "drench",
    course: {
      id: "toms/drench",
      first: { earliest: day(from), latest: addDays(day(from), 10) },
      phases: [{ from: day(from), shortestDays: 10, targetDays: 14, longestDays: 18 }],
      coverTo: day(to),
      ...differs,
    },
    spans: [],
  };
}

function published(...days: readonly string[]) {
  return days.map((d) => ({ planting: "toms", route: "drench" as const, day: day(d) }));
}

function heldBy(course: FeedingCourse, days: readonly string[], on = allowed): readonly Day[] {
  return holding([course], published(...days), on, today)[0]?.course.heldDays ?? [];
}

describe("a course reaches to a published day of today or the three days after", () => {
  const spanOf = (course: FeedingCourse, ...days: readonly string[]): readonly string[] => {
    const [one] = stretched([course], published(...days), today);
    return [one?.course.first.earliest ?? "", one?.course.coverTo ?? ""];
  };

  test("that its stage no longer holds, before it or after", () => {
    const later = aCourse("2027-06-20", "2027-08-20");
    expect(spanOf(later, "2027-06-18")).toEqual(["2027-06-18", "2027-08-20"]);
    const ended = aCourse("2027-05-20", "2027-06-16");
    expect(spanOf(ended, "2027-06-18")).toEqual(["2027-05-20", "2027-06-18"]);
  });

  test("and of the past, so that what was given stays its own", () => {
    const later = aCourse("2027-06-14", "2027-08-20");
    expect(spanOf(later, "2027-06-12")).toEqual(["2027-06-12", "2027-08-20"]);
  });

  test("but not to the fourth day after today, nor to one that is weeks away from it", () => {
    const later = aCourse("2027-06-20", "2027-08-20");
    expect(spanOf(later, "2027-06-19")).toEqual(["2027-06-20", "2027-08-20"]);
    const far = aCourse("2027-07-05", "2027-08-20");
    expect(spanOf(far, "2027-06-18")).toEqual(["2027-07-05", "2027-08-20"]);
  });

  test("nor where the plants are not there, or picked no more, by the garden file", () => {
    const ended = aCourse("2027-05-20", "2027-06-16");
    for (const gone of ["removed", "pickedUntil"]) {
      const planting = { ...aPlanting(), [gone]: day("2027-06-16") };
      expect(spanOf({ ...ended, planting }, "2027-06-18"), gone).toEqual([
        "2027-05-20",
        "2027-06-16",
      ]);
    }
    const later = aCourse("2027-06-20", "2027-08-20");
    const planting = aPlanting({ transplanted: "2027-06-19" });
    expect(spanOf({ ...later, planting }, "2027-06-18")).toEqual(["2027-06-20", "2027-08-20"]);
  });

  test("only the nearest of a planting's courses does", () => {
    const first = aCourse("2027-05-01", "2027-06-10");
    const second = aCourse("2027-06-20", "2027-08-01", { id: "toms/drench/2" });
    const [one, two] = stretched([first, second], published("2027-06-18"), today);
    expect(one).toBe(first);
    expect(two?.course.first.earliest).toBe("2027-06-18");
  });

  test("and of others it is as it was", () => {
    const spray = { ...aCourse("2027-06-20", "2027-08-20"), route: "foliar" as const };
    expect(stretched([spray], published("2027-06-18"), today)).toEqual([spray]);
  });
});

describe("a published day is held", () => {
  const course = aCourse("2027-06-10", "2027-08-20");

  test("one after the other, while each lies in the window after the one before", () => {
    const days = ["2027-06-19", "2027-07-03", "2027-07-17", "2027-08-04"];
    expect(heldBy(course, days)).toEqual(days);
  });

  test("until one leaves its window: that one and those after it are chosen anew", () => {
    const days = ["2027-06-19", "2027-07-03", "2027-07-22", "2027-08-04"];
    expect(heldBy(course, days)).toEqual(["2027-06-19", "2027-07-03"]);
    expect(heldBy(course, ["2027-06-19", "2027-06-28"])).toEqual(["2027-06-19"]);
  });

  test("until one leaves its stage", () => {
    const shorter = aCourse("2027-06-10", "2027-07-16");
    expect(heldBy(shorter, ["2027-06-19", "2027-07-03", "2027-07-17"])).toEqual([
      "2027-06-19",
      "2027-07-03",
    ]);
  });

  test("in the next three days even after its window, not on the fourth", () => {
    const overdue = aCourse("2027-06-01", "2027-08-20");
    expect(heldBy(overdue, ["2027-06-18"])).toEqual(["2027-06-18"]);
    expect(heldBy(overdue, ["2027-06-19"])).toEqual([]);
  });

  test("never too soon after what was given", () => {
    const fed = aCourse("2027-06-01", "2027-08-20", { lastFed: day("2027-06-14") });
    expect(heldBy(fed, ["2027-06-17"])).toEqual([]);
  });

  test("unless the grower can't feed then, or the course avoids it", () => {
    const home = allowed.filter((d) => d !== "2027-06-17");
    expect(heldBy(course, ["2027-06-17", "2027-07-01"], home)).toEqual([]);
    const avoidDays = [day("2027-06-17")];
    expect(heldBy(aCourse("2027-06-10", "2027-08-20", { avoidDays }), ["2027-06-17"])).toEqual([]);
  });

  test("no more of them than the course owes", () => {
    const counted = aCourse("2027-06-10", "2027-08-20", { feedings: 1 });
    expect(heldBy(counted, ["2027-06-19", "2027-07-03"])).toEqual(["2027-06-19"]);
    const done = aCourse("2027-06-10", "2027-08-20", { feedings: 0, lastFed: day("2027-06-01") });
    expect(heldBy(done, ["2027-06-19"])).toEqual([]);
  });

  test("where nothing is published the courses are as they were", () => {
    expect(holding([course], [], allowed, today)).toEqual([course]);
    expect(stretched([course], [], today)).toEqual([course]);
  });
});

describe("stages that weather shifts by a day or two, day after day", () => {
  // Today's are settled before.
  const coming = allowed.slice(1);
  const daysOf = (courses: readonly FeedingCourse[]): string[][] => {
    const plan = chooseDays({ allowedDays: coming, courses: courses.map((c) => c.course) });
    return courses.map(({ course }) =>
      plan.feedings.filter((f) => f.course === course.id).map((f) => f.day),
    );
  };
  const planned = (
    courses: readonly FeedingCourse[],
    before: readonly (readonly string[])[],
  ): string[][] => {
    const lines = courses.flatMap((c, i) =>
      (before[i] ?? []).map((d) => ({ planting: c.planting.id, route: c.route, day: day(d) })),
    );
    return daysOf(holding(stretched(courses, lines, today), lines, coming, today));
  };

  test("move no published feeding that stays inside its window and its stage, nor any of the next three days", () => {
    const plantings = ["a", "b", "c"].map((id) => aPlanting({ id }));
    let [moved, kept] = [0, 0];
    for (let seed = 1; seed <= 150; seed++) {
      const roll = dice(seed);
      const dates = plantings.map(() => [roll(-8, 12), roll(40, 110)] as const);
      const feedings = plantings.map(() => roll(0, 5));
      const shiftedBy = (shift: () => number): FeedingCourse[] =>
        plantings.map((planting, i): FeedingCourse => {
          const [from = 0, days = 0] = dates[i] ?? [];
          const limit = feedings[i] ?? 0;
          const start = addDays(today, from + shift());
          const course = aCourse(start, addDays(today, from + days + shift()), {
            id: planting.id,
            ...(limit > 1 && { feedings: limit }),
          });
          return { ...course, planting };
        });
      const before = daysOf(shiftedBy(() => 0));
      const courses = shiftedBy(() => roll(-2, 2));
      const after = planned(courses, before);
      courses.forEach(({ course }, i) => {
        const own = before[i] ?? [];
        const isIn = (d: string, n: number): boolean => {
          const isFirst = n === 0;
          const inFirst = d >= course.first.earliest && d <= course.first.latest;
          return d <= course.coverTo && (!isFirst || inFirst);
        };
        const left = own.findIndex((d, n) => !isIn(d, n) && daysBetween(today, day(d)) > 3);
        const standing = left === -1 ? own : own.slice(0, left);
        expect(after[i]?.slice(0, standing.length), `seed ${seed} ${course.id}`).toEqual(standing);
        kept += standing.length;
        moved += own.length - standing.length;
      });
    }
    // Both happen: most stay, and some have to go.
    expect(kept).toBeGreaterThan(5 * moved);
    expect(moved).toBeGreaterThan(0);
  });
});
