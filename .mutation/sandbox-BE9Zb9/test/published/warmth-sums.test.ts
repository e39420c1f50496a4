/** Published sums of warmth in degrees Fahrenheit, against the degrees Celsius of the data file. */
// @ts-nocheck

import { expect, test } from "vitest";
import { warmthRows } from "../data/data-files.js";

const rowOf = (crop: string): (typeof warmthRows)[number] | undefined =>
  warmthRows.find((row) => row.crop === crop);
const sumOf = (crop: string, stage: string) => rowOf(crop)?.sums.find((sum) => sum.stage === stage);

test.each([
  ["University of Arizona, New Mexico chile", "chili-pepper", "ripening", 2393, 215],
  ["University of Arizona, New Mexico chile", "chili-pepper", "harvest", 3159, 220],
  ["University of Arizona, cantaloupe", "cantaloupe", "flowering", 357, 41],
  ["University of Arizona, cantaloupe", "cantaloupe", "fruit-set", 619, 81],
  ["University of Arizona, cantaloupe", "cantaloupe", "harvest", 1297, 128],
])("%s: %s %s at %i degree days of F, scatter %i", (_, crop, stage, degreeDaysF, scatterF) => {
  const sum = sumOf(crop, stage);
  expect(Math.abs((sum?.degree_days ?? NaN) - degreeDaysF / 1.8)).toBeLessThanOrEqual(0.6);
  expect(Math.abs((sum?.least ?? NaN) - (degreeDaysF - scatterF) / 1.8)).toBeLessThanOrEqual(1);
  expect(Math.abs((sum?.most ?? NaN) - (degreeDaysF + scatterF) / 1.8)).toBeLessThanOrEqual(1);
});

test.each([
  ["University of Arizona: 954 and 1369 F", "chili-pepper", "flowering", 954 / 1.8, 1369 / 1.8],
  ["Oregon Vegetable Digest: 800 to 1160 F", "green-bean", "harvest", 800 / 1.8, 1160 / 1.8],
  ["Gray 1980 and AquaCrop TomatoGDD", "tomato", "flowering", 150, 525],
  ["WOFOST and AquaCrop PotatoGDD", "potato", "root-swelling", 320, 550],
  ["WOFOST potato, 320 and 1550 to 2100", "potato", "harvest", 1870, 2420],
  ["WOFOST seed onion and Lancaster 1996", "onion", "root-swelling", 360, 600],
])("%s: %s %s between the two, at their geometric middle", (_, crop, stage, least, most) => {
  const sum = sumOf(crop, stage);
  expect(Math.abs((sum?.least ?? NaN) - least)).toBeLessThanOrEqual(0.6);
  expect(Math.abs((sum?.most ?? NaN) - most)).toBeLessThanOrEqual(0.6);
  expect(Math.abs((sum?.degree_days ?? NaN) - Math.sqrt(least * most))).toBeLessThanOrEqual(1);
});

test("Arizona: 86 and 55 F are the limits of chile and cantaloupe", () => {
  for (const crop of ["chili-pepper", "cantaloupe"]) {
    expect(rowOf(crop)?.base_c).toBeCloseTo((55 - 32) / 1.8, 1);
    expect(rowOf(crop)?.upper_c).toBeCloseTo((86 - 32) / 1.8, 6);
  }
});

test("DD56: 2500 to 2740 F from emergence to ripe peanuts, after 45 to 80 to emergence", () => {
  const sum = sumOf("peanut", "harvest");
  expect(Math.abs((sum?.least ?? NaN) - (2500 / 1.8 + 45))).toBeLessThanOrEqual(2);
  expect(Math.abs((sum?.most ?? NaN) - (2740 / 1.8 + 80))).toBeLessThanOrEqual(3);
  expect(rowOf("peanut")?.base_c).toBeCloseTo((56 - 32) / 1.8, 1);
});

test("Ontario: apples are in full bloom 252 degree days above 5 degC after New Year", () => {
  // By single sine 6.8 days rms off the nine published dates of bloom, by the simple method 10.4.
  expect(rowOf("apple")).toMatchObject({ method: "single-sine", base_c: 5 });
  expect(sumOf("apple", "flowering")).toMatchObject({ from: "new-year", degree_days: 252 });
});
