// @ts-nocheck
import { describe, expect, test } from "vitest";
import { stageNames } from "../../src/crops/crop.js";
import { courseRows, cropRows, cropsOf, rateMlPerL, ruleRows, signRows } from "./data-files.js";

test("the signs that growers see are all there, under one name each", () => {
  expect(signRows.map((sign) => sign.key)).toEqual([
    "blossom-end-rot",
    "tipburn",
    "bitter-pit",
    "blackheart",
    "leaf-edge-scorch",
    "white-crust",
    "wilting-at-noon",
  ]);
  const words = signRows.flatMap((sign) => [
    ...new Set([
      sign.key.replaceAll("-", " "),
      sign.name.replaceAll("-", " "),
      ...(sign.also ?? []),
    ]),
  ]);
  expect(new Set(words).size).toBe(words.length);
});

describe.each(signRows.map((sign) => [sign.key, sign] as const))("%s", (_, sign) => {
  const crops = cropsOf(sign);

  test("is known on crops that exist, or on any", () => {
    const keys = cropRows.map((crop) => crop.key);
    for (const key of sign.crops ?? []) expect(keys).toContain(key);
    for (const group of sign.groups ?? [])
      expect(
        cropRows.some((crop) => crop.group === group),
        group,
      ).toBe(true);
  });

  test("advises on water before anything else is changed", () => {
    expect(sign.first_advice.join(" ")).toMatch(/[Ww]ater/);
  });

  test("puts advice first in groups that it is known on alone", () => {
    for (const group of Object.keys(sign.first_in_group ?? {}))
      expect(sign.groups).toContain(group);
  });

  test("has evidence on water for crops that it is known on", () => {
    for (const { crops: named = [] } of sign.water_evidence ?? [])
      for (const key of named) expect(crops.map((crop) => crop.key)).toContain(key);
  });

  test("moves the level the way its steps say, within the highest rate of every rule", () => {
    expect(Math.sign(sign.level_factor - 1)).toBe(sign.level_steps);
    const fedCrops = crops.length > 0 ? crops : cropRows;
    for (const rule of ruleRows.filter((r) => cropsOf(r).some((crop) => fedCrops.includes(crop))))
      expect(rateMlPerL(rule.rate) * sign.level_factor, rule.id).toBeLessThanOrEqual(
        rateMlPerL(rule.highest_rate),
      );
  });

  test("raises the feed only for stages in which one of its crops is fed unasked", () => {
    if (sign.level_steps !== 1) return;
    const fed = ruleRows.filter((r) => r.by_default && cropsOf(r).some((c) => crops.includes(c)));
    expect(fed.length).toBeGreaterThan(0);
    expect(fed.some((rule) => rule.stages.some((s) => sign.stages.includes(s)))).toBe(true);
    for (const crop of crops) {
      const course = courseRows.find((c) => c.key === crop.course);
      expect(
        course?.stages.some((s) => sign.stages.includes(s.stage)),
        crop.key,
      ).toBe(true);
    }
  });

  test("lowers the feed in every stage, since too much harms in all of them", () => {
    if (sign.level_steps !== -1) return;
    expect([...sign.stages]).toEqual(stageNames.filter((s) => s !== "after-harvest"));
  });
});

test("every disorder that a rule guards against can be reported as a sign, but for those in the soil", () => {
  const known = signRows.flatMap((sign) => [sign.name, ...(sign.also ?? [])]);
  const without = ruleRows
    .map((rule) => rule.disorder)
    .filter((disorder) => !known.some((name) => disorder.includes(name)));
  expect([...new Set(without)]).toEqual(["empty pods (pops)", "internal brown spot"]);
});
