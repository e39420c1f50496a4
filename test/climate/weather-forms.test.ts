import { describe, expect, test } from "vitest";
import { daysIn, placesIn, problemsIn } from "./a-weather-file.js";
import { plainWeather as plain, weatherForms as forms } from "./weather-form-files.js";

const told = [
  "2027-05-01 6.5 17.2 0.4",
  "2027-05-02 -0.3 18 0",
  "2027-05-03 5.9 15.5 12.2",
  "2027-05-04 7 16 -",
];

describe("weather is the same", () => {
  test.each(Object.entries(forms))("in %s", (_, text) => {
    expect(daysIn(text)).toEqual(told);
  });

  test.each(Object.entries(forms))("in %s with other line ends", (_, text) => {
    const bare = text.replaceAll("\r\n", "\n");
    expect(daysIn(bare.replaceAll("\n", "\r\n"))).toEqual(told);
    expect(daysIn(`\ufeff${bare.replace("\ufeff", "").trimEnd()}`)).toEqual(told);
  });

  test("in whatever order its rows stand", () => {
    const [header = "", ...rows] = plain.trimEnd().split("\n");
    expect(daysIn([header, ...rows.reverse()].join("\n"))).toEqual(told);
  });

  test("without rain", () => {
    expect(daysIn("date,tmax,tmin\n2027-05-01,17.2,6.5\n")).toEqual(["2027-05-01 6.5 17.2 -"]);
  });
});

test("NOAA's values that failed a check are missing, as the second part of their attributes tells", () => {
  const text = `"STATION","DATE","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES"
"XX000000001","2027-05-01","172",",,S","65",",,S"
"XX000000001","2027-05-02","-17",",I,S","65","H,,S"
"XX000000001","2027-05-03","192",",,S","85",",,S"
`;
  expect(daysIn(text)[1]).toBe("2027-05-02 7.5 18.2 -");
});

describe("units are never guessed", () => {
  test.each([
    [
      "NOAA's order form",
      '"STATION","NAME","DATE","PRCP","TMAX","TMIN"\n"XX1","INVENTED","2027-05-01","0.02","63","44"',
      1,
      32,
    ],
    ["one with its other columns cut off", "DATE,TMAX,TMIN\n2027-05-01,63,44", 1, 6],
    ["one of several stations", "station,date,tmin,tmax\nXX1,2027-05-01,6,17", 1, 14],
  ])("%s is asked for them", (_, text, line, column) => {
    expect(problemsIn(text)).toMatchObject([
      { code: "no-unit", at: { line, column }, mend: expect.stringContaining("tmin_f") as string },
    ]);
  });

  test("a station's name asks for nothing where the columns' names tell the unit", () => {
    const text = "STATION,date,tmin_c,tmax_f\nXX1,2027-05-01,6.5,62.96";
    expect(daysIn(text)).toEqual(["2027-05-01 6.5 17.2 -"]);
  });

  test("two columns of one element are refused", () => {
    expect(placesIn("date,tmin_c,tmin_f,tmax_c\n2027-05-01,6,43,17")).toEqual([
      "column-twice 1:13",
    ]);
  });
});

test.each([
  [
    "the Bureau of Meteorology's file of maxima",
    `Product code,Bureau of Meteorology station number,Year,Month,Day,Maximum temperature (Degree C),Days of accumulation of maximum temperature,Quality
XXXX0001,099999,2027,05,01,17.2,1,Y`,
    "minimum",
  ],
  [
    "its file of rain",
    `Product code,Bureau of Meteorology station number,Year,Month,Day,Rainfall amount (millimetres),Period over which rainfall was measured (days),Quality
XXXX0001,099999,2027,05,01,0.4,1,Y`,
    "minimum and maximum",
  ],
  ["a plain one of minima", "date,tmin\n2027-05-01,6.5", "maximum"],
])("%s says what it lacks and how to join it", (_, text, lacks) => {
  const [problem, ...more] = problemsIn(text);
  expect(more).toEqual([]);
  expect(problem).toMatchObject({ code: "no-temperature", at: { line: 1, column: 1 } });
  expect(problem?.message).toContain(`daily ${lacks} temperatures`);
  expect(problem?.mend).toContain("date,tmin_c,tmax_c,rain_mm");
});
