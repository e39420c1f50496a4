// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import type { StageWarmth } from "../../src/stages/stage-span.js";
import { loadTables } from "../../src/tables.js";
import { warmthSources, warmthWords } from "../../src/words/warmth.js";

// The words write the number out: this holds them to the constant.
const { most_shift_days } = loadTables().climate;

const followed: StageWarmth = {
  day: day("2027-06-20"),
  earliest: day("2027-06-14"),
  latest: day("2027-06-29"),
  calendar: day("2027-06-17"),
  isFollowed: true,
  degreeDays: 281,
  baseC: 7,
  after: "planting out on 2027-05-20",
  sources: ["a table"],
};
const counted =
  "281 degree days above 7 degrees C after planting out on 2027-05-20, somewhere from 14 Jun to 29 Jun";
const words = (differs: Partial<StageWarmth> = {}, amounts: "metric" | "us" = "metric") =>
  told({ ...followed, ...differs }, amounts);

/** Of a stage that stands on the calendar's date, or was moved from it. */
function told(warmth: StageWarmth, amounts: "metric" | "us" = "metric", from = warmth.calendar) {
  return warmthWords({ from, warmth }, amounts);
}

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
      `${counted}; that is 1 Aug, but warmth moves a date by ${most_shift_days} days at most, and by the calendar it is 17 Jun`,
    );
  });

  test("may have an open end on either side", () => {
    const [upTo, from] = [without("earliest"), without("latest")];
    expect(told(from)).toContain("somewhere from 14 Jun to the season's end or later;");
    expect(told(upTo)).toContain("somewhere up to 29 Jun;");
  });
});

test("a stage that stays on the calendar tells what warmth would say", () => {
  expect(words({ isFollowed: false })).toBe(`by warmth 20 Jun, ${counted}`);
});

test("a stage that warmth doesn't reach tells whether it might", () => {
  const [perhaps, never] = [without("day"), without("day", "earliest")];
  expect(told(never)).toBe("not reached by warmth here: the calendar's date stands");
  expect(told(never, "metric", day("2027-06-27"))).toBe(
    "not reached by warmth here: by the calendar 17 Jun, moved as far as the stage before it",
  );
  expect(told(perhaps)).toBe(
    "by warmth 14 Jun at the earliest, and perhaps not at all: the calendar's date stands",
  );
});

test("of a stage without sums nothing is said", () => {
  expect(warmthWords({ from: day("2027-06-17") }, "metric")).toBeUndefined();
});

test("sources are those of stages that follow, each once", () => {
  const stage = (differs: Partial<StageWarmth>) => ({ warmth: { ...followed, ...differs } });
  expect(
    warmthSources([
      stage({}),
      stage({ sources: ["another"] }),
      stage({}),
      stage({ sources: ["unused"], isFollowed: false }),
      {},
    ]),
  ).toEqual(["a table", "another"]);
});
