import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import type { StageWarmth } from "../../src/stages/stage-span.js";
import { warmthSources, warmthWords } from "../../src/words/warmth.js";

const followed: StageWarmth = {
  day: day("2027-06-20"),
  earliest: day("2027-06-14"),
  latest: day("2027-06-29"),
  calendar: day("2027-06-17"),
  isFollowed: true,
  degreeDays: 281,
  baseC: 7,
  after: "planting out on 2027-05-20",
  source: "a table",
};
const counted =
  "281 degree days above 7 degrees C after planting out on 2027-05-20, somewhere from 14 Jun to 29 Jun";
const words = (differs: Partial<StageWarmth> = {}, amounts: "metric" | "us" = "metric") =>
  warmthWords({ warmth: { ...followed, ...differs } }, amounts);

function without(...keys: ("day" | "earliest" | "latest")[]): StageWarmth {
  const open = { ...followed };
  for (const key of keys) Reflect.deleteProperty(open, key);
  return open;
}

describe("a stage that follows warmth", () => {
  test("tells what was counted, from where, how sure it is, and the calendar's date", () => {
    expect(words()).toBe(`${counted}; by the calendar 17 Jun`);
  });

  test("counts in degrees F for a US garden", () => {
    expect(words({}, "us")).toContain("506 degree days above 45 degrees F after");
  });

  test("that was held back tells how far it would go", () => {
    expect(words({ day: day("2027-08-01"), isHeldBack: true })).toBe(
      `${counted}; by the calendar 17 Jun, but that would be 1 Aug, and it moves a date by 28 days at most`,
    );
  });

  test("may have an open end on either side", () => {
    const [upTo, from] = [without("earliest"), without("latest")];
    expect(warmthWords({ warmth: from }, "metric")).toContain(
      "somewhere from 14 Jun to the season's end or later;",
    );
    expect(warmthWords({ warmth: upTo }, "metric")).toContain("somewhere up to 29 Jun;");
  });
});

test("a stage that stays on the calendar tells what warmth would say", () => {
  expect(words({ isFollowed: false })).toBe(`by warmth 20 Jun: ${counted}`);
});

test("a stage that warmth doesn't reach tells whether it might", () => {
  const [perhaps, never] = [without("day"), without("day", "earliest")];
  expect(warmthWords({ warmth: never }, "metric")).toBe(
    "not reached by warmth here: the calendar's date stands",
  );
  expect(warmthWords({ warmth: perhaps }, "metric")).toBe(
    "by warmth 14 Jun at the earliest, and perhaps not at all: the calendar's date stands",
  );
});

test("of a stage without sums nothing is said", () => {
  expect(warmthWords({}, "metric")).toBeUndefined();
});

test("sources are those of stages that follow, each once", () => {
  const stage = (differs: Partial<StageWarmth>) => ({ warmth: { ...followed, ...differs } });
  expect(
    warmthSources([
      stage({}),
      stage({ source: "another" }),
      stage({}),
      stage({ source: "unused", isFollowed: false }),
      {},
    ]),
  ).toEqual(["a table", "another"]);
});
