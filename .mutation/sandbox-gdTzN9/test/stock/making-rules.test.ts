// @ts-nocheck
import { readFileSync } from "node:fs";
import { Ajv } from "ajv";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { day } from "../../src/dates.js";
import {
  batchStepMl,
  type MakingRules,
  useByOf,
  wayOfMaking,
} from "../../src/stock/making-rules.js";

const read = (path: string): string =>
  readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
const rules = parse(read("src/stock/making.yaml")) as MakingRules;
const settings = { acid: "citric", keep: "shelf", bottleMl: 500, largestBatchMl: 2000 } as const;

describe("rules of thumb for making stock", () => {
  const check = new Ajv().compile(JSON.parse(read("schemas/making.schema.json")) as object);
  test("keep to their schema", () => {
    check(rules);
    expect(check.errors).toBeNull();
  });
  test("a row without a source is refused", () => {
    const { days, about } = rules.dry_shells;
    expect(check({ ...rules, dry_shells: { days, about } })).toBe(false);
  });

  test("common practice: two weeks on the shelf, three months in the fridge", () => {
    const batch = { made: day("2027-05-01"), keep: "shelf" } as const;
    expect(useByOf(batch, rules)).toBe("2027-05-15");
    expect(useByOf({ ...batch, keep: "fridge" }, rules)).toBe("2027-07-30");
    expect(useByOf({ ...batch, useBy: day("2027-06-01") }, rules)).toBe("2027-06-01");
  });

  test("vinegar waits longer than citric acid, and never longer than a jar may stand", () => {
    const citric = wayOfMaking(settings, rules, 18);
    const vinegar = wayOfMaking({ ...settings, acid: "vinegar" }, rules, 16);
    expect(citric.reactionDays).toBe(2);
    expect(vinegar.reactionDays).toBeGreaterThan(citric.reactionDays);
    expect(vinegar.longestStandDays).toBeGreaterThanOrEqual(vinegar.reactionDays);
  });

  test("a batch is made to the next 10 mL, and to the next hundredth where more is made", () => {
    const step = (largestBatchMl: number): number =>
      batchStepMl(wayOfMaking({ ...settings, largestBatchMl }, rules, 18));
    expect([10, 1000, 2000, 18_927].map(step)).toEqual([10, 10, 20, 190]);
  });

  test("bottled three days before it is first poured, or as the grower says", () => {
    expect(wayOfMaking(settings, rules, 18).readyBeforeDays).toBe(3);
    expect(wayOfMaking({ ...settings, readyBeforeDays: 0 }, rules, 18).readyBeforeDays).toBe(0);
  });

  test("the smallest batch is no larger than the largest the grower can make", () => {
    expect(wayOfMaking({ ...settings, largestBatchMl: 120.7 }, rules, 18)).toMatchObject({
      smallestMl: 120,
      largestMl: 120,
    });
  });
});
