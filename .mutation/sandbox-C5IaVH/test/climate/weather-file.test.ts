// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  daysIn,
  placesIn,
  problemsIn,
  problemsOfWeather,
  readTold,
  weatherOf,
} from "./a-weather-file.js";

const header = "date,tmin,tmax,rain\n";

describe("a slip is told with its place", () => {
  test.each([
    ["a maximum below the minimum", "2027-05-01,17.2,6.5,0", "max-below-min 2:17"],
    ["tenths for degrees", "2027-05-01,6.5, 172,0", "absurd-weather 2:17"],
    ["a cold that no place has", "2027-05-01,-60.1,17,0", "absurd-weather 2:12"],
    ["rain below nothing", "2027-05-01,6,17,-0.1", "absurd-weather 2:17"],
    ["rain beyond the wettest days", "2027-05-01,6,17,700.1", "absurd-weather 2:17"],
    ["a word for a number", "2027-05-01,mild,17,0", "number 2:12"],
    ["a number in hexadecimal", "2027-05-01,0x6,17,0", "number 2:12"],
    ["a day that is none", "2027-02-29,6,17,0", "date 2:1"],
    ["a day the other way round", "01/05/2027,6,17,0", "date 2:1"],
    ["a time beside the day", "2027-05-01T00:00,6,17,0", "date 2:1"],
    ["no day", ",6,17,0", "date 2:1"],
    ["a day twice", "2027-05-01,6,17,0\n2027-05-01,6,17,0", "day-twice 3:1"],
    ["a decimal comma between commas", "2027-05-01,6,5,17,2", "too-many-cells 2:19"],
    ["a quote that is not closed", '2027-05-01,"6,17,0\n2027-05-02,6,17,0', "stray-quote 2:12"],
    ["text after a quote", '2027-05-01,6,"17"5,0', "stray-quote 2:14"],
  ])("%s", (_, rows, ...places) => {
    expect(placesIn(header + rows)).toEqual(places);
    expect(placesIn(`\ufeff${header}${rows}`.replaceAll("\n", "\r\n"))).toEqual(places);
  });

  test("and all of them at once, down the file", () => {
    expect(
      placesIn(`${header}1 May,6,17,0\n2027-05-02,x,99,-1\n\n# mine\n2027-05-04,9,8,0`),
    ).toEqual([
      "date 2:1",
      "number 3:12",
      "absurd-weather 3:14",
      "absurd-weather 3:17",
      "max-below-min 6:14",
    ]);
  });

  test("and names the units of two columns that differ in them", () => {
    expect(problemsIn("date,tmin_c,tmax_f\n2027-05-01,6.5,17.2")).toMatchObject([
      {
        code: "max-below-min",
        message: "the maximum, `17.2` degF, is below the minimum, `6.5` degC",
        mend: "call the columns `tmin_c` and `tmax_f` by the units they are in, or mend the row",
      },
    ]);
    expect(problemsIn("date,tmin_c,tmax_c\n2027-05-01,17.2,6.5")).toMatchObject([
      { message: "the maximum, `6.5`, is below the minimum, `17.2`" },
    ]);
  });

  test("with the value found, in the unit of its column, and a mend", () => {
    expect(problemsIn("date,tmin_f,tmax_c\n2027-05-01,45,65")).toMatchObject([
      {
        file: "seen.csv",
        message: "`65` in the column `tmax_c`, which is in degC, lies outside -60 to 60 degC",
        mend: "mend it, empty the cell, or name the column by its unit",
      },
    ]);
    expect(problemsIn("date,tmin,tmax\n1.5.2027,4,6")[0]).toMatchObject({
      message: "`1.5.2027` is no date",
      mend: "write it as year-month-day, like 2027-05-01",
    });
  });

  test("what lies just within the limits is weather", () => {
    expect(daysIn(`${header}2027-05-01,-60,60,700\n2027-05-02,6,6,0`)).toEqual([
      "2027-05-01 -60 60 700",
      "2027-05-02 6 6 0",
    ]);
  });

  test("of more than fifty only the first are told, and how many more there are", () => {
    const rows = Array.from({ length: 73 }, (_, i) => `day ${i},6,17,0`);
    const problems = problemsIn(header + rows.join("\n"));
    expect(problems).toHaveLength(51);
    expect(problems[49]).toMatchObject({ code: "date", at: { line: 51, column: 1 } });
    expect(problems[50]).toMatchObject({
      code: "more-problems",
      at: { line: 52, column: 1 },
      message: "23 more problems from here on",
    });
  });
});

describe("a file that is no weather file", () => {
  test.each([
    ["an empty one", "", "the file is empty"],
    ["one of blank lines and comments", "\n\n# nothing\n", "the file is empty"],
    ["one without a header", "2027-05-01,6,17,0\n", "its header is missing"],
    ["a service's day without a header", "20270501;6;17\n", "its header is missing"],
    ["another table", "name,plants\ntomato,6\n", "it begins with `name,plants`"],
    ["a garden file", "version: 1\ngarden: Weir\n", "it begins with `version: 1`"],
  ])("%s is told the plain form", (_, text, words) => {
    const [problem, ...more] = problemsIn(text);
    expect(more).toEqual([]);
    expect(problem?.code).toBe("weather-header");
    expect(problem?.message).toContain(words);
    expect(problem?.mend).toContain("date,tmin_c,tmax_c,rain_mm");
  });

  test("a header alone is weather of no day yet", () => {
    expect(daysIn(header)).toEqual([]);
  });

  test("one of several stations is not mixed", () => {
    const text = `NUM_POSTE;AAAAMMJJ;RR;TN;TX
01000001;20270501;0.4;6.5;17.2
01000002;20270501;0.4;6.5;17.2
01000002;20270502;0.4;6.5;17.2`;
    expect(problemsIn(text)).toMatchObject([
      {
        code: "several-stations",
        at: { line: 3, column: 1 },
        message: "the file has weather of more than one station: `01000001` and `01000002`",
      },
    ]);
  });
});

test("rows from long before the season are not read, whatever is in them", () => {
  const seen = `${header}1887-05-01,9,8,0\n1999-05-01,6,17,0\n1999-09-01,x,17,0\n2027-05-01,6,17,0\n`;
  expect([...weatherOf({ seen, since: "2026-03-01" }).days.keys()]).toEqual(["2027-05-01"]);
  expect(problemsOfWeather({ seen, since: "1999-01-01" }).map(({ at }) => at.line)).toEqual([4]);
});

test("any text is weather or problems with places in it", () => {
  const tokens = fc.constantFrom(
    ..."date,tmin,tmax,rain_mm|date;tmin_c;tmax_c|STN,YYYYMMDD,TN,TX,RH|DATE,TMAX,TMIN,TMAX_ATTRIBUTES".split(
      "|",
    ),
    ..."2027-05-01|2027-05-02|2027-06-01|20270503|2028-02-29|-999|-1|17.2|6,5|1e9|NaN|constructor|__proto__".split(
      "|",
    ),
    ...[",", ";", "\n", "\r\n", '"', '""', "#", "\t", " ", "\ufeff", "\u0000", "é", "🍅"],
  );
  const noise = fc.array(tokens, { maxLength: 6 }).map((parts) => parts.join(""));
  const row = fc
    .tuple(fc.integer({ min: 1, max: 31 }), fc.integer({ min: -9, max: 9 }), fc.nat(20))
    .map(([d, min, warmer]) => `2027-05-${String(d).padStart(2, "0")},${min},${min + warmer},0.5`);
  const line = fc.oneof({ weight: 9, arbitrary: row }, { weight: 1, arbitrary: noise });
  const text = fc.oneof(
    fc.array(noise, { maxLength: 9 }).map((parts) => parts.join("")),
    fc.array(line, { maxLength: 5 }).map((rows) => header + rows.join("\n")),
    fc.string({ unit: "binary", maxLength: 200 }),
  );
  let weathers = 0;
  fc.assert(
    fc.property(text, (seen) => {
      const weather = readTold({ seen });
      if (weather.ok) {
        weathers += weather.value.days.size > 0 ? 1 : 0;
        for (const { minC, maxC } of weather.value.days.values())
          expect(minC).toBeLessThanOrEqual(maxC);
        return;
      }
      const lines = seen.split("\n");
      for (const { at, message, mend } of weather.problems) {
        expect(at.line).toBeLessThanOrEqual(lines.length);
        expect(at.column).toBeLessThanOrEqual((lines[at.line - 1] ?? "").length + 1);
        expect(message.length * mend.length).toBeGreaterThan(0);
      }
    }),
    { seed: 20270503, numRuns: 2000 },
  );
  expect(weathers).toBeGreaterThan(100);
});
