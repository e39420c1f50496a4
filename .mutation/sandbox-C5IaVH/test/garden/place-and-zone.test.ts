// @ts-nocheck
import { describe, expect, test } from "vitest";
import { placeAndZone } from "../../src/garden/index.js";
import { loadTables } from "../../src/tables.js";
import { aGarden } from "../support/a-garden.js";

function warned(timezone: string, latitude: number, longitude?: number): string[] {
  const location = { latitude, ...(longitude === undefined ? {} : { longitude }) };
  const garden = { ...aGarden({ location }), timezone };
  return placeAndZone(garden, loadTables().zoneHalves).map(
    ({ code, message, mend }) => `${code}: ${message}: ${mend}`,
  );
}

describe("a place that does not lie in the garden's time zone", () => {
  test("is warned of, with what to check", () => {
    expect(warned("Europe/Madrid", -37.4, 37.4)).toEqual([
      "place-and-zone: the garden lies at 37.4 south, 37.4 east, and the time zone Europe/Madrid does not: check the two numbers of `location:` and their signs",
    ]);
    expect(warned("Europe/Madrid", -37.4)).toEqual([
      "place-and-zone: the garden lies at 37.4 south, and the time zone Europe/Madrid does not: check the latitude in `location:` and its sign",
    ]);
  });

  test.each([
    ["a lost minus in the west", "America/Chicago", 41.6, 93.6],
    ["a lost minus in the south", "Australia/Melbourne", 37.8, 145],
    ["a minus too many", "Asia/Tokyo", 35.7, -139.7],
    ["swapped numbers", "America/New_York", -74, 40.7],
    ["swapped numbers near the equator", "Europe/Dublin", -6.3, 53.3],
    ["swapped numbers where gardens are", "Europe/Madrid", -3.7, 40.4],
    ["the other end of the earth, in a zone without a half", "Asia/Jakarta", -7, -70],
  ])("%s", (_, zone, latitude, longitude) => {
    expect(warned(zone, latitude, longitude)).toHaveLength(1);
  });
});

describe("a place that may lie there is not", () => {
  test.each([
    ["Dublin, where winter time is the zone's", "Europe/Dublin", 53.3, -6.3],
    ["the west of Spain", "Europe/Madrid", 42.2, -8.7],
    ["the west of China", "Asia/Shanghai", 39.5, 76],
    ["the south of Colombia, beyond the equator", "America/Bogota", -4.2, -69.9],
    ["a country that shares another's time, beyond the equator", "Africa/Lagos", -8.8, 13.2],
    ["an island beyond the date line", "Pacific/Kiritimati", 1.9, -157.4],
    ["the west of Alaska", "America/Anchorage", 60.8, -165],
    ["the Chatham Islands", "Pacific/Chatham", -43.9, -176.5],
    ["any place with the time of none", "UTC", -37.8, 145],
    ["any place with the time of none, in full", "Etc/GMT", -37.8, 145],
  ])("%s", (_, zone, latitude, longitude) => {
    expect(warned(zone, latitude, longitude)).toEqual([]);
  });

  test("a garden without a location", () => {
    expect(placeAndZone(aGarden(), loadTables().zoneHalves)).toEqual([]);
  });
});
