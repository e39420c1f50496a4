/** Water in one feeding: from the planting, its bed, or what is usual. */
import { describe, expect, test } from "vitest";
import { litersPerUsGallon } from "../../src/garden/us-measures.js";
import type { Garden } from "../../src/garden/garden.js";
import {
  aGarden,
  gardenText,
  planted,
  type PlantingDiffers,
  problemsOf,
} from "../support/a-garden.js";

interface Told {
  readonly liters: readonly number[];
  readonly assumptions: readonly string[];
}

/** Litres for each planting of one bed, and what was assumed of water. */
function water(bed: object, ...plantings: readonly PlantingDiffers[]): Told {
  const garden: Garden = aGarden({
    beds: [
      {
        id: "bed",
        ...bed,
        plantings: plantings.map((p, i) => ({
          id: `p${i + 1}`,
          crop: "tomato",
          sown: "2027-04-01",
          ...p,
        })),
      },
    ],
  });
  return {
    liters: garden.beds[0]?.plantings.map((p) => Number(p.waterL.toFixed(6))) ?? [],
    assumptions: garden.assumptions.filter((a) => /water/.test(a) && !/can/.test(a)),
  };
}

describe("a planting's own water", () => {
  test.each<[string, PlantingDiffers, number]>([
    ["in all", { water: "6 L", plants: 3 }, 6],
    ["for each plant", { water: "2 L per plant", plants: 3 }, 6],
    ["for its area", { water: "4 L per m2", area: "1.5 m2" }, 6],
    [
      "in gallons for square feet",
      { water: "1 gal per 10 ft²", area: "20 ft2" },
      2 * litersPerUsGallon,
    ],
  ])("%s", (_, planting, liters) => {
    const told = water({}, planting);
    expect(told.liters[0]).toBeCloseTo(liters, 5);
    expect(told.assumptions).toEqual([]);
  });

  test("goes before that of its bed", () => {
    expect(water({ water: "20 L" }, { water: "6 L", plants: 3 }).liters).toEqual([6]);
  });

  test("for an area is for the whole bed where it stands alone in it", () => {
    expect(water({ area: "3 m2" }, { water: "4 L per m2" }).liters).toEqual([12]);
  });
});

describe("a bed's water", () => {
  test("is all for the one planting in it", () => {
    expect(water({ water: "12 L" }, {})).toEqual({ liters: [12], assumptions: [] });
  });

  test("is shared by area where all plantings give theirs", () => {
    const told = water({ water: "12 L" }, { area: "1 m2", plants: 9 }, { area: "3 m2", plants: 1 });
    expect(told).toEqual({ liters: [3, 9], assumptions: [] });
  });

  test("is else shared by plants, which is told", () => {
    expect(water({ water: "12 L" }, { plants: 4 }, { plants: 2, area: "1 m2" })).toEqual({
      liters: [8, 4],
      assumptions: ["bed bed: its water is shared out by the number of plants"],
    });
  });

  test("is else shared in equal parts, which is told", () => {
    expect(water({ water: "12 L" }, { plants: 4 }, {}, {})).toEqual({
      liters: [4, 4, 4],
      assumptions: ["bed bed: its water is shared out in equal parts"],
    });
  });

  test("per plant counts the plants of each", () => {
    expect(water({ water: "2 L per plant" }, { plants: 4 }, { plants: 2 }).liters).toEqual([8, 4]);
  });

  test("per area takes each planting's area, or its share of the bed's", () => {
    const bed = { water: "4 L per m2", area: "6 m2" };
    expect(water(bed, { area: "1 m2" }, { area: "2 m2" }).liters).toEqual([4, 8]);
    expect(water(bed, { plants: 4 }, { plants: 2 }).liters).toEqual([16, 8]);
  });
});

describe("without any water given", () => {
  test("the crop's usual water for each plant is taken and told", () => {
    expect(water({}, { plants: 3 })).toEqual({
      liters: [6],
      assumptions: ["p1: 2 L of water a plant, usual for tomato"],
    });
  });

  test("a light watering of the area is taken where plants are not counted", () => {
    expect(water({ area: "2 m2" }, { crop: "lettuce" })).toEqual({
      liters: [8],
      assumptions: ["p1: 4 L of water per m2, as none is given"],
    });
  });

  test("the usual water of one plant is taken where nothing is counted", () => {
    expect(water({}, {})).toEqual({
      liters: [2],
      assumptions: ["p1: 2 L of water for one plant, as neither water, plants nor area is given"],
    });
  });
});

test("usual water is told in the garden's own measures", () => {
  const { assumptions } = aGarden({
    amounts: "us",
    beds: [{ id: "b", plantings: [{ id: "p", crop: "tomato", sown: "2027-04-01", plants: 3 }] }],
  });
  expect(assumptions).toContain("p: 1/2 gal of water a plant, usual for tomato");
});

describe("spray liquid", () => {
  const spray = (planting: PlantingDiffers): unknown => {
    const [bed] = aGarden({
      beds: [{ id: "b", plantings: [{ id: "p", crop: "apple", plants: 2, ...planting }] }],
    }).beds;
    const { sprayL, sprayIsUsual } = bed?.plantings[0] ?? {};
    return { sprayL, sprayIsUsual };
  };

  test("is the grower's, in all or for each plant", () => {
    expect(spray({ spray: "3 L" })).toEqual({ sprayL: 3, sprayIsUsual: false });
    expect(spray({ spray: "1 L per plant" })).toEqual({ sprayL: 2, sprayIsUsual: false });
  });

  test("is else usual for the crop, each plant of it", () => {
    const one = spray({ plants: 1 }) as { sprayL: number };
    expect(one.sprayL).toBeGreaterThan(0);
    expect(spray({})).toEqual({ sprayL: 2 * one.sprayL, sprayIsUsual: true });
  });
});

test.each([
  [9000, "toms would get 18000 L of water in one feeding"],
  [1e300, "toms would get endless L of water in one feeding"],
])("for %d plants is told in words that can be read", (plants, told) => {
  const [problem] = problemsOf(gardenText(planted({ plants })));
  expect(problem?.message).toBe(told);
});
