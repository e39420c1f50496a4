// @ts-nocheck
import { describe, expect, test } from "vitest";
import { type Habit, habits } from "../../src/crops/crop.js";
import { dilute } from "../../src/stock/chemistry/can.js";
import { good } from "../stock/chemistry/chemistry-cases.js";
import { chemistry, citricStock } from "../stock/chemistry/chemistry-fixture.js";
import {
  amount,
  courseRows,
  cropRows,
  cropsOf,
  days,
  rateMlPerL,
  ruleRows,
  temperatureC,
} from "./data-files.js";

const headBrassicas = ["cabbage", "chinese-cabbage", "cauliflower", "brussels-sprouts"];
const stockCalciumGPerL = 17.75;

test("the trade's base rate is 10 mL of stock in 4 L of water, and most rules keep to it", () => {
  const tradeMlPerL = rateMlPerL("10 mL in 4 L");
  expect(tradeMlPerL).toBe(2.5);
  const others = ruleRows.filter((rule) => rateMlPerL(rule.rate) !== tradeMlPerL);
  expect(others.map((rule) => rule.id)).toEqual(["apple-foliar"]);
});

test("ids are unique, and every crop and group that a rule names is known", () => {
  expect(new Set(ruleRows.map((rule) => rule.id)).size).toBe(ruleRows.length);
  const keys = cropRows.map((crop) => crop.key);
  const groups = cropRows.map((crop) => crop.group);
  for (const rule of ruleRows) {
    expect((rule.crops ?? []).length + (rule.groups ?? []).length, rule.id).toBeGreaterThan(0);
    for (const key of rule.crops ?? []) expect(keys, rule.id).toContain(key);
    for (const group of rule.groups ?? []) expect(groups, rule.id).toContain(group);
  }
});

const rulesFor = (crop: (typeof cropRows)[number], habit: Habit): typeof ruleRows =>
  ruleRows.filter(
    (rule) => cropsOf(rule).includes(crop) && (rule.habit === undefined || rule.habit === habit),
  );

test("no crop has two rules of one route and habit, so it is always clear which holds", () => {
  for (const crop of cropRows)
    for (const habit of habits)
      for (const route of ["drench", "foliar"]) {
        const rules = rulesFor(crop, habit).filter((rule) => rule.route === route);
        expect(rules.length, `${crop.key} ${route} ${habit}`).toBeLessThanOrEqual(1);
      }
});

test("a crop with a rule for one habit has one for each", () => {
  for (const rule of ruleRows.filter(({ habit }) => habit !== undefined))
    for (const crop of cropsOf(rule))
      for (const habit of habits)
        expect(
          rulesFor(crop, habit).filter(({ route }) => route === rule.route),
          `${crop.key} ${habit}`,
        ).toHaveLength(1);
});

test("no crop is fed twice without being asked for", () => {
  for (const crop of cropRows)
    for (const habit of habits)
      expect(
        rulesFor(crop, habit).filter((rule) => rule.by_default).length,
        crop.key,
      ).toBeLessThanOrEqual(1);
});

test("no rule is called published: no text speaks of soluble calcium given so at a strength that this feed reaches", () => {
  expect(ruleRows.filter(({ evidence }) => evidence === "published")).toEqual([]);
});

test("no text states a limit that the hardness of the water moves", () => {
  for (const { id, limits_reason: text } of ruleRows)
    expect(text, id).not.toMatch(/\d+ mL per L calcium citrate|four times the usual rate/);
});

test("advised against are those alone that trials or extension found useless", () => {
  const rules = ruleRows.filter(({ evidence }) => evidence === "advised-against");
  expect(rules.map((rule) => [rule.id, ...cropsOf(rule).map(({ key }) => key)])).toEqual([
    ["leafy-head-drench", "lettuce", "chicory"],
    ["leaf-lettuce-drench", "leaf-lettuce"],
    ["head-brassica-drench", ...headBrassicas],
    ["head-brassica-foliar", ...headBrassicas],
    ["collard-drench", "collard"],
    ["collard-foliar", "collard"],
    ["pome-fruit-drench", "apple", "pear"],
    ["peanut-drench", "peanut"],
    ["peanut-foliar", "peanut"],
  ]);
});

describe.each(ruleRows.map((rule) => [rule.id, rule] as const))("%s", (_, rule) => {
  test("says everything that a grower's own rule may leave out", () => {
    for (const key of [
      "route",
      "disorder",
      "calcium",
      "first_within",
      "highest_rate",
      "stop_before_harvest",
      "limits_reason",
      "evidence",
      "by_default",
      "reason",
      "source",
    ] as const)
      expect(rule[key], key).toBeDefined();
  });

  test("names the calcium that its rate brings at the reference strength", () => {
    const calciumMgPerL = rateMlPerL(rule.rate) * stockCalciumGPerL;
    expect(Math.abs(amount(rule.calcium, "concentration") / calciumMgPerL - 1)).toBeLessThan(0.01);
  });

  test("has its limits in order", () => {
    const [shortest, target, longest] = [
      days(rule.interval.shortest),
      days(rule.interval.target),
      days(rule.interval.longest),
    ];
    expect(shortest).toBeGreaterThanOrEqual(5);
    expect(target).toBeGreaterThanOrEqual(shortest);
    expect(longest).toBeGreaterThan(target);
    expect(days(rule.first_within)).toBeLessThanOrEqual(longest);
    expect(rateMlPerL(rule.highest_rate)).toBeGreaterThan(rateMlPerL(rule.rate));
  });

  test("dissolves at its highest rate in hard water too, or says that it does not", () => {
    const stock = citricStock(15);
    const stockMlPerL = (rateMlPerL(rule.highest_rate) * stockCalciumGPerL) / stock.shakenGPerL;
    const { settlesMgPerL } = good(
      dilute(chemistry, stock, {
        stockMlPerL,
        pour: "shaken",
        // "Very hard" from 180 mg/L on: United States Geological Survey, Hardness of water.
        water: { hardnessMgPerL: 180 },
        temperatureC: 20,
        air: "closed",
      }),
    );
    const saysSo = /In hard water not all of that dissolves/.test(rule.limits_reason);
    expect(settlesMgPerL >= 1).toBe(saysSo);
  });

  test("feeds in stages that its crops go through", () => {
    const lives = cropsOf(rule).map(
      (crop) => courseRows.find((course) => course.key === crop.course)?.stages ?? [],
    );
    const lived = lives.map((stages) => stages.map((s) => s.stage));
    for (const stages of lived) expect(stages.some((s) => rule.stages.includes(s))).toBe(true);
    for (const stage of rule.stages)
      expect(lived.some((stages) => stages.includes(stage))).toBe(true);
  });

  test("feeds unasked only where it is neither disputed nor advised against", () => {
    if (rule.evidence === "disputed" || rule.evidence === "advised-against")
      expect(rule.by_default).toBe(false);
  });

  test("stops before harvest when it wets what is eaten", () => {
    const eatenPartWet = rule.route === "foliar" && rule.disorder !== "empty pods (pops)";
    if (eatenPartWet) expect(days(rule.stop_before_harvest)).toBeGreaterThanOrEqual(3);
    if (rule.stages.includes("harvest")) expect(days(rule.stop_before_harvest)).toBe(0);
  });

  test("names the highest temperature of a spray, and whose word it is", () => {
    if (rule.route === "drench") expect(rule.highest_temperature).toBeUndefined();
    else {
      const highestC = temperatureC(rule.highest_temperature ?? "");
      // Of the two published limits the stricter holds where there is none for the crop.
      expect(Math.round(highestC)).toBe(rule.source.includes("85 F") ? 29 : 27);
      expect(rule.source).toMatch(/80 F|85 F|highest temperature: common practice, no source/i);
    }
  });

  test("tells a published ground from common practice", () => {
    if (rule.evidence !== "common-practice") expect(rule.source).not.toMatch(/^common practice/i);
  });
});
