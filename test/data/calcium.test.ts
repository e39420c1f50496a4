import { describe, expect, test } from "vitest";
import readAmendments from "../../src/compiled/amendments.js";
import readLimits from "../../src/compiled/calcium-limits.js";
import readSoilTests from "../../src/compiled/soil-tests.js";
import readUptake from "../../src/compiled/uptake.js";
import { stageNames } from "../../src/crops/crop.js";
import { amendmentKinds, extracts, grades, soilKinds } from "../../src/garden/soil.js";
import type { Range } from "../../src/calcium/index.js";
import { cropRows, ruleRows } from "./data-files.js";

const [amendments, limits] = [readAmendments(), readLimits()];
const [soilTests, uptake] = [readSoilTests(), readUptake()];
const keys = cropRows.map(({ key }) => key);

interface UptakeRow {
  readonly crop: string;
  readonly per_plant_g?: Range;
  readonly per_m2_g?: Range;
  readonly plants_per_m2?: number;
}
const rows: readonly UptakeRow[] = uptake.uptake;

describe("uptake", () => {
  test("is of crops of the catalogue, each with figures of its own or of a kin, never both", () => {
    const own = new Set(rows.map(({ crop }) => crop));
    for (const crop of own) expect(keys).toContain(crop);
    for (const { crop, from } of uptake.borrowed) {
      expect(keys).toContain(crop);
      expect(own.has(crop), crop).toBe(false);
      expect(own.has(from), from).toBe(true);
    }
  });

  test.each(rows.filter((row) => row.plants_per_m2 !== undefined))(
    "of a plant and of a m2 agree by the publication's own density ($crop)",
    ({ per_plant_g, per_m2_g, plants_per_m2 = NaN }) => {
      // Two digits each.
      expect(((per_plant_g?.low ?? NaN) * plants_per_m2) / (per_m2_g?.low ?? NaN)).toBeCloseTo(
        1,
        1,
      );
    },
  );

  test("ranges run from low to high", () => {
    for (const { per_plant_g, per_m2_g } of rows)
      for (const range of [per_plant_g, per_m2_g])
        if (range) expect(range.low).toBeLessThanOrEqual(range.high);
  });
});

test("each word of a garden file has its row", () => {
  expect(new Set(amendments.amendments.map(({ what }) => what))).toEqual(new Set(amendmentKinds));
  expect(amendments.finenesses.map(({ fineness }) => fineness)).toEqual(grades);
  expect(new Set(soilTests.extracts.map(({ extract }) => extract))).toEqual(new Set(extracts));
});

test("no year's shares of an amendment come to more than all of it at the least", () => {
  for (const { acts } of amendments.amendments)
    if (acts !== "by-fineness")
      expect(acts.year_one.low + acts.year_two.low).toBeLessThanOrEqual(100);
  for (const { year_one, year_two } of amendments.finenesses)
    expect(year_one.low + year_two.high).toBeLessThanOrEqual(100);
});

test("limits speak of disorders, stages and soils that there are", () => {
  const disorders = ruleRows.map(({ disorder }) => disorder);
  for (const one of [...limits.might_help.disorders, ...limits.soil_decides.disorders])
    expect(
      disorders.some((disorder) => disorder.includes(one)),
      one,
    ).toBe(true);
  expect(stageNames).toEqual(expect.arrayContaining([...limits.might_help.stages]));
  expect(soilKinds).toEqual(expect.arrayContaining([...limits.might_help.soils]));
});

test("hardly anything is from memory: a density and a limit", () => {
  const sources = JSON.stringify([uptake, amendments, soilTests, limits]);
  expect(sources.split("from memory").length - 1).toBe(2);
});
