/** From a garden file to the plan of its season. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { addDays, day, type Day, daysBetween, weekdayOf } from "../src/dates.js";
import { litersPerUsGallon } from "../src/garden/us-measures.js";
import type { CanMix, Plan } from "../src/season/season-plan.js";
import {
  aSeason,
  daysFed,
  type GardenDiffers,
  gardenText,
  placesOf,
  planFile,
  planted,
  referenceBottle,
} from "./support/a-garden.js";

const codes = (plan: Plan): string[] => plan.warnings.map((w) => `${w.code} ${w.planting ?? ""}`);
const mixes = (plan: Plan): CanMix[] =>
  plan.rounds.flatMap((round) => round.beds.flatMap((bed) => [...bed.mixes]));
const planting = (plan: Plan, id = "toms"): Plan["plantings"][number] => {
  const found = plan.plantings.find((p) => p.id === id);
  if (found === undefined) throw new Error(`no planting ${id}`);
  return found;
};

/** Tomatoes planted out on 20 May are fed from 17 June (flowering) to 24 July (before ripening). */
describe("a planting is fed", () => {
  test("from its first fed stage, at gaps that its rule allows, to the end of the last", () => {
    const days = daysFed(aSeason()) as Day[];
    expect(days.length).toBeGreaterThanOrEqual(2);
    expect((days[0] ?? "") >= "2027-06-17" && (days[0] ?? "") <= "2027-06-27").toBe(true);
    for (const [i, later] of days.slice(1).entries()) {
      const gap = daysBetween(days[i] as Day, later);
      expect(gap >= 10 && gap <= 18, `${gap} days`).toBe(true);
    }
    expect(daysBetween(days.at(-1) as Day, day("2027-07-24"))).toBeLessThan(18);
  });

  test("and the plan says why, by which rules and in which stages", () => {
    const toms = planting(aSeason());
    expect(toms).toMatchObject({ fed: true, rules: ["tomato-cordon-drench"], crop: "tomato" });
    expect(toms.reason).toMatch(/^against blossom-end rot: /);
    expect(toms.stages.map((stage) => stage.stage)).toContain("fruit-set");
    expect(aSeason().rules.map((rule) => rule.id)).toEqual(["tomato-cordon-drench"]);
  });

  test("each feeding tells stage, origin, rule, window and arithmetic", () => {
    const [mix] = mixes(aSeason({ ...referenceBottle, ...planted({ level: 1.5 }) }));
    expect(mix?.feedings[0]).toMatchObject({
      planting: "toms",
      rule: "tomato-cordon-drench",
      evidence: "common-practice",
      disorder: "blossom-end rot",
      stage: "flowering",
      number: 1,
      window: { earliest: "2027-06-17", latest: "2027-06-27" },
      inWindow: true,
      waterL: 12,
      baseRateMlPerL: 2.5,
      level: 1.5,
    });
    expect(mix?.feedings[0]?.stageOrigin).toContain("FAO Irrigation and Drainage Paper 56");
    expect(mix).toMatchObject({ waterL: 12, route: "drench" });
    expect(mix?.rateMlPerL).toBeCloseTo(3.75, 3);
    expect(mix?.exactStockMl).toBeCloseTo(45, 1);
  });
});

describe("what is not fed stays in the plan, with the reason", () => {
  test.each<[string, Record<string, unknown>, RegExp]>([
    ["a companion", { crop: "basil" }, /needs? no calcium|no calcium feed/i],
    ["what the grower does not want fed", { feed: false }, /^not fed, as the garden file says/],
    [
      "lettuce, unless asked for",
      { crop: "lettuce", sown: "2027-04-01", transplanted: undefined },
      /^not fed unless asked for .* published work found no effect or advises against it/,
    ],
    [
      "a planting fed in stages that lie outside the season",
      { sown: "2026-03-10", transplanted: undefined },
      /^not fed: the stages in which it is fed fall outside the season$/,
    ],
    ["a planting taken out too soon", { removed: "2027-06-01" }, /not in a stage that is fed/],
  ])("%s", (_, differs, reason) => {
    const plan = aSeason(planted(differs));
    expect(planting(plan).fed).toBe(false);
    expect(planting(plan).reason).toMatch(reason);
    expect(plan.rounds).toEqual([]);
    expect(plan.totals).toMatchObject({ rounds: 0, feedings: 0, stockMl: 0, waterL: 0 });
  });

  test("a bed without plantings, a garden of nothing but companions", () => {
    expect(aSeason({ beds: [{ id: "fallow", plantings: [] }] }).plantings).toEqual([]);
    expect(codes(aSeason(planted({ crop: "basil" })))).toEqual([]);
  });
});

describe("days", () => {
  test("are only those on which the grower feeds", () => {
    const plan = aSeason({ feeding: { days: ["wed"] } });
    for (const fed of daysFed(plan)) expect(weekdayOf(fed as Day)).toBe("wed");
    expect(codes(plan).filter((code) => code.startsWith("window-"))).toEqual([]);
  });

  test("never fall into a time away; what is late is named and fed as soon as it can be", () => {
    const away = [{ from: "2027-06-10", to: "2027-07-03" }];
    const plan = aSeason({ feeding: { away } });
    expect(daysFed(plan)[0]).toBe("2027-07-04");
    const late = plan.warnings.filter((warning) => warning.planting === "toms");
    expect(late).toHaveLength(1);
    expect(late[0]).toMatchObject({
      code: "window-served-late",
      day: "2027-07-04",
      bed: "south",
      message:
        "toms (tomato): no feeding day falls from Thu 17 Jun to Sun 27 Jun, and you are away from Thu 10 Jun to Sat 3 Jul; it is fed on Sun 4 Jul, 7 days late",
      mend: "have someone feed it from Thu 17 Jun to Sun 27 Jun",
      tellOn: "2027-06-09",
    });
    const feeding = mixes(plan)[0]?.feedings[0];
    expect(feeding).toMatchObject({ inWindow: false, number: 1 });
  });

  test("one day late is one day", () => {
    const away = [{ from: "2027-06-10", to: "2027-06-27" }];
    expect(aSeason({ feeding: { away } }).warnings[0]?.message).toMatch(/Mon 28 Jun, 1 day late$/);
  });

  test("that do not come at all leave a warning, and no feeding", () => {
    const away = [{ from: "2027-06-01", to: "2027-08-31" }];
    const plan = aSeason({ ...planted({ picked_until: "2027-08-22" }), feeding: { away } });
    expect(plan.rounds).toEqual([]);
    expect(codes(plan)).toEqual(["window-not-served toms"]);
    expect(plan.warnings[0]?.message).toBe(
      "toms (tomato): no feeding day falls from Thu 17 Jun to Sun 27 Jun, and you are away from Tue 1 Jun to Tue 31 Aug; nor can it be fed later, before its feeding ends on Sat 24 Jul",
    );
    expect(planting(plan).fed).toBe(true);
  });

  test("are shared by plantings whose windows allow it", () => {
    const plan = aSeason(
      planted(
        {},
        { id: "peppers", crop: "pepper", transplanted: "2027-05-24" },
        { id: "late", transplanted: "2027-05-26" },
      ),
    );
    const all = new Set(plan.rounds.map((round) => round.day));
    const apart = ["toms", "peppers", "late"].map((id) => daysFed(plan, id).length);
    expect(all.size).toBeLessThan(apart.reduce((sum, n) => sum + n, 0));
    expect(all.size).toBeLessThanOrEqual(Math.max(...apart) + 1);
  });

  test("follow a planting's own interval", () => {
    const gaps = (interval: string): number[] => {
      const days = daysFed(aSeason(planted({ interval }))) as Day[];
      return days.slice(1).map((later, i) => daysBetween(days[i] as Day, later));
    };
    // The rule's play, 4 days either way, goes with the wish; its bounds of 10 and 18 days stay.
    for (const gap of gaps("10 days")) expect(gap >= 10 && gap <= 14, `${gap}`).toBe(true);
    for (const gap of gaps("18 days")) expect(gap >= 14 && gap <= 18, `${gap}`).toBe(true);
  });

  test("of a round have the time that the grower gives", () => {
    expect(aSeason({ feeding: { time: "18:30" } }).rounds[0]?.timeOfDay).toBe("18:30");
    expect(aSeason().rounds[0]).not.toHaveProperty("timeOfDay");
  });
});

describe("southern seasons across New Year", () => {
  const southern: GardenDiffers = {
    timezone: "Australia/Melbourne",
    season: { from: "2027-09-01", to: "2028-05-31" },
  };

  test("feed tomatoes planted out in November from December on", () => {
    const north = daysFed(aSeason());
    const plan = aSeason({ ...southern, ...planted({ transplanted: "2027-11-20" }) });
    const south = daysFed(plan);
    expect(plan.assumptions).toContain(
      "southern hemisphere, from the time zone Australia/Melbourne",
    );
    expect(south[0]?.slice(0, 7)).toMatch(/^2027-12$/);
    expect(south.at(-1)?.slice(0, 4)).toBe("2028");
    expect(south).toHaveLength(north.length);
  });

  test("spray apples from November's bloom to the summer", () => {
    const plan = aSeason({ ...southern, ...planted({ crop: "apple", transplanted: undefined }) });
    expect(plan.assumptions.join("\n")).toContain("full bloom on 5 Nov, usual for apple");
    const days = daysFed(plan);
    expect(days[0]?.startsWith("2027-11")).toBe(true);
    expect(days.at(-1)?.startsWith("2028-0")).toBe(true);
  });
});

describe("cans", () => {
  test("are shared by plantings of one bed with the same rate", () => {
    const both = planted({}, { id: "more", crop: "tomato", plants: 2 });
    const shared = mixes(aSeason({ ...referenceBottle, ...both })).find(
      (mix) => mix.feedings.length === 2,
    );
    expect(shared).toMatchObject({ waterL: 16, stockMl: 40 });
    expect(
      shared?.fills.map((fill) => `${fill.count} ${fill.waterText} ${fill.stockText}`),
    ).toEqual(["1 10 L 25 mL", "1 6 L 15 mL"]);
  });

  test("are apart where rates differ, the stronger first", () => {
    const plan = aSeason(planted({}, { id: "strong", level: 2 }));
    const round = plan.rounds.find((r) => r.beds[0]?.mixes.length === 2);
    expect(round?.beds[0]?.mixes.map((mix) => mix.feedings[0]?.planting)).toEqual([
      "strong",
      "toms",
    ]);
  });

  test("are apart for beds, which keep the garden's order", () => {
    const bed = (id: string): object => ({
      id,
      plantings: [{ id: `in-${id}`, crop: "tomato", plants: 3, transplanted: "2027-05-20" }],
    });
    const plan = aSeason({ beds: [bed("west"), bed("east")] });
    expect(plan.rounds[0]?.beds.map((b) => b.bed)).toEqual(["west", "east"]);
  });

  test("of sprays are sprayers, with the usual spray told", () => {
    const plan = aSeason(planted({ crop: "apple", transplanted: undefined, plants: 3 }));
    const [mix] = mixes(plan);
    expect(mix?.route).toBe("foliar");
    expect(mix?.fills[0]?.waterL).toBeLessThanOrEqual(2);
    expect(plan.assumptions).toContain("a sprayer of 2 L, as none is given (`sprayer:`)");
    expect(
      plan.assumptions.some((a) => /^toms: [\d.]+ L of spray in all, usual for the crop/.test(a)),
    ).toBe(true);
  });

  test("of sprays that the grower has told need no assumption", () => {
    const plan = aSeason({
      sprayer: "1 gal",
      amounts: "us",
      ...planted({ crop: "apple", transplanted: undefined, spray: "2 gal" }),
    });
    expect(mixes(plan)[0]?.waterL).toBeCloseTo(2 * litersPerUsGallon, 6);
    expect(mixes(plan)[0]?.fills[0]).toMatchObject({ count: 2, full: true, waterText: "1 gal" });
    expect(plan.assumptions.join("\n")).not.toContain("spray");
  });

  test("hold drench before spray where both are asked for", () => {
    const plan = aSeason(planted({ feed: "both", spray: "1 L" }));
    const round = plan.rounds.find((r) => r.beds[0]?.mixes.length === 2);
    expect(round?.beds[0]?.mixes.map((mix) => mix.route)).toEqual(["drench", "foliar"]);
  });
});

describe("the grower's own rules", () => {
  const own = (differs = ""): string => `version: 1
rules:
  - id: mine
    crops: [tomato]
    stages: [vegetative]
    rate: 2 mL per L
    interval: { shortest: 6 days, target: 7 days, longest: 8 days }
${differs}`;

  test("add to the built-in ones", () => {
    const plan = aSeason({}, own());
    expect(planting(plan).rules).toEqual(["mine", "tomato-cordon-drench"]);
    expect(daysFed(plan).length).toBeGreaterThan(daysFed(aSeason()).length);
  });

  test("set their own limits, which bound what a planting may wish for", () => {
    const text = gardenText(planted({ level: 1.5 }));
    const [place] = placesOf(text, own("    highest_rate: 2.5 mL per L\n"));
    expect(place).toMatch(/^beyond-limit \d+:\d+$/);
    const refused = planFile(text, own("    highest_rate: 2.5 mL per L\n"));
    expect(refused.ok ? "" : refused.problems[0]?.message).toContain(
      "3 mL per L is above the limit of the rule mine, 2.5 mL per L (the rule sets this limit)",
    );
  });
});

describe("wishes beyond a limit", () => {
  test("are refused for all plantings at once", () => {
    const text = gardenText(planted({ level: 3 }, { id: "more", interval: "30 days" }));
    expect(placesOf(text)).toEqual([
      expect.stringMatching(/^beyond-limit/),
      expect.stringMatching(/^beyond-limit/),
    ]);
  });
});

describe("the garden in the plan", () => {
  test("carries what outputs need", () => {
    expect(aSeason({ feeding: { time: "18:30", duration: "45 min" } }).garden).toEqual({
      id: "weir-cottage",
      name: "Weir Cottage",
      timezone: "Europe/Dublin",
      season: { from: "2027-03-01", to: "2027-10-31" },
      amounts: "metric",
      canL: 10,
      sprayerL: 2,
      timeOfDay: "18:30",
      durationMin: 45,
      calendar: {
        group: "round",
        remindersMinBefore: [30],
        color: "yellowgreen",
        refreshHours: 6,
      },
    });
  });

  test("totals count rounds, feedings, water and stock", () => {
    const plan = aSeason(planted({}, { id: "more" }));
    expect(plan.totals).toEqual({
      rounds: plan.rounds.length,
      feedings: daysFed(plan).length + daysFed(plan, "more").length,
      waterL: 12 * (daysFed(plan).length + daysFed(plan, "more").length),
      stockMl: mixes(plan).reduce((sum, mix) => sum + mix.stockMl, 0),
    });
  });

  test("is the same twice over", () => {
    expect(aSeason()).toEqual(aSeason());
  });
});

describe("a log from outside a planting's life", () => {
  test.each([addDays(day("2027-03-01"), 4), day("2027-10-20")])(
    "a feeding given on %s is kept as given, not a crash",
    (on) => {
      const plan = aSeason({ log: [{ on, planting: "toms", stock: "30 mL" }] });
      expect(plan.rounds.find((round) => round.day === on)).toMatchObject({ given: true });
    },
  );
});
