/** The ground that one plant has, against spacings and densities as printed; each title names its source. */
// @ts-nocheck

import { expect, test } from "vitest";
import type { PlantArea } from "../../src/crops/crop.js";
import { catalogue, cropRows } from "../data/data-files.js";

function areaOf(key: string): PlantArea {
  const area = catalogue.crops.find((crop) => crop.key === key)?.areaM2PerPlant;
  if (area === undefined) throw new Error(`${key} has no spacing`);
  return area;
}

test.each([
  ["tomato", 1.9, "Horticultura Brasileira 41, 2023: 1.9 plants/m2"],
  ["sweet-pepper", 2.0833, "Azofeifa and Moreira, 2005: 20,833 plants/ha"],
  ["eggplant", 2, "Haag and Homa, Anais ESALQ 25, 1968: 20,000 plants/ha"],
  ["carrot", 59, "Cecilio Filho and Peixoto, Revista Caatinga, about 2013: 590,000 plants/ha"],
])("a field of %s at %d plants/m2 lies within the spacing (%s)", (key, plantsPerM2) => {
  const area = areaOf(key);
  expect(1 / plantsPerM2).toBeGreaterThanOrEqual(area.low);
  expect(1 / plantsPerM2).toBeLessThanOrEqual(area.high);
});

test("1 plant has 1550 square inches of a square metre: tomato 18 to 36 by 24 to 48 in", () => {
  const area = areaOf("tomato");
  expect(area.low).toBeCloseTo((18 * 24) / 1550, 2);
  expect(area.usual).toBeCloseTo((27 * 36) / 1550, 2);
  expect(area.high).toBeCloseTo((36 * 48) / 1550, 2);
});

const inInches = cropRows.flatMap((crop) => {
  const printed = /: [^:\d]* (\d+)(?: to (\d+))? in, rows (\d+)(?: to (\d+))? in$/.exec(
    crop.spacing_source ?? "",
  );
  if (crop.spacing === undefined || printed === null) return [];
  const [plant, plantTo = plant, row, rowTo = row] = printed.slice(1) as (string | undefined)[];
  return [{ crop, printed: [plant, plantTo, row, rowTo].map(Number) }];
});

test("most spacings are printed in inches", () => {
  expect(inInches.length).toBeGreaterThanOrEqual(30);
});

test.each(inInches.map((row) => [row.crop.key, row] as const))(
  "%s stands as far apart as its source prints",
  (_, { crop, printed }) => {
    const inCm = [...(crop.spacing?.plant_cm ?? []), ...(crop.spacing?.row_cm ?? [])];
    expect(inCm).toEqual(printed.map((inches) => Math.round(inches * 2.54)));
  },
);
