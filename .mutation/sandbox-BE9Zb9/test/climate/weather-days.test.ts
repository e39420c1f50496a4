// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import { problemsOfWeather, type Told, weatherOf } from "./a-weather-file.js";

/** Rows of min and max, and perhaps rain, from a day on; null for a day without a row. */
function rows(from: string, ...values: (string | null)[]): string {
  const days = values.map((value, i) =>
    value === null ? "" : `${addDays(day(from), i)},${value}\n`,
  );
  return `date,tmin,tmax,rain\n${days.join("")}`;
}

const warmthOf = (told: Told): string[] =>
  [...weatherOf(told).days].map(
    ([d, { minC, maxC, rainMm, from }]) => `${d} ${minC} ${maxC} ${rainMm ?? "-"} ${from}`,
  );

test("a file that is kept through the years has its winters from the means, and they are told", () => {
  const rows = ["2026-10-29,4,12,0", "2026-10-30,4,12,0", "2027-04-02,5,13,0", "2027-04-03,5,13,0"];
  const seen = `date,tmin,tmax,rain\n${rows.join("\n")}\n`;
  const { days, assumptions } = weatherOf({ seen, season: "2027-03-01" });
  expect(days.size).toBe(4);
  expect(assumptions).toEqual([
    "the weather of 2026-10-31 to 2027-04-01, which the weather files don't tell, is that of the monthly means",
  ]);
  expect(problemsOfWeather({ seen, season: "2026-03-01" }).map(({ code }) => code)).toEqual([
    "weather-gap",
  ]);
});

describe("gaps", () => {
  test("of missing rows are filled with a straight line, and told once", () => {
    const seen = rows("2027-04-29", "0,12", null, null, "6,18,1", "7,19,2", null, "9,21");
    expect(warmthOf({ seen })).toEqual([
      "2027-04-29 0 12 - seen",
      "2027-04-30 2 14 - seen",
      "2027-05-01 4 16 - seen",
      "2027-05-02 6 18 1 seen",
      "2027-05-03 7 19 2 seen",
      "2027-05-04 8 20 - seen",
      "2027-05-05 9 21 - seen",
    ]);
    expect(weatherOf({ seen }).assumptions).toEqual([
      "the weather files: 3 days that lack temperatures are taken as a straight line between the days around them (2027-04-30 to 2027-05-01, 2027-05-04)",
    ]);
  });

  test("of empty cells, too: both temperatures are filled, and the rain that was told stays", () => {
    const seen = rows("2027-05-01", "0,12", "5,,4", ",,3", "6,18");
    expect(warmthOf({ seen }).slice(1, 3)).toEqual([
      "2027-05-02 2 14 4 seen",
      "2027-05-03 4 16 3 seen",
    ]);
  });

  test("nothing is filled before the first day or after the last, nor told", () => {
    const seen = rows("2027-05-01", ",,", ",,4", "6,18", "7,19", ",,", ",,1");
    expect(weatherOf({ seen })).toMatchObject({ assumptions: [] });
    expect(warmthOf({ seen }).map((line) => line.slice(0, 10))).toEqual([
      "2027-05-03",
      "2027-05-04",
    ]);
  });

  test("of five days are filled, one of six is refused at the row after it", () => {
    const five = rows("2027-05-01", "0,12", null, ",,1", null, ",", null, "6,18");
    expect(weatherOf({ seen: five }).days.size).toBe(7);
    const six = rows("2027-05-01", "0,12", null, ",,1", null, ",", null, null, "6,18");
    expect(problemsOfWeather({ seen: six })).toEqual([
      {
        code: "weather-gap",
        file: "seen.csv",
        at: { line: 5, column: 1 },
        message:
          "no temperatures are told of 6 days between 2027-05-01 and 2027-05-08: at most 5 are filled",
        mend: "add rows for these days, or remove those before the gap",
      },
    ]);
  });

  test("are counted over a leap day and New Year", () => {
    const leap = "date,tmin,tmax\n2028-02-27,0,3\n2028-03-01,3,6\n";
    expect([...weatherOf({ seen: leap }).days]).toEqual([
      ["2028-02-27", { minC: 0, maxC: 3, from: "forecast" }],
      ["2028-02-28", { minC: 1, maxC: 4, from: "forecast" }],
      ["2028-02-29", { minC: 2, maxC: 5, from: "forecast" }],
      ["2028-03-01", { minC: 3, maxC: 6, from: "forecast" }],
    ]);
    const year = "date,tmin,tmax\n2026-12-30,0,3\n2027-01-02,3,6\n";
    expect([...weatherOf({ seen: year }).days.keys()]).toEqual([
      "2026-12-30",
      "2026-12-31",
      "2027-01-01",
      "2027-01-02",
    ]);
    expect(problemsOfWeather({ seen: "date,tmin,tmax\n2027-02-29,0,3" })).toMatchObject([
      { code: "date", at: { line: 2, column: 1 } },
    ]);
  });

  test("very many are not all named", () => {
    const seen = rows(
      "2027-05-01",
      ...Array.from({ length: 10 }, () => ["6,18", null]).flat(),
      "6,18",
    );
    expect(weatherOf({ seen }).assumptions[0]).toMatch(/2027-05-10, 2027-05-12, 4 more gaps\)$/);
  });
});

describe("seen and forecast together", () => {
  const seen = rows("2027-05-01", "6,16", "7,17", "8,18");
  const forecast = rows("2027-05-03", "1,11", "2,12", "3,13");

  test("a day in both is taken as seen; rows of today or later are forecast, in any file", () => {
    expect(warmthOf({ seen, forecast, today: "2027-05-02" })).toEqual([
      "2027-05-01 6 16 - seen",
      "2027-05-02 7 17 - forecast",
      "2027-05-03 8 18 - forecast",
      "2027-05-04 2 12 - forecast",
      "2027-05-05 3 13 - forecast",
    ]);
  });

  test("but for their names, days are the same on every day", () => {
    const [early, late] = ["2027-04-01", "2027-06-01"].map((today) =>
      [...weatherOf({ seen, forecast, today }).days].map(([d, { minC, maxC }]) => [d, minC, maxC]),
    );
    expect(early).toEqual(late);
  });

  test("a forecast that nobody replaced stays a forecast", () => {
    expect(warmthOf({ seen, forecast, today: "2027-06-01" }).at(-1)).toMatch(/forecast$/);
  });

  test("a row without temperatures doesn't hide the forecast's, and its rain goes before", () => {
    const holed = rows("2027-05-01", "6,16", "7,17", ",,4");
    expect(warmthOf({ seen: holed, forecast }).at(2)).toBe("2027-05-03 1 11 4 forecast");
    const rainy = rows("2027-05-03", "1,11,9", "2,12,9");
    expect(warmthOf({ seen: holed, forecast: rainy }).at(2)).toBe("2027-05-03 1 11 4 forecast");
    const dry = rows("2027-05-01", "6,16", "7,17", ",,");
    expect(warmthOf({ seen: dry, forecast: rainy }).at(2)).toBe("2027-05-03 1 11 9 forecast");
  });

  test("only rain of what was seen has fallen, whatever today is", () => {
    const texts = {
      seen: rows("2027-05-01", "6,16,3", ",,4", "8,18,5"),
      forecast: rows("2027-05-02", "1,11,9", "2,12,9", "3,13,9"),
    };
    for (const today of ["2027-04-01", "2027-06-01"])
      expect(
        [...weatherOf({ ...texts, today }).days.values()].map((one) => [
          one.rainMm,
          one.isRainSeen,
        ]),
      ).toEqual([
        [3, true],
        [4, true],
        [5, true],
        [9, undefined],
      ]);
  });

  test("a gap between them is filled up to five days; a longer one is left to the means, told", () => {
    const near = { seen, forecast: rows("2027-05-09", "14,24") };
    expect(warmthOf(near).slice(3, 5)).toEqual([
      "2027-05-04 9 19 - forecast",
      "2027-05-05 10 20 - forecast",
    ]);
    expect(weatherOf(near).assumptions).toHaveLength(1);
    const far = weatherOf({ seen, forecast: rows("2027-05-10", "14,24") });
    expect([...far.days.keys()].slice(-2)).toEqual(["2027-05-03", "2027-05-10"]);
    expect(far.assumptions).toEqual([
      "the weather of 2027-05-04 to 2027-05-09, which the weather files don't tell, is that of the monthly means",
    ]);
  });

  test("either may be alone, or neither", () => {
    expect(warmthOf({ forecast })).toHaveLength(3);
    expect(weatherOf({})).toEqual({ days: new Map(), files: [], assumptions: [] });
  });

  test("problems of both files come together, by file", () => {
    const slip = rows("2027-05-01", "9,8");
    expect(problemsOfWeather({ seen: slip, forecast: slip }).map(({ file }) => file)).toEqual([
      "next.csv",
      "seen.csv",
    ]);
  });
});

test("a file of 2 MB is read to its end, however it is spoilt", () => {
  // Each would take minutes if a row looked at all the rows after it.
  for (const row of ["x\n", '"\n', "\n", '"",'])
    expect(
      problemsOfWeather({ seen: rows("2027-05-01", "x") + row.repeat(2e6 / row.length) }).length,
    ).toBeGreaterThan(0);
});
