/** What a forecast has against a feeding. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import type { DayWeather } from "../../src/climate/index.js";
import { addDays, day } from "../../src/dates.js";
import type { FeedingCourse } from "../../src/days/courses.js";
import { feedingCourses } from "../../src/days/courses.js";
import { forecastHarm } from "../../src/days/forecast-harm.js";
import type { Bed, Route } from "../../src/garden/garden.js";
import type { FedSpan } from "../../src/rules/match.js";
import { loadTables } from "../../src/tables.js";
import { aGarden } from "../support/a-garden.js";
import { placeWeather } from "../support/a-place.js";

const tables = loadTables();
const on = day("2027-06-09");
const next = addDays(on, 1);
const limitC = 27;
const means = { maxC: Array<number>(12).fill(40), minC: Array<number>(12).fill(9) };

function bedsWith(cover?: unknown): readonly Bed[] {
  const planting = { id: "toms", crop: "tomato", plants: 1, transplanted: "2027-05-01" };
  return aGarden({ beds: [{ id: "south", cover, plantings: [planting] }] }).beds;
}

function aCourse(beds: readonly Bed[], route: Route): FeedingCourse {
  const [planting] = beds.flatMap(({ plantings }) => plantings);
  const rule = tables.builtInRules.find((one) => one.route === route);
  if (planting === undefined || rule === undefined) throw new Error("no course");
  const limited = { ...rule, highestTemperatureC: limitC };
  const span: FedSpan = { rule: limited, route, from: on, to: next };
  const [course] = feedingCourses(planting, [span], { from: on, to: next });
  if (course === undefined) throw new Error("no course");
  return course;
}

interface Told {
  readonly rainMm?: number;
  readonly maxC?: number;
  readonly from?: DayWeather["from"];
}

/** On the day of the feeding, and the day after it. */
function harm(route: Route, days: readonly [Told, Told?], cover?: unknown) {
  const weather = days.map((told, i) => {
    const { from = "forecast", maxC = 20, ...rain } = told ?? {};
    return [addDays(on, i), { minC: 9, maxC, from, ...rain }] as const;
  });
  const beds = bedsWith(cover);
  return forecastHarm(beds, placeWeather(means, weather), tables)(aCourse(beds, route), on);
}

const rain = (mm: number, of = next) => ({ kind: "rain", on: of, mm });

describe("rain", () => {
  // Ohio Senate Bill 1 of 2015: more than half an inch within 24 hours, for liquid manure.
  test("of more than half an inch washes a drench down, of its day or the day after", () => {
    expect(harm("drench", [{ rainMm: 0 }, { rainMm: 12.8 }])).toEqual(rain(12.8));
    expect(harm("drench", [{ rainMm: 12.7 }, { rainMm: 12.7 }])).toBeUndefined();
    expect(harm("drench", [{ rainMm: 20 }, { rainMm: 14 }])).toEqual(rain(20, on));
    expect(harm("drench", [{ rainMm: 13 }])).toEqual(rain(13, on));
  });

  test("washes a spray off sooner", () => {
    expect(harm("foliar", [{}, { rainMm: 5.1 }])).toEqual(rain(5.1));
    expect(harm("foliar", [{}, { rainMm: 5 }])).toBeUndefined();
  });

  test("does nothing under glass or a tunnel while it stands; fleece lets it in", () => {
    const wet = [{ rainMm: 20 }, { rainMm: 20 }] as const;
    expect(harm("drench", wet, "glass")).toBeUndefined();
    expect(harm("foliar", wet, "tunnel")).toBeUndefined();
    expect(harm("drench", wet, "fleece")).toEqual(rain(20));
    expect(harm("drench", wet, { kind: "tunnel", to: on })).toEqual(rain(20));
  });
});

describe("heat", () => {
  test("above the rule's limit burns sprayed leaves, and harms no drench", () => {
    const heat = { kind: "heat", on, maxC: 27.5, limitC };
    expect(harm("foliar", [{ maxC: 27.5 }])).toEqual(heat);
    expect(harm("foliar", [{ maxC: limitC }, { maxC: 40 }])).toBeUndefined();
    expect(harm("drench", [{ maxC: 40 }])).toBeUndefined();
  });

  test("is greater under a cover", () => {
    const tunnel = { kind: "tunnel", warmer: "4 C" };
    expect(harm("foliar", [{ maxC: 24 }], tunnel)).toMatchObject({ kind: "heat", maxC: 28 });
    expect(harm("foliar", [{ maxC: 22 }], tunnel)).toBeUndefined();
  });

  test("is told after rain, which spoils the feeding whatever the hour", () => {
    expect(harm("foliar", [{ maxC: 35, rainMm: 30 }])).toEqual(rain(30, on));
  });
});

test("what was seen, and what the means give, is no forecast", () => {
  expect(harm("drench", [{ rainMm: 40, from: "seen" }])).toBeUndefined();
  expect(harm("foliar", [{ maxC: 40, from: "seen" }])).toBeUndefined();
  const beds = bedsWith();
  const ofMeans = forecastHarm(beds, placeWeather({ ...means, rainMm: means.maxC }), tables);
  expect(ofMeans(aCourse(beds, "foliar"), on)).toBeUndefined();
  expect(forecastHarm(beds, undefined, tables)(aCourse(beds, "foliar"), on)).toBeUndefined();
});
