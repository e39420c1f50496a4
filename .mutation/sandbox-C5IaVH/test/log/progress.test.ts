// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, type Day, day, eachDay } from "../../src/dates.js";
import type { FeedingCourse } from "../../src/days/courses.js";
import { resumed } from "../../src/log/given.js";
import type { NotGiven } from "../../src/log/past.js";
import { lessMissed } from "../../src/log/progress.js";
import { aPlanting } from "../support/a-garden.js";

/** Four feedings from the 10th of June on; the first within 10 days, then every 10 to 18 days. */
const course: FeedingCourse = {
  planting: aPlanting(),
  route: "drench",
  course: {
    id: "toms/drench",
    first: { earliest: day("2027-06-10"), latest: day("2027-06-20") },
    phases: [{ from: day("2027-06-10"), shortestDays: 10, targetDays: 14, longestDays: 18 }],
    feedings: 4,
    coverTo: day("2027-10-10"),
  },
  spans: [],
};

interface Behind {
  readonly given?: readonly string[];
  readonly missed?: readonly string[];
  readonly why?: NotGiven["why"];
  readonly today: string;
  readonly untoldTo?: string;
  /** Without these days nothing can be made up for on them. */
  readonly away?: readonly string[];
}

/** How many feedings it owes from today on. */
function owed(
  { given = [], missed = [], why = "log", today, untoldTo, away = [] }: Behind,
  of = course,
): number | undefined {
  const line = { planting: "toms", route: "drench" as const };
  const past = {
    given: given.map((d) => ({ ...line, day: day(d) })),
    notGiven: missed.map((d): NotGiven => ({ ...line, bed: "south", day: day(d), why })),
  };
  const allowed = [...eachDay({ from: day(today), to: day("2027-10-31") })].filter(
    (d) => !away.includes(d) && !missed.includes(d),
  );
  const behind = {
    past,
    untoldTo: untoldTo === undefined ? undefined : day(untoldTo),
    allowed,
    today: day(today),
  };
  return resumed(lessMissed([of], behind), past.given)[0]?.course.feedings;
}

test("where nothing is told of the past all are owed, whatever the day", () => {
  expect(owed({ today: "2027-03-01" })).toBe(4);
  expect(owed({ today: "2027-09-01" })).toBe(4);
});

test("a course without a limit stays as it is", () => {
  const free = { ...course.course };
  delete (free as { feedings?: number }).feedings;
  expect(owed({ given: ["2027-06-12"], today: "2027-06-20" }, { ...course, course: free })).toBe(
    undefined,
  );
});

describe("a feeding that was given", () => {
  test("is owed no more; two entries of one day are one", () => {
    expect(owed({ given: ["2027-06-12", "2027-06-12"], today: "2027-06-20" })).toBe(3);
    expect(owed({ given: ["2027-06-12", "2027-06-26"], today: "2027-06-28" })).toBe(2);
  });

  test("does not count before the course begins", () => {
    expect(owed({ given: ["2027-06-05"], today: "2027-06-07" })).toBe(4);
  });

  test("beyond the limit leaves none owed", () => {
    const given = [10, 14, 18, 22, 26].map((d) => `2027-06-${d}`);
    expect(owed({ given, today: "2027-06-28" })).toBe(0);
  });
});

describe("a feeding that was missed", () => {
  test("is still owed while it can be made inside its window", () => {
    expect(owed({ missed: ["2027-06-15"], today: "2027-06-15" })).toBe(4);
    expect(owed({ missed: ["2027-06-15"], today: "2027-06-20" })).toBe(4);
  });

  test("counts when its window has passed", () => {
    expect(owed({ missed: ["2027-06-15"], today: "2027-06-21" })).toBe(3);
  });

  test("counts at once when no day is left in its window, so that no later day changes it", () => {
    const away = [16, 17, 18, 19, 20].map((d) => `2027-06-${d}`);
    for (const today of ["2027-06-15", "2027-06-18", "2027-06-25"])
      expect(owed({ missed: ["2027-06-15"], today, away }), today).toBe(3);
  });

  test("and made up for inside its window counts once", () => {
    expect(owed({ missed: ["2027-06-15"], given: ["2027-06-18"], today: "2027-06-30" })).toBe(3);
  });

  test("and made up for after it counts as well as what was given", () => {
    expect(owed({ missed: ["2027-06-15"], given: ["2027-06-24"], today: "2027-06-30" })).toBe(2);
  });

  test("twice inside one window counts once", () => {
    expect(owed({ missed: ["2027-06-12", "2027-06-17"], today: "2027-06-21" })).toBe(3);
  });

  test("has the next window counted from its day", () => {
    const missed = ["2027-06-15", "2027-06-29"];
    expect(owed({ missed, today: "2027-07-03" })).toBe(3);
    expect(owed({ missed, today: "2027-07-04" })).toBe(2);
  });

  test("once more has it counted from the later day", () => {
    const missed = ["2027-06-12", "2027-06-17", "2027-06-29"];
    expect(owed({ missed, today: "2027-07-05" })).toBe(3);
    expect(owed({ missed, today: "2027-07-06" })).toBe(2);
  });

  test("for want of stock counts no sooner than the day is over", () => {
    const missed = ["2027-06-15", "2027-07-10"];
    expect(owed({ missed, why: "no-stock", today: "2027-07-10" })).toBe(3);
    expect(owed({ missed, why: "no-stock", today: "2027-07-11" })).toBe(2);
    expect(owed({ missed, why: "log", today: "2027-07-10" })).toBe(2);
  });

  test("of another planting is none of its", () => {
    const other = { ...course, planting: aPlanting({ id: "more" }) };
    expect(owed({ missed: ["2027-06-15"], today: "2027-06-21" }, other)).toBe(4);
  });
});

describe("where it is known that nothing was told", () => {
  test("windows that have passed by then count, each from the end of the one before", () => {
    // By the 20th of June, the 8th of July, the 26th of July.
    const onDay = (untoldTo: Day): number | undefined => owed({ today: untoldTo, untoldTo });
    expect(onDay(day("2027-06-20"))).toBe(4);
    expect(onDay(day("2027-06-21"))).toBe(3);
    expect(onDay(day("2027-07-09"))).toBe(2);
    expect(onDay(day("2027-09-01"))).toBe(0);
  });

  test("it makes no difference how much later today is", () => {
    for (const days of [0, 1, 30])
      expect(
        owed({ today: addDays(day("2027-06-21"), days), untoldTo: "2027-06-21" }),
        `${days}`,
      ).toBe(3);
  });

  test("what was given in between is given", () => {
    expect(owed({ given: ["2027-06-12"], today: "2027-06-30", untoldTo: "2027-06-30" })).toBe(3);
    expect(owed({ given: ["2027-06-12"], today: "2027-07-01", untoldTo: "2027-07-01" })).toBe(2);
  });
});
