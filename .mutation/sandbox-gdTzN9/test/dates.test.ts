// @ts-nocheck
import { describe, expect, test } from "vitest";
import {
  addDays,
  day,
  dayFromNumber,
  dayNumber,
  daysBetween,
  eachDay,
  earlier,
  later,
  monthHalfYearOn,
  monthOf,
  parseDay,
  weekdayOf,
  within,
  yearOf,
} from "../src/dates.js";

describe("parseDay", () => {
  test.each(["2027-05-20", "2028-02-29", "1900-01-01", "2200-12-31", "2000-02-29"])(
    "reads %s as it stands",
    (text) => {
      expect(parseDay(text)).toBe(text);
    },
  );

  test.each([
    ["a day that the month lacks", "2027-02-30"],
    ["a leap day of a common year", "2027-02-29"],
    ["a leap day of 1900, which was none", "1900-02-29"],
    ["a thirteenth month", "2027-13-01"],
    ["month zero", "2027-00-10"],
    ["day zero", "2027-01-00"],
    ["a year before 1900", "1899-12-31"],
    ["a year after 2200", "2201-01-01"],
    ["one digit for the month", "2027-5-20"],
    ["slashes", "2027/05/20"],
    ["a time behind it", "2027-05-20T00:00"],
    ["blanks around it", " 2027-05-20"],
    ["a line end behind it", "2027-05-20\n"],
    ["digits of another script", "２０２７-05-20"],
    ["nothing", ""],
  ])("refuses %s", (_, text) => {
    expect(parseDay(text)).toBeUndefined();
  });

  test("day() throws where the program itself writes no day", () => {
    expect(() => day("2027-02-30")).toThrow(new RangeError("not a calendar day: 2027-02-30"));
  });
});

test("days count from 1970-01-01 in both directions", () => {
  expect(dayNumber(day("1970-01-01"))).toBe(0);
  expect(dayNumber(day("1969-12-31"))).toBe(-1);
  expect(dayFromNumber(59)).toBe("1970-03-01");
  expect(dayFromNumber(-1)).toBe("1969-12-31");
});

test("adding days goes over month ends, leap days and New Year", () => {
  expect(addDays(day("2028-02-28"), 1)).toBe("2028-02-29");
  expect(addDays(day("2027-02-28"), 1)).toBe("2027-03-01");
  expect(addDays(day("2027-12-31"), 1)).toBe("2028-01-01");
  expect(addDays(day("2027-01-01"), -1)).toBe("2026-12-31");
});

test("the days between two days are counted with their sign", () => {
  expect(daysBetween(day("2027-03-01"), day("2028-03-01"))).toBe(366);
  expect(daysBetween(day("2027-03-02"), day("2027-03-01"))).toBe(-1);
});

test("weekdays are right before and after 1970", () => {
  expect(weekdayOf(day("1970-01-01"))).toBe("thu");
  expect(weekdayOf(day("1969-12-28"))).toBe("sun");
  expect(weekdayOf(day("2027-05-20"))).toBe("thu");
});

test("months are 1 to 12", () => {
  expect(monthOf(day("2027-01-31"))).toBe(1);
  expect(monthOf(day("2027-12-01"))).toBe(12);
});

test("the year is that of the day's own text", () => {
  expect(yearOf(day("2027-12-31"))).toBe(2027);
  expect(yearOf(day("2028-01-01"))).toBe(2028);
});

test("half a year on, months change between the halves of the earth and back", () => {
  expect([1, 4, 6, 7, 12].map(monthHalfYearOn)).toEqual([7, 10, 12, 1, 6]);
  for (let month = 1; month <= 12; month++)
    expect(monthHalfYearOn(monthHalfYearOn(month))).toBe(month);
});

test("earlier and later choose one of two days", () => {
  const [a, b] = [day("2027-05-20"), day("2027-06-01")];
  expect([earlier(a, b), earlier(b, a), earlier(a, a)]).toEqual([a, a, a]);
  expect([later(a, b), later(b, a), later(b, b)]).toEqual([b, b, b]);
});

test("both ends of a span count", () => {
  const span = { from: day("2027-12-31"), to: day("2028-01-01") };
  expect([...eachDay(span)]).toEqual(["2027-12-31", "2028-01-01"]);
  expect(within(span.from, span) && within(span.to, span)).toBe(true);
  expect(within(day("2027-12-30"), span) || within(day("2028-01-02"), span)).toBe(false);
  expect([...eachDay({ from: span.to, to: span.from })]).toEqual([]);
});
