// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../src/dates.js";
import {
  asksForNormals,
  type GardenPlace,
  placeOf,
  type PlaceSources,
} from "../src/garden-place.js";
import type { Garden } from "../src/garden/garden.js";
import { loadNormals, loadTables } from "../src/tables.js";
import { aGarden, aSeason, type GardenDiffers, planted } from "./support/a-garden.js";

const normals = await loadNormals();
const dublin = { latitude: 53.3, longitude: -6.3, elevation: "20 m" };
const own = {
  source: "Met service 1991-2020",
  temperature: "C",
  max: Array(12).fill(15),
  min: Array(12).fill(5),
};

function placed(garden: Garden, sources: PlaceSources): GardenPlace {
  const place = placeOf(garden, sources, loadTables(), day("2027-05-01"));
  if (!place.ok) throw new Error(place.problems.map(({ message }) => message).join("\n"));
  return place.value;
}

describe("the place of a garden", () => {
  test.each<[what: string, differs: GardenDiffers, asks: boolean]>([
    ["no location", {}, false],
    ["a latitude alone", { location: { latitude: 53.3 } }, false],
    ["a longitude", { location: dublin }, true],
    ["means of its own", { location: dublin, climate: own }, false],
    ["climate off", { location: dublin, climate: "off" }, false],
  ])("with %s: the table is read only where it is asked for", (_, differs, asks) => {
    const garden = aGarden(differs);
    expect(asksForNormals(garden)).toBe(asks);
    expect(placed(garden, { normals }).place?.climate.errorC === 0.76).toBe(asks);
  });

  test("has the grower's own means before the table's, at any height, without an error", () => {
    const { place, assumptions, warnings } = placed(
      aGarden({ location: { ...dublin, elevation: "900 m" }, climate: own }),
      { normals },
    );
    expect(place?.climate).toEqual({
      means: { maxC: own.max, minC: own.min },
      origin: "Met service 1991-2020",
      errorC: 0,
      daySdC: 3.5,
      latitudeDeg: 53.3,
      longitudeDeg: -6.3,
    });
    expect([assumptions, warnings]).toEqual([[], []]);
  });

  test("has the days of the weather files, where there are any", () => {
    const weather = { seen: "date,tmin,tmax\n2027-04-01,3,11\n" };
    const garden = aGarden({ location: dublin });
    const { place } = placed(garden, { normals, weather });
    expect([...(place?.days ?? [])]).toEqual([["2027-04-01", { minC: 3, maxC: 11, from: "seen" }]]);
    expect(placed(garden, { normals }).place?.days.size).toBe(0);
  });
});

describe("a plan", () => {
  test("tells the climate of its place", () => {
    expect(aSeason({ location: dublin }, undefined, { normals }).garden.climate).toEqual({
      origin:
        "Dublin, 13 km away and 54 m higher; CRU CL 2.0, means of 1961-1990 with the warming to 1979-2013",
      point: { name: "Dublin", distanceKm: expect.closeTo(13.49, 1) as number, higherM: 54 },
      errorC: 0.76,
    });
    expect(aSeason().garden.climate).toBeUndefined();
  });

  const said = (differs: GardenDiffers): string[] =>
    aSeason(differs, undefined, { normals }).assumptions.filter((line) =>
      /longitude|height/.test(line),
    );

  test("says once that there is no longitude, and not where that does not matter", () => {
    expect(said({ location: { latitude: 53.3 } })).toEqual([
      "dates by the calendar, not by the place's warmth: `location:` has no longitude (`longitude:`)",
    ]);
    expect(said({})).toEqual([]);
    expect(said({ location: { latitude: 53.3 }, climate: "off" })).toEqual([]);
    expect(said({ location: { latitude: 53.3 }, climate: own })).toEqual([]);
  });

  const off = planted({}, { id: "more", warmth: "off" });
  const on = planted({ warmth: "on" }, { id: "more", warmth: "on" });
  const needs = "`warmth: on` needs the climate of the place: ";
  test.each<[what: string, differs: GardenDiffers, told: string[]]>([
    ["no place", { warmth: "on" }, [`${needs}add \`location:\` with a latitude and a longitude`]],
    [
      "a latitude alone, and of two plantings",
      { ...on, location: { latitude: 53.3 } },
      [`${needs}add a longitude to \`location:\``],
    ],
    [
      "the climate off",
      { warmth: "on", location: dublin, climate: "off" },
      [`${needs}leave out \`climate: off\``],
    ],
    ["a place", { warmth: "on", location: dublin }, []],
    ["no wish for it", { ...off, warmth: "auto" }, []],
  ])("says once that warmth is followed in vain: with %s", (_, differs, told) => {
    const { assumptions } = aSeason(differs, undefined, { normals });
    expect(assumptions.filter((line) => /warmth/.test(line))).toEqual(told);
  });

  test("says once that there is no height", () => {
    expect(said({ location: { latitude: 53.3, longitude: -6.3 } })).toEqual([
      "a height of 74 m above the sea, that of Dublin, as none is given (`elevation:` of `location:`)",
    ]);
  });

  test("warns of a point that is far, and says how to mend it", () => {
    const atSea = { latitude: 45, longitude: -35, elevation: "0 m" };
    const { warnings } = aSeason({ location: atSea }, undefined, { normals });
    expect(warnings.filter(({ code }) => code === "far-climate")).toEqual([
      {
        code: "far-climate",
        message: expect.stringMatching(
          /^the nearest place whose climate is known, .*, is [\d,]+ km away$/,
        ) as string,
        mend: "check `location:`, or write twelve means of your own (`climate:`)",
      },
    ]);
  });
});
