import { describe, expect, test } from "vitest";
import { hemisphereFromZone } from "../../src/garden/hemisphere.js";
import { aGarden, type GardenDiffers } from "../support/a-garden.js";

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

  test("is assumed from the zone's summer time, and told", () => {
    expect(half({ timezone: "Australia/Melbourne" })).toBe(
      "south; southern hemisphere, from the summer time of Australia/Melbourne",
    );
    expect(half({ timezone: "America/Denver" })).toBe(
      "north; northern hemisphere, from the summer time of America/Denver",
    );
  });

  test("is assumed south where no clock tells and the season begins late and spans New Year", () => {
    expect(half({ timezone: "Africa/Johannesburg", season: overNewYear })).toBe(
      "south; southern hemisphere, as neither hemisphere nor latitude is given",
    );
  });

  test("is else assumed north", () => {
    expect(half({ timezone: "Africa/Johannesburg" })).toBe(
      "north; northern hemisphere, as neither hemisphere nor latitude is given",
    );
    const fromJanuary = { from: "2027-03-01", to: "2028-01-31" };
    expect(half({ timezone: "Asia/Tokyo", season: fromJanuary })).toContain("north");
  });
});

test.each([
  ["Europe/Dublin", "north"],
  ["Pacific/Auckland", "south"],
  ["America/Santiago", "south"],
  ["Asia/Kolkata", undefined],
  ["UTC", undefined],
])("the clocks of %s say %s", (zone, hemisphere) => {
  expect(hemisphereFromZone(zone, 2027)).toBe(hemisphere);
});
