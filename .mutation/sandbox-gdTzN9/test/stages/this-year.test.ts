/** Records of earlier years on plants that stand for many. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import type { Planting } from "../../src/garden/garden.js";
import { plantingLife } from "../../src/stages/planting-life.js";
import { ofThisYear } from "../../src/stages/this-year.js";
import { loadTables } from "../../src/tables.js";
import { aGarden, planted, type PlantingDiffers } from "../support/a-garden.js";

const { catalogue } = loadTables();

function recorded(
  differs: PlantingDiffers,
  season = { from: "2028-03-01", to: "2028-10-31" },
): { planting: Planting; assumptions: readonly string[]; flowering: string | undefined } {
  const place = aGarden({ season, ...planted({ transplanted: undefined, ...differs }) });
  const planting = place.beds[0]?.plantings[0];
  const crop = catalogue.crops.find(({ key }) => key === planting?.crop);
  if (planting === undefined || crop === undefined) throw new Error("a garden without a crop");
  const now = ofThisYear(planting, crop, place);
  const { spans } = plantingLife(now.planting, crop, place);
  return { ...now, flowering: spans.find(({ stage }) => stage === "flowering")?.from };
}

describe("a tree in the season after its bloom was written down", () => {
  test("blooms when usual, with a word of it", () => {
    const { flowering, assumptions } = recorded({ crop: "apple", bloom: "2027-04-28" });
    expect(flowering).toBe("2028-05-05");
    expect(assumptions).toEqual([
      "toms: `bloom: 2027-04-28`: of an earlier year, so it says nothing of this season",
    ]);
  });

  test("counts what was seen this year, and not what was seen before", () => {
    const seen = [
      { stage: "flowering", on: "2027-04-28" },
      { stage: "fruit-set", on: "2028-05-02" },
    ];
    const { planting, assumptions } = recorded({ crop: "apple", seen });
    expect(planting.seen.map(({ on }) => on)).toEqual(["2028-05-02"]);
    expect(assumptions).toEqual([
      expect.stringContaining("flowering seen on 28 April 2027: of an"),
    ]);
  });

  test("keeps a bloom whose fruit is picked in the season", () => {
    const autumn = { from: "2027-09-01", to: "2028-03-31" };
    const { planting, assumptions } = recorded({ crop: "apple", bloom: "2027-04-28" }, autumn);
    expect(planting.bloom).toBe("2027-04-28");
    expect(assumptions).toEqual([]);
  });
});

test("an annual keeps what was seen of it", () => {
  const seen = [{ stage: "flowering", on: "2027-06-10" }];
  const { planting } = recorded({ transplanted: "2027-05-20", seen });
  expect(planting.seen).toHaveLength(1);
});
