// @ts-nocheck
import { expect, test } from "vitest";
import { toldOfSeason } from "../../src/climate/index.js";
import { day } from "../../src/dates.js";

test.each([
  ["none", [], undefined],
  ["of the winter before the season", ["2027-02-03", "2027-01-01"], ["2027-01-01", "2027-02-03"]],
  [
    "of the year before, cut at New Year",
    ["2026-12-31", "2027-01-02"],
    ["2027-01-02", "2027-01-02"],
  ],
  ["after the season, cut at its end", ["2027-10-30", "2027-11-01"], ["2027-10-30", "2027-10-30"]],
  ["of the year before alone", ["2026-05-01"], undefined],
])("days told: %s", (_, days, span) => {
  const season = { from: day("2027-03-01"), to: day("2027-10-31") };
  const told = toldOfSeason(days.map(day), season);
  expect(told && [told.from, told.to]).toEqual(span);
});
