/**
 * BBCH principal growth stages: Meier (ed.), Growth stages of mono- and dicotyledonous plants, BBCH
 * Monograph, 2nd ed., 2001, Table 1, read in an excerpt; secondary codes of pome fruit, strawberry,
 * solanaceous fruit and leafy vegetables read in encyclopedia copies of the scales (Meier and others
 * 1994, Feller and others 1995). Which growers' word stands for which codes is our own mapping.
 */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import type { StageName } from "../../src/crops/crop.js";
import { courseRows } from "../data/data-files.js";

/** Principal stages: 0 germination, 1 leaves, 2 side shoots, 3 stem or rosette, 4 harvestable vegetative
 * parts, 5 inflorescence, 6 flowering, 7 fruit development, 8 ripening, 9 senescence. */
const principal: Record<StageName, readonly number[]> = {
  seedling: [0, 1],
  establishment: [1],
  vegetative: [1, 2, 3, 4, 5],
  heading: [4],
  "root-swelling": [4],
  flowering: [5, 6],
  "fruit-set": [6, 7],
  "fruit-growth": [7],
  // Bulbs ripen within stage 4 and tubers with the dying leaves of stage 9.
  ripening: [4, 8, 9],
  // The artichoke is picked as a bud.
  harvest: [4, 5, 6, 7, 8, 9],
  "after-harvest": [9],
};

const codes = (bbch: string): number[] => bbch.split("-").map(Number);
const codesOf = (course: string, stage: StageName): number[] => {
  const found = courseRows
    .find((row) => row.key === course)
    ?.stages.find((row) => row.stage === stage);
  if (found === undefined) throw new Error(`no ${stage} in ${course}`);
  return codes(found.bbch);
};

describe.each(courseRows.map((course) => [course.key, course] as const))(
  "BBCH Monograph 2001, Table 1: %s",
  (_, course) => {
    test("keeps each growers' stage within its principal growth stages", () => {
      for (const { stage, bbch } of course.stages)
        for (const code of codes(bbch))
          expect(principal[stage], `${stage} ${bbch}`).toContain(Math.floor(code / 10));
    });

    test("has ascending codes, none of them in two stages", () => {
      const all = course.stages.flatMap(({ bbch }) => codes(bbch));
      for (const [i, code] of all.entries())
        if (i > 0 && all[i - 1] !== 69) expect(code).toBeGreaterThan(all[i - 1] ?? NaN);
    });
  },
);

test("BBCH pome fruit: full flowering is 65, all petals have fallen at 69", () => {
  expect(codesOf("tree-fruit-from-bloom", "flowering")[0]).toBe(65);
  expect(codesOf("tree-fruit-from-bloom", "fruit-set")[0]).toBe(69);
});

test("BBCH leafy vegetables forming heads: heads begin to form at 41", () => {
  for (const course of ["leafy-head", "head-brassica"])
    expect(codesOf(course, "heading")[0]).toBe(41);
});

test("BBCH solanaceous fruit: emergence is 09, third true leaf 13, first inflorescence visible 51", () => {
  expect(codesOf("fruit-picked-ripe", "seedling")).toEqual([0, 13]);
  expect(codesOf("fruit-picked-ripe", "flowering")[0]).toBe(51);
});

test("BBCH leafy vegetables not forming heads: the typical leaf mass is reached at 49", () => {
  expect(codesOf("leaf", "harvest")).toEqual([49]);
});

test("BBCH strawberry: first leaf 10, first flowers 60, fading 67, receptacle protrudes 71, ripening 81, main harvest 87", () => {
  const begins = (stage: StageName): number | undefined => codesOf("strawberry", stage)[0];
  expect(codesOf("strawberry", "flowering")).toEqual([60, 67]);
  expect([
    begins("vegetative"),
    begins("fruit-set"),
    begins("ripening"),
    begins("harvest"),
  ]).toEqual([10, 71, 81, 87]);
});
