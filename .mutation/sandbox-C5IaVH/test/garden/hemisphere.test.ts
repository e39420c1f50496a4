// @ts-nocheck
import { describe, expect, test } from "vitest";
import { hemisphereFromZone } from "../../src/garden/hemisphere.js";
import { loadTables } from "../../src/tables.js";
import { aGarden, type GardenDiffers, gardenText, placesOf, planted } from "../support/a-garden.js";

const half = (differs: GardenDiffers): string => {
  const { hemisphere, assumptions } = aGarden({ beds: bed, ...differs });
  return [hemisphere, ...assumptions.filter((a) => a.includes("hemisphere"))].join("; ");
};
const bed = [{ id: "south", plantings: [] }];
const overNewYear = { from: "2027-09-01", to: "2028-05-31" };

describe("the half of the earth", () => {
  test("is what the grower says", () => {
    expect(half({ hemisphere: "south", timezone: "Africa/Nairobi" })).toBe("south");
    expect(half({ hemisphere: "north", timezone: "Africa/Nairobi" })).toBe("north");
  });

  test("follows from the latitude", () => {
    expect(half({ location: { latitude: -37.8 } })).toBe("south");
    expect(half({ location: { latitude: 0 }, timezone: "Africa/Nairobi" })).toBe("north");
  });

  test.each([
    ["Australia/Melbourne", "south"],
    ["America/Denver", "north"],
    ["Africa/Johannesburg", "south"],
    ["Asia/Kolkata", "north"],
    ["Asia/Tokyo", "north"],
    ["Asia/Amman", "north"],
    ["Asia/Dubai", "north"],
    ["Europe/Istanbul", "north"],
  ])("is assumed from the zone %s, whatever the season, and told", (timezone, lies) => {
    for (const season of [overNewYear, { from: "2027-03-01", to: "2027-10-31" }])
      expect(half({ timezone, season })).toBe(
        `${lies}; ${lies}ern hemisphere, from the time zone ${timezone}`,
      );
  });

  describe("where no zone tells", () => {
    const asked = (differs: GardenDiffers): unknown =>
      placesOf(gardenText({ timezone: "Africa/Nairobi", ...differs }));
    const apple = { crop: "apple", transplanted: undefined, established: true };

    test("is asked for, whatever the season", () => {
      expect(asked(planted(apple))).toEqual(["hemisphere 3:11"]);
      expect(asked({ season: overNewYear, ...planted(apple) })).toEqual(["hemisphere 3:11"]);
      expect(asked({ timezone: "UTC" })).toEqual(["hemisphere 3:11"]);
    });

    test("is not asked for where no stage depends on it", () => {
      const timezone = "Africa/Nairobi";
      expect(half({ timezone })).toBe("north");
      const bloom = "2027-05-01";
      expect(half({ timezone, ...planted({ ...apple, bloom }) })).toBe("north");
    });

    test("is asked for where the bloom given may be of a year that is over", () => {
      expect(asked(planted({ ...apple, bloom: "2026-05-01" }))).toEqual(["hemisphere 3:11"]);
    });
  });
});

const { zoneHalves } = loadTables();

test.each([
  ["Asia/Calcutta", "north"],
  ["US/Eastern", "north"],
  ["EST5EDT", "north"],
  ["GB", "north"],
  ["Brazil/East", "south"],
  ["NZ", "south"],
  ["Brazil/West", undefined],
  ["America/Bogota", undefined],
  ["Asia/Jakarta", undefined],
  ["UTC", undefined],
  ["Etc/GMT-4", undefined],
])("the zone %s lies %s", (zone, hemisphere) => {
  expect(hemisphereFromZone(zone, zoneHalves)).toBe(hemisphere);
});

test("nearly every zone lies in one half", () => {
  const zones = Intl.supportedValuesOf("timeZone");
  const silent = zones.filter((zone) => hemisphereFromZone(zone, zoneHalves) === undefined);
  expect(silent.length).toBeLessThan(zones.length / 12);
});
