/** A grower's own rule file: read like the built-in one, with all its problems at their places. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { problemLine } from "../../src/problem.js";
import { mergeRules } from "../../src/rules/read-rules.js";
import type { FeedRule } from "../../src/rules/rule.js";
import { loadTables } from "../../src/tables.js";
import { readOwnRules } from "../support/a-garden.js";

const { referenceStockGPerL } = loadTables();

const good = `version: 1
rules:
  - id: my-tomatoes
    crops: [tomatoes]
    stages: [flowering, fruit-set]
    rate: 10 mL in 4 L
    interval: { shortest: 7 days, target: 10 days, longest: 2 weeks }
`;

function rules(text: string): FeedRule[] {
  const read = readOwnRules(text);
  if (!read.ok) throw new Error(read.problems.map(problemLine).join("\n"));
  return read.value;
}

function problems(text: string): string[] {
  const read = readOwnRules(text);
  return read.ok ? [] : read.problems.map(problemLine);
}

/** The good file with a line in the place of the one that begins like it, or added to the rule. */
function withLine(line: string, instead = `${line.split(":")[0] ?? ""}:`): string {
  const lines = good.trimEnd().split("\n");
  const at = lines.findIndex((l) => l.trim().startsWith(instead));
  if (at === -1) lines.push(`    ${line}`);
  else lines[at] = `    ${line}`;
  return `${lines.join("\n")}\n`;
}

describe("a rule of the grower's own", () => {
  test("needs only crop, stages, rate and interval; the rest is filled in", () => {
    expect(rules(good)).toEqual([
      {
        id: "my-tomatoes",
        crops: ["tomato"],
        groups: [],
        stages: ["flowering", "fruit-set"],
        route: "drench",
        disorder: "blossom-end rot",
        rateMlPerL: 2.5,
        calciumMgPerL: 2.5 * referenceStockGPerL,
        interval: { shortestDays: 7, targetDays: 10, longestDays: 14 },
        firstWithinDays: 10,
        highestRateMlPerL: 5,
        limitsReason: "the rule sets this limit",
        stopBeforeHarvestDays: 0,
        stopBeforeLastPickDays: 0,
        evidence: "common-practice",
        byDefault: true,
        reason: "the grower's own rule",
        source: "the grower's own rule",
        own: true,
      },
    ]);
  });

  test("keeps all that it says", () => {
    const more = [
      "    groups: [cucurbit]",
      "    route: foliar",
      "    disorder: tipburn",
      `    calcium: ${Math.round(2.5 * referenceStockGPerL)} mg/L`,
      "    first_within: 3 days",
      "    highest_rate: 3 mL per L",
      "    limits_reason: my leaves burnt",
      "    stop_before_harvest: 2 weeks",
      "    stop_before_last_pick: 3 weeks",
      "    highest_temperature: 77 F",
      "    feedings: 4",
      "    habit: bush",
      "    evidence: disputed",
      "    by_default: false",
      "    reason: it worked for my neighbour",
      "    source: my neighbour",
    ];
    expect(rules(`${good}${more.join("\n")}\n`)[0]).toMatchObject({
      groups: ["cucurbit"],
      route: "foliar",
      disorder: "tipburn",
      firstWithinDays: 3,
      highestRateMlPerL: 3,
      limitsReason: "my leaves burnt",
      stopBeforeHarvestDays: 14,
      stopBeforeLastPickDays: 21,
      highestTemperatureC: 25,
      feedings: 4,
      habit: "bush",
      evidence: "disputed",
      byDefault: false,
      reason: "it worked for my neighbour",
      source: "my neighbour",
    });
  });

  test("for a group, or for a crop that lacks nothing, guards against a lack of calcium", () => {
    expect(rules(withLine("groups: [root]", "crops:"))[0]?.disorder).toBe("a lack of calcium");
    expect(rules(withLine("crops: [kale]"))[0]?.disorder).toBe("a lack of calcium");
  });
});

describe("each problem stands at its line and column, with the way to mend it", () => {
  test.each([
    [
      "crops: [tomato, tomatoe]",
      "my-rules.yaml:4:21: the crop `tomatoe` is not known: did you mean `tomato`?",
    ],
    [
      "groups: [cucurbits]",
      "my-rules.yaml:8:14: the crop group `cucurbits` is not known: did you mean `cucurbit`?",
    ],
    [
      "rate: 2.5 mL",
      "my-rules.yaml:6:11: `2.5 mL` is not a rate: write it like 2.5 mL per L, 10 mL in 4 L or 2 tsp per gal",
    ],
    [
      "rate: 1 L per L",
      "my-rules.yaml:6:11: `1 L per L` is too large to be meant: check the number and the unit; 0.01 to 100 mL per L is understood",
    ],
    [
      "rate: 0 mL per L",
      "my-rules.yaml:6:11: `0 mL per L` is too small to be meant: check the number and the unit; 0.01 to 100 mL per L is understood",
    ],
    [
      "interval: { shortest: 12 days, target: 10 days, longest: 14 days }",
      "my-rules.yaml:7:15: the interval is not in order: 12 days, 10 days, 14 days: let the shortest be no more than the target, and the target no more than the longest",
    ],
    [
      "interval: { shortest: 7 days, target: 20 days, longest: 14 days }",
      "my-rules.yaml:7:15: the interval is not in order: 7 days, 20 days, 14 days: let the shortest be no more than the target, and the target no more than the longest",
    ],
    [
      "interval: { shortest: 7 days, target: 10 days, longest: 1/0 days }",
      "my-rules.yaml:7:61: `1/0 days` divides by zero: write it like 14 days or 2 weeks",
    ],
    [
      "interval: { shortest: 7 days, target: 10 days, longest: 3000 weeks }",
      "my-rules.yaml:7:61: `3000 weeks` is too large to be meant: check the number and the unit; 1 to 120 days is understood",
    ],
    [
      "interval: { shortest: 1 hour, target: 10 days, longest: 14 days }",
      "my-rules.yaml:7:27: `1 hour` is too small to be meant: check the number and the unit; 1 to 120 days is understood",
    ],
    [
      "highest_rate: 2 mL per L",
      "my-rules.yaml:8:19: the highest rate is below the rate: raise it or lower the rate",
    ],
    [
      "calcium: 100 mg/L",
      `my-rules.yaml:8:14: the rate brings ${Math.round(2.5 * referenceStockGPerL)} mg/L at ${referenceStockGPerL} g of calcium per litre of stock, not 100: leave \`calcium\` out, or mend one of the two`,
    ],
    [
      "calcium: 7 dH",
      "my-rules.yaml:8:14: `7 dH` is a hardness, a concentration is needed: write a concentration like 5 g/L or 40 mg/L",
    ],
    [
      "first_within: 800 days",
      "my-rules.yaml:8:19: `800 days` is too large to be meant: check the number and the unit; 0 to 366 days is understood",
    ],
    [
      "stop_before_harvest: a week",
      "my-rules.yaml:8:26: `a week` is not a number with a unit: write it like 14 days or 2 weeks",
    ],
    [
      "stop_before_last_pick: 800 days",
      "my-rules.yaml:8:28: `800 days` is too large to be meant: check the number and the unit; 0 to 366 days is understood",
    ],
    [
      "route: foliar\n    highest_temperature: 27",
      "my-rules.yaml:9:26: `highest_temperature` is the number 27 without a unit: write the unit behind the number, like 27 C",
    ],
    [
      "route: foliar\n    highest_temperature: 27 degrees",
      "my-rules.yaml:9:26: `27 degrees` is not said to be C or F: write it like 20 C or 68 F",
    ],
    [
      "route: foliar\n    highest_temperature: 80 C",
      "my-rules.yaml:9:26: `80 C` is too large to be meant: check the number and the unit; 5 to 45 C is understood",
    ],
    [
      "highest_temperature: 27 C",
      "my-rules.yaml:8:26: a drench has no highest temperature: leave it out, or write `route: foliar` for a spray",
    ],
    ["feedings: 0", "my-rules.yaml:8:15: `feedings` is 0, too small: it is 1 or more, like 4"],
    ["feedings: 51", "my-rules.yaml:8:15: `feedings` is 51, too large: it is 50 or less, like 4"],
    [
      "feedings: four",
      "my-rules.yaml:8:15: `feedings` is four, a whole number is needed: write it like 4",
    ],
    [
      "feedings: 2.5",
      "my-rules.yaml:8:15: `feedings` is 2.5, a whole number is needed: write it like 4",
    ],
    [
      "habit: standard",
      "my-rules.yaml:8:12: `habit` cannot be standard: it is one of bush, cordon",
    ],
    [
      "stages: [flowring]",
      "my-rules.yaml:5:14: this cannot be flowring: did you mean `flowering`?",
    ],
    [
      "evidence: rumour",
      "my-rules.yaml:8:15: `evidence` cannot be rumour: it is one of published, common-practice, cause-unclear, disputed, advised-against",
    ],
    [
      "rates: 2 mL per L",
      "my-rules.yaml:8:5: the key `rates` is not known here: did you mean `rate`?",
    ],
  ])("%s", (line, ...expected) => {
    expect(problems(withLine(line))).toEqual(expected);
  });

  test("a rule without a crop", () => {
    expect(problems(good.replace("    crops: [tomatoes]\n", ""))).toEqual([
      "my-rules.yaml:3:5: the rule names no crop: add `crops: [tomato]` or `groups: [solanaceous]`",
    ]);
  });

  test("a habit that none of its crops has a choice of", () => {
    const ofKale = good.replace("[tomatoes]", "[kale]\n    habit: bush");
    expect(problems(ofKale)).toEqual([
      "my-rules.yaml:5:12: no crop of this rule grows both as a bush and as a cordon: leave `habit` out; it is for tomato",
    ]);
  });

  test("an id used twice", () => {
    const second = good.split("\n").slice(2).join("\n");
    expect(problems(good + second)).toEqual([
      "my-rules.yaml:8:9: the rule id `my-tomatoes` is used twice: give each rule an id of its own",
    ]);
  });

  test("several at once, down the file", () => {
    const text = good.replace("tomatoes]", "tomatoe]").replace("10 mL in 4 L", "10 mL");
    expect(problems(text).map((line) => line.split(":").slice(0, 3).join(":"))).toEqual([
      "my-rules.yaml:4:13",
      "my-rules.yaml:6:11",
    ]);
  });

  test("a file that is no rule file", () => {
    expect(problems("version: 1\n")).toEqual([expect.stringContaining("`rules` is missing")]);
    expect(problems("")).toEqual([expect.stringContaining("the file is empty")]);
    expect(problems("version: 1\nrules: []\n")).toEqual([
      expect.stringContaining("`rules` is empty"),
    ]);
  });
});

describe("merging", () => {
  const { builtInRules } = loadTables();

  test("the grower's rules stand before the built-in ones", () => {
    const merged = mergeRules(builtInRules, rules(good));
    expect(merged[0]?.id).toBe("my-tomatoes");
    expect(merged.slice(1)).toEqual(builtInRules);
  });

  test("and take the place of one with their id", () => {
    const [own] = rules(good.replace("my-tomatoes", "solanaceous-drench"));
    const merged = mergeRules(builtInRules, own ? [own] : []);
    expect(merged.filter((rule) => rule.id === "solanaceous-drench")).toEqual([own]);
    expect(merged).toHaveLength(builtInRules.length);
  });
});

test("built-in rules are not the grower's own", () => {
  for (const rule of loadTables().builtInRules) expect(rule.own, rule.id).toBe(false);
});
