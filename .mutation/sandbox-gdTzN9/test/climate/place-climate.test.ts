// @ts-nocheck
import { describe, expect, test } from "vitest";
import type { Normals } from "../../src/climate/normals.js";
import { type Place, placeClimate } from "../../src/climate/place-climate.js";
import { loadNormals } from "../../src/tables.js";

const column = (value: number): Int16Array => Int16Array.of(value);
const months = (value: number): Int16Array[] => Array.from({ length: 12 }, () => column(value));

/** One point: 10.0 and 2.0 degC, 50 mm, 0.5 degC warmer since, at 51.00 N 0.00 E and 300 m. */
const onePoint: Normals = {
  names: ["Hill Station"],
  latitudes: column(5100),
  longitudes: column(0),
  heightsM: column(300),
  warmings: column(5),
  maxima: months(100),
  minima: months(20),
  rains: months(50),
  about: (await loadNormals()).about,
};

const onThePoint: Place = { latitudeDeg: 51, longitudeDeg: 0, elevationM: 300 };

describe("the climate of a place", () => {
  test("is its point's, with the warming since", () => {
    const { climate, assumptions, warnings } = placeClimate(onePoint, onThePoint, "metric");
    expect(climate).toMatchObject({
      origin:
        "Hill Station, less than 1 km away at the same height; CRU CL 2.0, means of 1961-1990 with the warming to 1979-2013",
      point: { name: "Hill Station", distanceKm: 0, higherM: 0 },
      errorC: 0.76,
      latitudeDeg: 51,
      longitudeDeg: 0,
    });
    expect(climate.means).toEqual({
      maxC: Array(12).fill(10.5),
      minC: Array(12).fill(2.5),
      rainMm: Array(12).fill(50),
    });
    expect({ assumptions, warnings }).toEqual({ assumptions: [], warnings: [] });
  });

  test.each([
    [100, 200, 1.2, "200 m higher"],
    [400, -100, -0.6, "100 m lower"],
  ])(
    "at %d m is 0.6 C per 100 m off that of a point at 300 m",
    (elevationM, higherM, byC, words) => {
      const { climate } = placeClimate(onePoint, { ...onThePoint, elevationM }, "metric");
      expect(climate.point?.higherM).toBe(higherM);
      expect(climate.means.maxC[0]).toBeCloseTo(10.5 + byC, 10);
      expect(climate.means.minC[11]).toBeCloseTo(2.5 + byC, 10);
      expect(climate.means.rainMm?.[5]).toBe(50);
      expect(climate.origin).toContain(`less than 1 km away and ${words};`);
    },
  );

  test("without a height is that of the point's height, which is said", () => {
    const { climate, assumptions } = placeClimate(
      onePoint,
      { latitudeDeg: 51, longitudeDeg: 0 },
      "metric",
    );
    expect(climate.means.maxC[0]).toBe(10.5);
    expect(climate.origin).toContain("Hill Station, less than 1 km away;");
    expect(assumptions).toEqual([
      "a height of 300 m above the sea, that of Hill Station, as none is given (`elevation:` of `location:`)",
    ]);
  });
});

describe("a point that is far", () => {
  // A degree of latitude is 111.2 km.
  const tell = (place: Partial<Place>, measures: "metric" | "us" = "metric"): readonly string[] =>
    placeClimate(onePoint, { ...onThePoint, ...place }, measures).warnings.map((w) => w.message);

  test("away is told of from 100 km on", () => {
    expect(tell({ latitudeDeg: 51.89 })).toEqual([]);
    expect(tell({ latitudeDeg: 51.91 })).toEqual([
      "the nearest place whose climate is known, Hill Station, is 101 km away",
    ]);
  });

  test("above or below is told of from 500 m on", () => {
    expect(tell({ elevationM: 800 })).toEqual([]);
    expect(tell({ elevationM: 801 })).toEqual([
      "the nearest place whose climate is known, Hill Station, lies 501 m lower: the garden is taken as 3.0 C colder, 0.6 C per 100 m",
    ]);
  });

  test("tells a US grower miles, feet and Fahrenheit", () => {
    expect(tell({ latitudeDeg: 52, elevationM: 1300 }, "us")).toEqual([
      "the nearest place whose climate is known, Hill Station, is 69 miles away",
      "the nearest place whose climate is known, Hill Station, lies 3,281 ft lower: the garden is taken as 10.8 F colder, 3.3 F per 1,000 ft",
    ]);
    const near = placeClimate(onePoint, { latitudeDeg: 51.01, longitudeDeg: 0 }, "us");
    expect(near.climate.origin).toMatch(/^Hill Station, 1 mile away;/);
    expect(near.assumptions[0]).toMatch(/^a height of 984 ft above the sea/);
  });
});
