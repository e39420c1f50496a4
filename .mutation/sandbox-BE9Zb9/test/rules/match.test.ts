/** Which rule feeds a planting, in which stages, and the words that say why. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import type { Crop } from "../../src/crops/crop.js";
import { day } from "../../src/dates.js";
import type { Planting } from "../../src/garden/garden.js";
import { matchRules, type RuleMatch } from "../../src/rules/match.js";
import { mergeRules } from "../../src/rules/read-rules.js";
import type { FeedRule } from "../../src/rules/rule.js";
import { plantingLife } from "../../src/stages/planting-life.js";
import { loadTables } from "../../src/tables.js";
import { aPlanting, type PlantingDiffers } from "../support/a-garden.js";

const { catalogue, builtInRules } = loadTables();
const place = {
  hemisphere: "north" as const,
  season: { from: day("2027-03-01"), to: day("2027-10-31") },
};

function cropOf(key: string): Crop {
  const crop = catalogue.crops.find((c) => c.key === key);
  if (crop === undefined) throw new Error(`no crop ${key}`);
  return crop;
}

function match(
  differs: PlantingDiffers,
  rules: readonly FeedRule[] = builtInRules,
  more: Partial<Planting> = {},
): RuleMatch {
  const planting = { ...aPlanting(differs), ...more };
  const crop = cropOf(planting.crop);
  return matchRules(planting, crop, plantingLife(planting, crop, place), rules);
}

const spans = ({ spans: found }: RuleMatch): string[] =>
  found.map(({ rule, route, from, to }) => `${rule.id} ${route} ${from} ${to}`);

function aRule(differs: Partial<FeedRule> = {}): FeedRule {
  return {
    id: "r",
    crops: ["tomato"],
    groups: [],
    stages: ["flowering", "fruit-set", "fruit-growth"],
    route: "drench",
    disorder: "blossom-end rot",
    rateMlPerL: 2.5,
    calciumMgPerL: 46,
    interval: { shortestDays: 10, targetDays: 14, longestDays: 18 },
    firstWithinDays: 10,
    highestRateMlPerL: 5,
    limitsReason: "a test says so",
    stopBeforeHarvestDays: 0,
    stopBeforeLastPickDays: 0,
    evidence: "common-practice",
    byDefault: true,
    reason: "because",
    source: "none",
    own: false,
    ...differs,
  };
}

// Tomato planted out on 20 May: flowering 17 June, fruit-set 26 June, fruit-growth 3 July,
// ripening 25 July, harvest from 1 August, here to 30 August.
const picked = { picked_until: "2027-08-30" };

describe("the stages that are fed", () => {
  test("are one span where one rule covers neighbours", () => {
    expect(spans(match(picked))).toEqual(["tomato-cordon-drench drench 2027-06-17 2027-08-01"]);
  });

  test("are several where a stage between them is not fed", () => {
    expect(spans(match({}, [aRule({ stages: ["vegetative", "fruit-set"] })]))).toEqual([
      "r drench 2027-05-20 2027-06-16",
      "r drench 2027-06-26 2027-07-02",
    ]);
  });

  test("begin no earlier than the day of planting out", () => {
    const tray = match({ sown: "2027-04-08" }, [aRule({ stages: ["seedling", "vegetative"] })]);
    expect(spans(tray)).toEqual(["r drench 2027-05-20 2027-06-16"]);
  });

  test("change their rule where another is for the next stage", () => {
    const rules = [
      aRule({ id: "early", stages: ["flowering"] }),
      aRule({ id: "late", stages: ["fruit-set", "fruit-growth"] }),
    ];
    expect(spans(match({}, rules))).toEqual([
      "early drench 2027-06-17 2027-06-25",
      "late drench 2027-06-26 2027-07-24",
    ]);
  });

  test("end so many days before harvest as the rule says", () => {
    const rule = aRule({ stages: ["fruit-growth", "ripening"], stopBeforeHarvestDays: 3 });
    // Harvest begins on 1 August: 29, 30 and 31 July stay free.
    expect(spans(match({}, [rule]))).toEqual(["r drench 2027-07-03 2027-07-28"]);
  });

  test("lose a stage that lies wholly in those days", () => {
    const rule = aRule({ stages: ["fruit-growth", "ripening"], stopBeforeHarvestDays: 10 });
    expect(spans(match({}, [rule]))).toEqual(["r drench 2027-07-03 2027-07-21"]);
  });

  test("go on in the harvest itself where the rule feeds it", () => {
    const rule = aRule({ stages: ["ripening", "harvest"], stopBeforeHarvestDays: 3 });
    expect(spans(match(picked, [rule]))).toEqual([
      "r drench 2027-07-25 2027-07-28",
      "r drench 2027-08-01 2027-08-30",
    ]);
  });

  test("end so many days before the last pick as the rule says: a fruit fed later is never picked", () => {
    const rule = aRule({ stages: ["fruit-growth", "harvest"], stopBeforeLastPickDays: 14 });
    // The last pick is on 30 August: the 14 days before it stay free.
    expect(spans(match(picked, [rule]))).toEqual([
      "r drench 2027-07-03 2027-07-24",
      "r drench 2027-08-01 2027-08-15",
    ]);
    expect(spans(match({ picked_until: "2027-08-20" }, [rule]))).toEqual([
      "r drench 2027-07-03 2027-07-24",
      "r drench 2027-08-01 2027-08-05",
    ]);
    // Taken out on 20 July, which nobody knew before: what was given until then stays its feeding.
    expect(spans(match({ removed: "2027-07-20" }, [rule]))).toEqual([
      "r drench 2027-07-03 2027-07-19",
    ]);
  });

  test("end before a planting that is taken out early, as before a harvest", () => {
    const rule = aRule({ stopBeforeHarvestDays: 3 });
    expect(spans(match({ removed: "2027-07-10" }, [rule]))).toEqual([
      "r drench 2027-06-17 2027-07-06",
    ]);
  });
});

describe("the rule that wins", () => {
  const forGroup = aRule({ id: "group", crops: [], groups: ["solanaceous"] });
  const forCrop = aRule({ id: "crop" });
  const ownGroup = aRule({ id: "own", crops: [], groups: ["solanaceous"], own: true });
  const winner = (rules: readonly FeedRule[]): unknown => match({}, rules).spans[0]?.rule.id;

  test("is the one for the crop, before that for its group, whatever their order", () => {
    expect(winner([forGroup, forCrop])).toBe("crop");
    expect(winner([forCrop, forGroup])).toBe("crop");
  });

  test("is the grower's own, also where a built-in one is more specific", () => {
    expect(winner([forCrop, ownGroup])).toBe("own");
  });

  test("is the first of equals", () => {
    expect(winner([aRule({ id: "first" }), aRule({ id: "second" })])).toBe("first");
  });

  test("leaves stages that it does not name to the next", () => {
    const narrow = aRule({ id: "narrow", stages: ["flowering"], own: true });
    expect(spans(match({}, [narrow, forGroup]))).toEqual([
      "narrow drench 2027-06-17 2027-06-25",
      "group drench 2027-06-26 2027-07-24",
    ]);
  });

  test("is sought for each route alone", () => {
    const spray = aRule({ id: "spray", route: "foliar" });
    expect(match({}, [forCrop, spray]).spans.map((span) => span.rule.id)).toEqual([
      "crop",
      "spray",
    ]);
  });

  test("from a grower's file takes the place of a built-in one with its id", () => {
    const own = aRule({ id: "tomato-cordon-drench", own: true, stages: ["flowering"] });
    expect(spans(match({}, mergeRules(builtInRules, [own])))).toEqual([
      "tomato-cordon-drench drench 2027-06-17 2027-06-25",
    ]);
  });
});

describe("a rule for a habit", () => {
  const bush = aRule({ id: "bush", habit: "bush" });
  const cordon = aRule({ id: "cordon", habit: "cordon" });
  const any = aRule({ id: "any" });
  const winner = (rules: readonly FeedRule[], more: Partial<Planting> = {}): unknown =>
    match({}, rules, more).spans[0]?.rule.id;

  test("is for plantings that grow so, or for the usual habit of the crop", () => {
    expect(winner([bush, cordon])).toBe("cordon");
    expect(winner([bush, cordon], { habit: "cordon" })).toBe("cordon");
    expect(winner([bush, cordon], { habit: "bush" })).toBe("bush");
    expect(winner([bush])).toBeUndefined();
  });

  test("comes before one for all of the crop, and after the grower's own", () => {
    expect(winner([any, cordon])).toBe("cordon");
    expect(winner([any, bush])).toBe("any");
    expect(
      winner([cordon, aRule({ id: "own", crops: [], groups: ["solanaceous"], own: true })]),
    ).toBe("own");
  });

  test("feeds bush tomatoes until their fruit has set, peppers and courgettes in the harvest too", () => {
    expect(spans(match({}, builtInRules, { habit: "bush" }))).toEqual([
      "tomato-bush-drench drench 2027-06-17 2027-07-02",
    ]);
    const pepper = match({ crop: "sweet-pepper", picked_until: "2027-10-10" });
    expect(pepper.spans).toHaveLength(1);
    expect(pepper.spans[0]?.rule.id).toBe("solanaceous-drench");
  });
});

describe("through: harvest", () => {
  const through = { through: "harvest" } as const;

  test("goes on with the rule to the end of the harvest, in the stages that it does not name too", () => {
    expect(spans(match(picked, [aRule({ stages: ["flowering", "fruit-set"] })], through))).toEqual([
      "r drench 2027-06-17 2027-08-30",
    ]);
  });

  test("begins no earlier than the rule's first stage", () => {
    expect(spans(match(picked, [aRule({ stages: ["fruit-growth"] })], through))).toEqual([
      "r drench 2027-07-03 2027-08-30",
    ]);
  });

  test("holds against a rule's stop before the last pick, not against that before harvest", () => {
    const toLast = aRule({ stages: ["flowering", "harvest"], stopBeforeLastPickDays: 14 });
    expect(spans(match(picked, [toLast], through))).toEqual(["r drench 2027-06-17 2027-08-30"]);
    const toHarvest = aRule({ stages: ["flowering"], stopBeforeHarvestDays: 3 });
    expect(spans(match(picked, [toHarvest], through))).toEqual(["r drench 2027-06-17 2027-07-28"]);
  });

  test("sprays no open flowers, where no rule says so itself", () => {
    const spray = aRule({ route: "foliar", stages: ["vegetative"] });
    expect(spans(match(picked, [spray], through))).toEqual([
      "r foliar 2027-05-20 2027-06-16",
      "r foliar 2027-06-26 2027-08-30",
    ]);
    const drench = aRule({ stages: ["vegetative"] });
    expect(spans(match(picked, [drench], through))).toEqual(["r drench 2027-05-20 2027-08-30"]);
    const asked = { crop: "strawberry", bloom: "2027-05-16", transplanted: undefined };
    const built = match({ ...asked, feed: "foliar" }, builtInRules, through);
    expect(built.spans.length).toBeGreaterThan(0);
    for (const { from, to } of built.spans)
      expect(from > "2027-05-16" || to < "2027-05-16", `${from} to ${to}`).toBe(true);
  });

  test("does not feed after the harvest", () => {
    const planting = { ...aPlanting(picked), ...through };
    const crop = cropOf("tomato");
    const life = plantingLife(planting, crop, place);
    const after = { from: day("2027-08-31"), to: day("2027-09-20"), bbch: "97", origin: "a test" };
    const spansWith = [...life.spans, { stage: "after-harvest" as const, ...after }];
    const matched = matchRules(planting, crop, { ...life, spans: spansWith }, [aRule()]);
    expect(spans(matched)).toEqual(["r drench 2027-06-17 2027-08-30"]);
  });

  test("does not feed what no rule feeds unasked", () => {
    const lettuce = { crop: "lettuce", transplanted: undefined, sown: "2027-04-01" };
    expect(match(lettuce, builtInRules, through).spans).toEqual([]);
  });
});

describe("what the grower asks for", () => {
  const onRequest = aRule({ id: "asked", byDefault: false, evidence: "advised-against" });
  const spray = aRule({ id: "spray", route: "foliar", byDefault: false, evidence: "disputed" });

  test("no feed at all is respected and said", () => {
    expect(match({ feed: false })).toEqual({
      spans: [],
      reason: "not fed, as the garden file says (`feed: false`)",
    });
  });

  test("a crop that no rule knows is not fed, for the crop's own reason", () => {
    const basil = match({ crop: "basil" });
    expect(basil.spans).toEqual([]);
    expect(basil.reason).toBe(cropOf("basil").reason);
  });

  test("lettuce is fed only on request, and the plan says why", () => {
    const lettuce = { crop: "lettuce", transplanted: undefined, sown: "2027-04-01" };
    const byRule = match(lettuce);
    expect(byRule.spans).toEqual([]);
    expect(byRule.reason).toMatch(
      /^not fed unless asked for \(`feed: true`\), as published work found no effect or advises against it: /,
    );
    expect(match({ ...lettuce, feed: true }).spans.map((span) => span.rule.id)).toEqual([
      "leafy-head-drench",
    ]);
  });

  test("feed: true takes what is fed anyway, or else the route with the best evidence", () => {
    const usual = aRule({ id: "usual" });
    expect(match({ feed: true }, [usual, spray]).spans.map((s) => s.rule.id)).toEqual(["usual"]);
    expect(match({ feed: true }, [onRequest, spray]).spans.map((s) => s.rule.id)).toEqual([
      "spray",
    ]);
  });

  test("a route named takes that route alone, both take both", () => {
    const rules = [aRule({ id: "usual" }), spray];
    expect(match({ feed: "foliar" }, rules).spans.map((s) => s.rule.id)).toEqual(["spray"]);
    expect(match({ feed: "drench" }, rules).spans.map((s) => s.rule.id)).toEqual(["usual"]);
    expect(match({ feed: "both" }, rules).spans.map((s) => s.rule.id)).toEqual(["usual", "spray"]);
  });

  test("a route that no rule gives is not fed, and the plan says which there is", () => {
    expect(match({ crop: "celery", feed: "foliar" })).toEqual({
      spans: [],
      reason: "not fed: no rule gives celery a foliar feed, only a drench one",
    });
  });

  test("what is asked for and has no rule is told so", () => {
    const asked = match({ crop: "onion", feed: true }).reason;
    expect(asked).toMatch(
      /^`feed:` asks for it, but no rule feeds onion: .* Needs no calcium feed/,
    );
    expect(match({ crop: "onion" }).reason).toMatch(/^Needs no calcium feed/);
  });

  test.each([
    ["published", "published work supports it only in some cases"],
    ["common-practice", "it is a practice without trials"],
    ["disputed", "published work disagrees on whether it helps"],
    ["advised-against", "published work found no effect or advises against it"],
  ] as const)("what is %s says so where it waits for a request", (evidence, words) => {
    expect(match({}, [aRule({ byDefault: false, evidence })]).reason).toBe(
      `not fed unless asked for (\`feed: true\`), as ${words}: because`,
    );
  });
});

describe("the reason", () => {
  test("names the disorder and the rule's reason, each rule once", () => {
    const rules = [
      aRule({ id: "a", stages: ["flowering", "fruit-growth"], reason: "First." }),
      aRule({ id: "b", stages: ["fruit-set"], disorder: "cracks", reason: "Second." }),
    ];
    expect(match({}, rules).reason).toBe("against blossom-end rot: First. against cracks: Second.");
  });

  test("tells when the planting never comes into a stage that is fed", () => {
    expect(match({ removed: "2027-06-01" })).toEqual({
      spans: [],
      reason:
        "not fed: it is not in a stage that is fed (flowering, fruit-set, fruit-growth, ripening, harvest)",
    });
  });
});
