import { describe, expect, test } from "vitest";
import { day, dayFromNumber, dayNumber } from "../src/dates.js";
import {
  counted,
  dayOfMonth,
  monthName,
  shortDate,
  stageWords,
  weekdayName,
} from "../src/words.js";

describe("days in words", () => {
  test("have their weekday, day and month by name", () => {
    const d = day("2027-06-26");
    expect([weekdayName(d), dayOfMonth(d), monthName(d)]).toEqual(["Saturday", 26, "June"]);
    expect(shortDate(d)).toBe("26 Jun");
    expect(shortDate(day("2027-05-01"))).toBe("1 May");
  });

  test("are those of the platform on each day of a leap year", () => {
    const first = dayNumber(day("2028-01-01"));
    for (let n = 0; n < 366; n++) {
      const d = dayFromNumber(first + n);
      const [weekday, date, month] = ["weekday", "day", "month"].map((part) =>
        new Intl.DateTimeFormat("en", {
          [part]: part === "day" ? "numeric" : "long",
          timeZone: "UTC",
        }).format(new Date(d)),
      );
      expect([weekdayName(d), String(dayOfMonth(d)), monthName(d)]).toEqual([weekday, date, month]);
    }
  });
});

test("things are counted, one alone in the singular", () => {
  expect([0, 1, 2].map((n) => counted(n, "can"))).toEqual(["0 cans", "1 can", "2 cans"]);
  expect(counted(2, "batch", "batches")).toBe("2 batches");
});

test("stages are words, not keys", () => {
  expect(stageWords("fruit-set")).toBe("fruit set");
});
