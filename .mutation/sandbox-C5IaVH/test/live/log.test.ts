// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays, day, daysBetween } from "../../src/dates.js";
import { shortDay } from "../../src/garden/index.js";
import {
  aheadDays,
  fedOf,
  givenDays,
  growing,
  intervalOf,
  planOn,
  problemsOn,
} from "./a-live-garden.js";

const inHand = {
  stock: { keep: "fridge", batches: [{ id: "B1", made: "2027-05-10", volume: "1 L" }] },
};
const toms = (on: string, more: object = {}): object => ({ on, planting: "toms", ...more });

describe("the next feeding", () => {
  test.each(["2027-06-18", "2027-06-20", "2027-06-23"])(
    "is counted from the day really given, %s",
    (on) => {
      const plan = planOn("2027-06-24", { log: [toms(on)] });
      const { shortestDays, longestDays } = intervalOf(plan);
      const next = fedOf(plan).find(({ mix }) => !mix.given);
      expect(next?.feeding.window).toEqual({
        earliest: addDays(day(on), shortestDays),
        latest: addDays(day(on), longestDays),
      });
      expect(next?.feeding.inWindow).toBe(true);
    },
  );

  test("is counted from the last of several, in whatever order they are written", () => {
    const log = [toms("2027-06-20"), toms("2027-06-06")];
    const plan = planOn("2027-06-24", { log });
    expect(plan.rounds).toEqual(planOn("2027-06-24", { log: [...log].reverse() }).rounds);
    expect(givenDays(plan)).toEqual(["2027-06-06", "2027-06-20"]);
    const { shortestDays, longestDays } = intervalOf(plan);
    const [next = ""] = aheadDays(plan);
    const gapDays = daysBetween(day("2027-06-20"), day(next));
    expect(gapDays >= shortestDays && gapDays <= longestDays).toBe(true);
  });

  test("goes on counting feedings of its course", () => {
    const plan = planOn("2027-07-06", { log: [toms("2027-06-18"), toms("2027-07-02")] });
    const numbers = fedOf(plan).map(({ feeding }) => feeding.number);
    expect(numbers).toEqual(numbers.map((_, i) => i + 1));
    expect(numbers.length).toBeGreaterThan(2);
  });

  test("given too soon before a course begins keeps its distance", () => {
    const first = fedOf(planOn("2027-03-01"))[0]?.day ?? "";
    const early = addDays(day(first), -3);
    const plan = planOn(early, { log: [toms(early)] });
    const [next = ""] = aheadDays(plan);
    expect(daysBetween(day(early), day(next))).toBeGreaterThanOrEqual(
      intervalOf(plan).shortestDays,
    );
  });

  test("of a later course does not count one given in an earlier as its own", () => {
    const ownRules = `version: 1
rules:
  - id: tomato-cordon-drench
    crops: [tomato]
    stages: [flowering, harvest]
    disorder: blossom-end rot
    rate: 10 mL in 4 L
    interval: { shortest: 10 days, target: 14 days, longest: 18 days }
    reason: Two spans with a hole between them.
`;
    const inFlower = "2027-06-18";
    const harvestDays = (today: string, differs: object): string[] =>
      fedOf(planOn(today, differs, { ownRules }))
        .filter(({ feeding }) => feeding.stage === "harvest")
        .map((fed) => fed.day);
    const untouched = harvestDays("2027-03-01", {});
    expect(untouched.length).toBeGreaterThan(1);
    expect(harvestDays("2027-06-24", { log: [toms(inFlower)] })).toEqual(untouched);
    expect(planOn("2027-06-24", { log: [toms(inFlower)] }, { ownRules }).notes).toEqual([]);
  });
});

describe("the past", () => {
  test("is as it was logged: its days, its amounts, its bottle", () => {
    const log = [
      toms("2027-06-05", { stock: "31 mL", batch: "B1" }),
      toms("2027-06-19", { stock: "17.5 mL", batch: "B1" }),
    ];
    const plan = planOn("2027-06-24", { ...inHand, log });
    const past = fedOf(plan).filter(({ mix }) => mix.given);
    expect(past.map(({ day: on, round, mix }) => [on, round.given, mix.stockMl])).toEqual([
      ["2027-06-05", true, 31],
      ["2027-06-19", true, 17.5],
    ]);
    expect(past.map(({ mix }) => mix.pours?.map(({ batch, ml }) => [batch, ml]))).toEqual([
      [["B1", 31]],
      [["B1", 17.5]],
    ]);
    expect(plan.stock?.inHand?.[0]?.leftMl).toBeCloseTo(1000 - 31 - 17.5, 6);
  });

  test("brings the calcium of the bottle it was poured from", () => {
    const strength = {
      batches: [{ id: "B1", made: "2027-05-10", volume: "1 L", strength: "8 g/L" }],
    };
    const log = [toms("2027-06-05", { stock: "30 mL", batch: "B1" })];
    const [given] = fedOf(planOn("2027-06-24", { stock: strength, log }));
    expect(given?.mix.calciumMgPerL).toBeCloseTo((30 * 8) / 12, 6);
  });

  test("that is not in the log was not given", () => {
    const planned = fedOf(planOn("2027-03-01")).map((fed) => fed.day);
    const plan = planOn("2027-07-06", { log: [toms("2027-07-02")] });
    expect(planned.some((on) => on < "2027-07-02")).toBe(true);
    expect(
      fedOf(plan)
        .filter(({ day: on }) => on < "2027-07-06")
        .map((fed) => fed.day),
    ).toEqual(["2027-07-02"]);
  });

  test("of a garden that keeps no log is as planned", () => {
    expect(fedOf(planOn("2027-07-05")).map((f) => [f.day, f.round.given])).toEqual(
      fedOf(planOn("2027-03-01")).map((f) => [f.day, undefined]),
    );
  });

  test("with two entries of one day is one feeding of both", () => {
    const batches = [
      { id: "B1", made: "2027-05-10", volume: "1 L" },
      { id: "B2", made: "2027-05-11", volume: "1 L" },
    ];
    const log = [
      toms("2027-06-19", { stock: "10 mL", batch: "B1" }),
      toms("2027-06-19", { stock: "20 mL", batch: "B2" }),
    ];
    const plan = planOn("2027-06-24", { stock: { keep: "fridge", batches }, log });
    const [given, ...others] = fedOf(plan).filter(({ mix }) => mix.given);
    expect(others).toEqual([]);
    expect(given?.mix.stockMl).toBe(30);
    expect(given?.mix.pours?.map(({ batch, ml }) => [batch, ml])).toEqual([
      ["B1", 10],
      ["B2", 20],
    ]);
  });

  test("without an amount shows what the plan would have given, from no bottle", () => {
    const [given] = fedOf(planOn("2027-06-24", { ...inHand, log: [toms("2027-06-19")] }));
    expect(given?.mix).toMatchObject({ given: true, stockMl: 34 });
    expect(given?.mix).not.toHaveProperty("pours");
  });

  test("of a bed is shared out by water", () => {
    const beds = growing({ water: "6 L" }, { id: "more", water: "3 L" });
    const log = [{ on: "2027-06-19", bed: "south", stock: "18 mL" }];
    const plan = planOn("2027-06-24", { ...beds, log });
    const round = plan.rounds.find((r) => r.day === "2027-06-19");
    expect(round).toMatchObject({ given: true, stockMl: 18, waterL: 9 });
    expect(givenDays(plan, "more")).toEqual(["2027-06-19"]);
  });

  test("of a whole round is of all that was due then", () => {
    const beds = growing({}, { id: "late", transplanted: "2027-08-01" });
    const plan = planOn("2027-06-24", { ...beds, log: [{ on: "2027-06-19" }] });
    expect(givenDays(plan)).toEqual(["2027-06-19"]);
    expect(givenDays(plan, "late")).toEqual([]);
  });

  test("and what is still to do today stand side by side", () => {
    const beds = growing({ water: "6 L" }, { id: "more", water: "3 L" });
    const on = fedOf(planOn("2027-03-01", beds))[0]?.day ?? "";
    const plan = planOn(on, { ...beds, log: [toms(on, { stock: "15 mL" })] });
    const today = plan.rounds.find((r) => r.day === on);
    const mixes = today?.beds.flatMap((bed) => bed.mixes) ?? [];
    expect(today).not.toHaveProperty("given");
    expect(mixes.map((mix) => [mix.feedings[0]?.planting, mix.given]).sort()).toEqual([
      ["more", undefined],
      ["toms", true],
    ]);
  });
});

describe("a missed round", () => {
  const log = [toms("2027-06-18")];

  test("is noticed, and the plan mends itself from today", () => {
    const plan = planOn("2027-07-12", { log });
    const { longestDays, shortestDays } = intervalOf(plan);
    const due = addDays(day("2027-06-18"), longestDays);
    expect(plan.notes).toMatchObject([{ code: "missed", planting: "toms", day: "2027-07-12" }]);
    expect(plan.notes[0]?.message).toContain(
      `was due by ${shortDay(due, "metric")} and none was given since`,
    );
    const days = aheadDays(plan);
    expect(days[0]).toBe("2027-07-12");
    for (const [i, on] of days.entries()) {
      const before = days[i - 1];
      if (before === undefined) continue;
      const gap = daysBetween(day(before), day(on));
      expect(gap).toBeGreaterThanOrEqual(shortestDays);
      expect(gap).toBeLessThanOrEqual(longestDays);
    }
  });

  test("is mended on the first day the grower can", () => {
    const feeding = { days: ["wed"], away: [{ from: "2027-07-13", to: "2027-07-16" }] };
    const plan = planOn("2027-07-12", { log, feeding });
    expect(aheadDays(plan)[0]).toBe("2027-07-21");
  });

  test("too late to mend is still told", () => {
    const plan = planOn("2027-09-30", { ...growing({ picked_until: "2027-08-20" }), log });
    expect(aheadDays(plan)).toEqual([]);
    expect(plan.notes[0]?.message).toContain("no day is left for it");
  });

  test("and three more leave none of the four, and the plan says so", () => {
    const plan = planOn("2027-09-30", { log });
    expect(aheadDays(plan)).toEqual([]);
    expect(plan.plantings[0]?.feeding).toMatchObject({
      why: "The rule gives 4 feedings, and 3 of them passed without.",
      key: "through: harvest",
    });
  });

  test("is none where the window is still open", () => {
    expect(planOn("2027-07-05", { log }).notes).toEqual([]);
  });

  test("is none in a garden that keeps no log", () => {
    expect(planOn("2027-07-05").notes).toEqual([]);
  });
});

describe("what cannot be, or has no place", () => {
  test("an entry or a sign of a day to come is a problem at its day", () => {
    const found = problemsOn("2027-06-24", {
      log: [toms("2027-06-20"), toms("2027-06-25")],
      signs: [{ on: "2027-06-26", planting: "toms", sign: "white-crust" }],
    });
    expect(found.map(({ code }) => code)).toEqual(["log-in-future", "sign-in-future"]);
    expect(found[0]?.message).toBe("given on 2027-06-25, which is after today, 2027-06-24");
    expect(found[0]?.mend).not.toBe("");
    const line = found[0]?.at.line ?? 0;
    expect(found[1]?.at.line).toBeGreaterThan(line);
  });

  test("a planting that no rule feeds is pointed out, and its stock is gone", () => {
    const plan = planOn("2027-06-24", {
      ...inHand,
      ...growing({}, { id: "basil", crop: "basil" }),
      log: [{ on: "2027-06-20", planting: "basil", stock: "25 mL", batch: "B1" }],
    });
    expect(plan.notes.filter(({ code }) => code === "log")).toMatchObject([
      { planting: "basil", day: "2027-06-20" },
    ]);
    expect(plan.stock?.inHand?.[0]?.leftMl).toBeCloseTo(975, 6);
  });

  test.each(["2027-03-05", "2027-10-20"])(
    "a feeding on %s, outside the life reckoned, is kept and pointed out",
    (on) => {
      const log = [toms(on, { stock: "25 mL" })];
      const plan = planOn("2027-10-25", {
        ...growing({
          transplanted: "2027-05-20",
          days_to_harvest: undefined,
          picked_until: "2027-10-10",
        }),
        log,
      });
      expect(givenDays(plan)).toEqual([on]);
      expect(plan.notes.filter(({ code }) => code === "log")).toMatchObject([{ day: on }]);
    },
  );

  test("an entry for a planting that is gone from the file tells how to keep it", () => {
    const found = problemsOn("2027-06-24", { log: [{ on: "2027-06-01", planting: "zucchini-1" }] });
    expect(found[0]?.mend).toContain("one that is gone stays in its bed, with `removed:`");
  });
});

describe("a planting fed both ways", () => {
  const ownRules = `version: 1
rules:
  - &rule
    id: onto-soil
    crops: [tomato]
    stages: [flowering, fruit-set, fruit-growth]
    route: drench
    disorder: blossom-end rot
    rate: 10 mL in 4 L
    interval: { shortest: 10 days, target: 14 days, longest: 18 days }
    reason: Tried here.
  - id: onto-leaves
    crops: [tomato]
    stages: [flowering, fruit-set, fruit-growth]
    route: foliar
    disorder: blossom-end rot
    rate: 10 mL in 4 L
    interval: { shortest: 10 days, target: 14 days, longest: 18 days }
    reason: Tried here.
`;
  const beds = growing({ feed: "both", spray: "2 L", water: "8 L" });
  const gapsOf = (log: object[]) => {
    const plan = planOn("2027-06-24", { ...beds, log }, { ownRules });
    return (["drench", "foliar"] as const).map(
      (route) =>
        fedOf(plan).find(({ mix }) => mix.route === route && !mix.given)?.feeding.window.earliest,
    );
  };

  test("counts an entry with a route for that route alone", () => {
    const [drench, foliar] = gapsOf([toms("2027-06-22", { route: "drench" }), toms("2027-06-15")]);
    expect([drench, foliar]).toEqual(["2027-07-02", "2027-06-25"]);
  });

  test("counts an entry without one for both, shared out by water", () => {
    const plan = planOn(
      "2027-06-24",
      { ...beds, log: [toms("2027-06-22", { stock: "30 mL" })] },
      { ownRules },
    );
    const given = fedOf(plan).filter(({ mix }) => mix.given);
    expect(given.map(({ mix }) => [mix.route, mix.stockMl])).toEqual([
      ["drench", 24],
      ["foliar", 6],
    ]);
  });
});

test("over random logs: the past is the log, nothing is planned before today, gaps hold", () => {
  const today = day("2027-07-01");
  const entries = fc.uniqueArray(
    fc.record({
      daysAgo: fc.integer({ min: 0, max: 60 }),
      ml: fc.option(fc.integer({ min: 1, max: 60 }), { nil: undefined }),
    }),
    { minLength: 1, maxLength: 8, selector: ({ daysAgo }) => daysAgo },
  );
  fc.assert(
    fc.property(entries, (drawn) => {
      const log = drawn.map(({ daysAgo, ml }) =>
        toms(addDays(today, -daysAgo), ml === undefined ? {} : { stock: `${ml} mL` }),
      );
      const plan = planOn(today, { log });
      const logged = drawn.map(({ daysAgo }) => addDays(today, -daysAgo)).sort();
      expect(givenDays(plan)).toEqual(logged);
      for (const { daysAgo, ml } of drawn)
        if (ml !== undefined)
          expect(
            fedOf(plan).find((fed) => fed.day === addDays(today, -daysAgo))?.mix.stockMl,
          ).toBeCloseTo(ml, 6);
      const ahead = aheadDays(plan);
      expect(ahead.every((on) => on >= today)).toBe(true);
      const last = logged.at(-1) ?? today;
      const [next] = ahead;
      if (next !== undefined)
        expect(daysBetween(last, day(next))).toBeGreaterThanOrEqual(intervalOf(plan).shortestDays);
    }),
    { numRuns: 60 },
  );
});
