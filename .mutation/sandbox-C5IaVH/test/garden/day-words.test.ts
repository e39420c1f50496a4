// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day, dayFromNumber, dayNumber } from "../../src/dates.js";
import {
  dayOfMonth,
  daysAway,
  dayText,
  fullDate,
  longDay,
  monthName,
  shortDate,
  shortDay,
} from "../../src/garden/day-words.js";

const saturday = day("2027-06-26");

describe("days in words", () => {
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
      expect([String(dayOfMonth(d)), monthName(d)]).toEqual([date, month]);
      expect(longDay(d, "metric")).toBe(`${weekday} ${date} ${month}`);
      expect(longDay(d, "us")).toBe(`${weekday}, ${month} ${date}`);
    }
  });

  test.each([
    ["metric", "26 Jun", "Sat 26 Jun", "Saturday 26 June", "26 June 2027", "Sat 26 Jun 2027"],
    ["us", "Jun 26", "Sat Jun 26", "Saturday, June 26", "June 26, 2027", "Sat Jun 26, 2027"],
  ] as const)("in a %s garden are told as long as there is room for", (amounts, ...told) => {
    const forms = [shortDate, shortDay, longDay, fullDate, dayText];
    expect(forms.map((form) => form(saturday, amounts))).toEqual(told);
  });

  test("tell the year where it is another than that of the day they stand beside", () => {
    const near = (other: string) => day(other);
    expect(shortDate(saturday, "metric", near("2027-12-31"))).toBe("26 Jun");
    expect(shortDate(saturday, "metric", near("2026-12-31"))).toBe("26 Jun 2027");
    expect(shortDay(saturday, "us", near("2028-01-01"))).toBe("Sat Jun 26, 2027");
    expect(longDay(saturday, "us", near("2028-01-01"))).toBe("Saturday, June 26, 2027");
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
