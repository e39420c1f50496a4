import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import * as words from "../../src/outputs/words.js";
import { aFill } from "../support/a-plan.js";

const saturday = day("2027-06-26");

describe("days", () => {
  test("are told as long as there is room for", () => {
    expect(words.fullDate(saturday)).toBe("26 June 2027");
    expect(words.dayOfSeason(saturday)).toBe("Saturday 26 June");
    expect(words.shortDay(saturday)).toBe("Sat 26 Jun");
    expect(words.shortDate(day("2027-09-01"))).toBe("1 Sep");
  });

  test.each([
    ["2027-06-26", "today"],
    ["2027-06-27", "tomorrow"],
    ["2027-06-25", "yesterday"],
    ["2027-07-06", "in 10 days"],
    ["2027-06-20", "6 days ago"],
  ])("%s seen from 2027-06-26 is %s", (then, said) => {
    expect(words.daysAway(saturday, day(then))).toBe(said);
  });
});

describe("amounts", () => {
  test("are counted in the singular and the plural", () => {
    expect(words.counted(1, "can")).toBe("1 can");
    expect(words.counted(0, "can")).toBe("0 cans");
    expect(words.counted(2, "batch", "batches")).toBe("2 batches");
  });

  test("have three figures, and whole numbers from a hundred on", () => {
    expect([0.01234, 2.5, 48.04, 432.1, 1234.5].map(words.figures)).toEqual([
      "0.0123",
      "2.5",
      "48",
      "432",
      "1235",
    ]);
  });

  test("of a filling say what is filled, and how far", () => {
    expect(words.fillWords(aFill({ count: 2 }), "drench")).toBe("2 full cans");
    expect(words.fillWords(aFill({ full: false }), "foliar")).toBe("1 part sprayer");
  });
});

test("crops lose their second name where room is short", () => {
  expect(words.cropWords("courgette (zucchini)")).toBe("courgette");
});
