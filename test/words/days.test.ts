import { describe, expect, test } from "vitest";
import { day, dayFromNumber, dayNumber } from "../../src/dates.js";
import {
  dayOfMonth,
  dayOfSeason,
  daysAway,
  fullDate,
  monthName,
  shortDate,
  shortDay,
  weekdayName,
} from "../../src/words/days.js";

const saturday = day("2027-06-26");

describe("days in words", () => {
  test("have their weekday, day and month by name", () => {
    expect([weekdayName(saturday), dayOfMonth(saturday), monthName(saturday)]).toEqual([
      "Saturday",
      26,
      "June",
    ]);
    expect(shortDate(saturday)).toBe("26 Jun");
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

  test("are told as long as there is room for", () => {
    expect(fullDate(saturday)).toBe("26 June 2027");
    expect(dayOfSeason(saturday)).toBe("Saturday 26 June");
    expect(shortDay(saturday)).toBe("Sat 26 Jun");
    expect(shortDate(day("2027-09-01"))).toBe("1 Sep");
  });

  test.each([
    ["2027-06-26", "today"],
    ["2027-06-27", "tomorrow"],
    ["2027-06-25", "yesterday"],
    ["2027-07-06", "in 10 days"],
    ["2027-06-20", "6 days ago"],
  ])("%s seen from 2027-06-26 is %s", (then, said) => {
    expect(daysAway(saturday, day(then))).toBe(said);
  });
});
