// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays, day, type Day, daysBetween, within } from "../../../src/dates.js";
import { ledgerMl, ledgerSum } from "../../../src/stock/ledger/ledger.js";
import type { MakingProblem, StockNeed, StockPlan } from "../../../src/stock/making-problem.js";
import { planStock } from "../../../src/stock/making/batches.js";
import { usualMaking as making } from "./making-cases.js";

const today = day("2027-05-01");
const season = { from: day("2027-03-01"), to: day("2027-10-31") };
const uncounted = { inHand: 0, gPerShell: 5, gPerL: 100 };

/** A feeding of that many mL of new stock. */
const need = (on: string, ml: number, id = on): StockNeed => {
  return { id, day: day(on), calciumMg: ml * 20, mostMl: 10_000 };
};
function problem(needs: readonly StockNeed[], more: Partial<MakingProblem> = {}): MakingProblem {
  return { today, season, away: [], needs, bottles: [], making, shells: uncounted, ...more };
}

describe("the stock of a season", () => {
  test("a batch has its three visits, use-by day, bottles, eggs and feedings", () => {
    const plan = planStock(problem([need("2027-06-12", 300), need("2027-06-19", 310)]));
    expect(plan.batches).toEqual([
      {
        id: "batch-1",
        number: 1,
        startOn: "2027-06-08",
        readyOn: "2027-06-12",
        useBy: "2027-06-26",
        steps: [
          { step: "dry-shells", day: "2027-06-08" },
          { step: "add-acid", day: "2027-06-10" },
          { step: "strain", day: "2027-06-12" },
        ],
        volumeMl: 610,
        bottles: 2,
        eggs: 13,
        shellG: 61,
        strengthGPerL: 20,
        serves: [
          { need: "2027-06-12", day: "2027-06-12", ml: 300 },
          { need: "2027-06-19", day: "2027-06-19", ml: 310 },
        ],
      },
    ]);
    expect(plan.shortages).toEqual([]);
    expect(plan.shells).toEqual({ eggs: 13, shellG: 61 });
  });

  test("bottles in hand come first, each feeding in mL of its bottle's strength", () => {
    const bottles = [
      {
        id: "B1",
        readyOn: day("2027-04-20"),
        useBy: day("2027-07-20"),
        leftMl: 260,
        strengthGPerL: 10,
      },
    ];
    const plan = planStock(
      problem([need("2027-05-12", 100), need("2027-05-19", 100)], { bottles }),
    );
    expect(plan.draws.map((d) => [d.day, d.batch, d.ml, d.calciumMg])).toEqual([
      ["2027-05-12", "B1", 200, 2000],
      ["2027-05-19", "B1", 60, 600],
      ["2027-05-19", "batch-1", 70, 1400],
    ]);
    expect(plan.changes.map((c) => [c.day, c.from, c.to])).toEqual([
      ["2027-05-12", undefined, "B1"],
      ["2027-05-19", "B1", "batch-1"],
    ]);
    expect(plan.account).toEqual([
      {
        batch: "B1",
        planned: false,
        openingMl: 260,
        madeMl: 0,
        givenMl: 260,
        thrownAwayMl: 0,
        closingMl: 0,
      },
      {
        batch: "batch-1",
        planned: true,
        openingMl: 0,
        madeMl: 250,
        givenMl: 70,
        thrownAwayMl: 180,
        closingMl: 0,
      },
    ]);
    expect(plan.discards).toEqual([
      { batch: "batch-1", useUpBy: "2027-06-02", doOn: "2027-06-02", ml: 180 },
    ]);
  });

  test("a batch of a name already on a bottle gets another", () => {
    const bottles = [{ id: "batch-1", readyOn: today, useBy: today, leftMl: 5, strengthGPerL: 10 }];
    const plan = planStock(problem([need("2027-06-12", 1300)], { bottles }));
    expect(plan.batches.map((b) => b.id)).toEqual(["batch-2", "batch-3"]);
  });

  test("a feeding before the first batch can be ready is named a shortage", () => {
    const plan = planStock(problem([need("2027-05-04", 30), need("2027-05-05", 30)]));
    expect(plan.shortages).toEqual([
      {
        need: "2027-05-04",
        day: "2027-05-04",
        ml: 30,
        reason: "too-soon",
        why: "batch 1 is bottled on Wed 5 May",
        mend: "feed on Wed 5 May or as soon after as you can, or list a bottle in hand under stock",
      },
    ]);
    expect(plan.batches.map((b) => b.readyOn)).toEqual(["2027-05-05"]);
  });

  test("a feeding that days away leave without a batch that keeps is named a shortage", () => {
    const away = [{ from: day("2027-06-01"), to: day("2027-06-30") }];
    const plan = planStock(problem([need("2027-06-14", 30), need("2027-06-15", 40)], { away }));
    expect(plan.batches.map((b) => b.readyOn)).toEqual(["2027-05-31"]);
    expect(plan.shortages).toMatchObject([{ need: "2027-06-15", ml: 40, reason: "away" }]);
    expect(plan.shortages[0]?.mend).toContain("between Tue 1 Jun and Tue 15 Jun");
  });

  test("shells are saved from the latest day that does", () => {
    const shells = { ...uncounted, perWeek: 7 };
    const plan = planStock(problem([need("2027-06-12", 500)], { shells }));
    expect(plan.shells).toEqual({ eggs: 10, shellG: 50, saveFrom: "2027-05-29" });
  });

  test("with shells short, what is lost is named, with the day saving had to begin", () => {
    const shells = { ...uncounted, perWeek: 7 };
    const needs = [need("2027-05-15", 500), need("2027-05-16", 500), need("2027-06-20", 300)];
    const plan = planStock(problem(needs, { shells }));
    // One batch of 1000 mL begun on 11 May takes 20 eggs; by then there are 10, for 500 mL.
    expect(plan.batches.map((b) => [b.readyOn, b.volumeMl])).toEqual([
      ["2027-05-15", 500],
      ["2027-06-20", 300],
    ]);
    expect(plan.shortages).toMatchObject([{ need: "2027-05-16", ml: 500, reason: "shells" }]);
    expect(plan.shells).toMatchObject({
      eggs: 16,
      saveFrom: "2027-05-01",
      shortage: { neededFrom: "2027-04-21", missingShells: 10, lostMl: 500, needs: ["2027-05-16"] },
    });
    expect(plan.shells.shortage?.message).toBe(
      "10 eggshells short: at 7 a week saving had to begin on Wed 21 Apr; 1 feeding loses 500 mL of stock in all",
    );
  });

  test("with shells short for one large batch, two smaller ones may still cover every feeding", () => {
    const shells = { ...uncounted, perWeek: 7 };
    const plan = planStock(problem([need("2027-05-15", 400), need("2027-05-27", 400)], { shells }));
    expect(plan.batches.map((b) => [b.readyOn, b.volumeMl])).toEqual([
      ["2027-05-15", 400],
      ["2027-05-27", 400],
    ]);
    expect(plan.shortages).toEqual([]);
    expect(plan.shells.shortage?.message).toContain("every feeding is still covered");
  });

  test("with no shells at all nothing is made, and every feeding is a shortage", () => {
    const shells = { ...uncounted, perWeek: 0 };
    const plan = planStock(problem([need("2027-05-15", 400)], { shells }));
    expect(plan.batches).toEqual([]);
    expect(plan.shortages).toMatchObject([{ ml: 400, reason: "shells" }]);
    expect(plan.shells.shortage?.message).toContain("no shells are kept");
  });

  test("a season of 1,000 feedings is planned", () => {
    const needs = Array.from({ length: 1000 }, (_, i) =>
      need(addDays(today, 5 + Math.floor(i / 6)), 1 + ((i * 37) % 60), `n${i}`),
    );
    const shells = { ...uncounted, perWeek: 21 };
    const plan = planStock(problem(needs, { shells }));
    expect(plan.batches.length).toBeGreaterThan(20);
  });

  test("a feeding before today and a repeated id are the caller's bugs", () => {
    expect(() => planStock(problem([need("2027-04-30", 10)]))).toThrow(RangeError);
    const twice = [need("2027-05-30", 10, "a"), need("2027-05-31", 10, "a")];
    expect(() => planStock(problem(twice))).toThrow(RangeError);
  });
});

const within200 = fc.integer({ min: 0, max: 200 });
const anyProblem: fc.Arbitrary<MakingProblem> = fc
  .record({
    needs: fc.array(
      fc.record({
        after: within200,
        calciumMg: fc.integer({ min: 0, max: 9000 }),
        mostMl: fc.integer({ min: 1, max: 600 }),
      }),
      { maxLength: 40 },
    ),
    bottles: fc.array(
      fc.record({
        made: fc.integer({ min: -100, max: 0 }),
        keeps: fc.integer({ min: 0, max: 150 }),
        leftMl: fc.integer({ min: 0, max: 9000 }).map((n) => n / 10),
        strengthGPerL: fc.constantFrom(0.18, 5, 16.5, 18.4),
      }),
      { maxLength: 4 },
    ),
    away: fc.array(fc.record({ after: within200, length: fc.integer({ min: 0, max: 25 }) }), {
      maxLength: 4,
    }),
    shelfLifeDays: fc.constantFrom(3, 14, 90),
    largestMl: fc.integer({ min: 15, max: 2000 }),
    perWeek: fc.option(fc.integer({ min: 0, max: 40 }), { nil: undefined }),
    inHand: fc.integer({ min: 0, max: 30 }),
  })
  .map((r) => ({
    today,
    season: { from: today, to: addDays(today, 150) },
    away: r.away.map((a) => ({
      from: addDays(today, a.after),
      to: addDays(today, a.after + a.length),
    })),
    needs: r.needs.map(({ after, ...n }, i) => ({ id: `n${i}`, day: addDays(today, after), ...n })),
    bottles: r.bottles.map(({ made, keeps, ...b }, i) => {
      const readyOn = addDays(today, made);
      return { id: `b${i}`, readyOn, useBy: addDays(readyOn, keeps), ...b };
    }),
    making: {
      ...making,
      shelfLifeDays: r.shelfLifeDays,
      largestMl: r.largestMl,
      smallestMl: Math.min(250, r.largestMl),
    },
    shells: {
      ...uncounted,
      inHand: r.inHand,
      ...(r.perWeek === undefined ? {} : { perWeek: r.perWeek }),
    },
  }));

const always = (check: (p: MakingProblem, plan: StockPlan) => void, numRuns = 200): void => {
  fc.assert(
    fc.property(anyProblem, (p) => {
      check(p, planStock(p));
    }),
    { numRuns },
  );
};
const sum = ledgerSum;

interface Life {
  readonly readyOn: Day;
  readonly useBy: Day;
  readonly ml: number;
  readonly planned: boolean;
}
const livesOf = (p: MakingProblem, plan: StockPlan): Map<string, Life> =>
  new Map<string, Life>([
    ...p.bottles.map((b) => [b.id, { ...b, ml: b.leftMl, planned: false }] as const),
    ...plan.batches.map((b) => [b.id, { ...b, ml: b.volumeMl, planned: true }] as const),
  ]);

describe("whatever the season", () => {
  test("no feeding uses a bottle that is expired, empty or not ready", () => {
    always((p, plan) => {
      const lives = livesOf(p, plan);
      const left = new Map([...lives].map(([id, life]) => [id, life.ml]));
      for (const draw of plan.draws) {
        const life = lives.get(draw.batch);
        expect(life && within(draw.day, { from: life.readyOn, to: life.useBy })).toBe(true);
        const after = ledgerMl((left.get(draw.batch) ?? 0) - draw.ml);
        expect(draw.ml).toBe(ledgerMl(draw.ml));
        expect(draw.ml > 0 && after >= 0).toBe(true);
        left.set(draw.batch, after);
      }
    });
  });

  test("bottles in hand are poured before new batches, earliest use-by first", () => {
    always((p, plan) => {
      const lives = livesOf(p, plan);
      const left = new Map([...lives].map(([id, life]) => [id, life.ml]));
      const turn = (id: string, life: Life): string =>
        `${life.planned ? 1 : 0} ${life.useBy} ${id}`;
      for (const draw of plan.draws) {
        const inTurn = [...lives]
          .filter(
            ([id, l]) =>
              (left.get(id) ?? 0) > 0 && within(draw.day, { from: l.readyOn, to: l.useBy }),
          )
          .map(([id, l]) => turn(id, l))
          .sort();
        expect(turn(draw.batch, lives.get(draw.batch) as Life)).toBe(inTurn[0]);
        left.set(draw.batch, ledgerMl((left.get(draw.batch) ?? 0) - draw.ml));
      }
    });
  });

  test("opening + made = given + thrown away + closing, bottle by bottle and in all", () => {
    always((p, plan) => {
      for (const a of plan.account)
        expect(ledgerSum([a.openingMl, a.madeMl])).toBe(
          ledgerSum([a.givenMl, a.thrownAwayMl, a.closingMl]),
        );
      expect(sum(plan.account.map((a) => a.givenMl))).toBe(sum(plan.draws.map((d) => d.ml)));
      expect(sum(plan.account.map((a) => a.thrownAwayMl))).toBe(
        sum(plan.discards.map((d) => d.ml)),
      );
      expect(sum(plan.account.map((a) => a.madeMl))).toBe(sum(plan.batches.map((b) => b.volumeMl)));
      expect(sum(plan.account.map((a) => a.openingMl))).toBe(sum(p.bottles.map((b) => b.leftMl)));
    });
  });

  test("every feeding gets its calcium within the most it may take, or what it lacks is named", () => {
    always((p, plan) => {
      for (const n of p.needs) {
        const lacking = plan.shortages.filter((s) => s.need === n.id);
        expect(lacking.length).toBeLessThanOrEqual(1);
        const poured = [
          ...plan.draws.filter((d) => d.need === n.id),
          ...lacking.map(({ ml }) => ({ ml, strengthGPerL: p.making.strengthGPerL })),
        ];
        const ml = sum(poured.map((d) => d.ml));
        const broughtMg = sum(poured.map((d) => d.ml * d.strengthGPerL));
        expect(ml).toBeLessThanOrEqual(n.mostMl);
        if (n.calciumMg === 0 || n.mostMl < 1) expect(ml).toBe(0);
        else {
          // The last pouring is rounded to the nearest mL, perhaps to none, and one is the least in all.
          const halfMg = 0.5 * Math.max(...[p.making, ...p.bottles].map((b) => b.strengthGPerL));
          const isAllItMayTake = ml > n.mostMl - 1 && broughtMg <= n.calciumMg + halfMg;
          const offMg = Math.abs(broughtMg - n.calciumMg);
          expect(isAllItMayTake || ml === 1 || offMg <= halfMg + 1e-6).toBe(true);
        }
      }
    });
  });

  test("a batch's visits keep their order and waits, on days the grower is there, from today on", () => {
    always((p, plan) => {
      for (const b of plan.batches) {
        const [dry, acid, strain] = b.steps.map((s) => s.day) as [Day, Day, Day];
        expect([dry, strain]).toEqual([b.startOn, b.readyOn]);
        expect(dry >= today).toBe(true);
        expect(daysBetween(dry, acid)).toBeGreaterThanOrEqual(making.dryDays);
        expect(daysBetween(acid, strain)).toBeGreaterThanOrEqual(making.reactionDays);
        expect(daysBetween(acid, strain)).toBeLessThanOrEqual(making.longestStandDays);
        for (const d of [dry, acid, strain])
          expect(p.away.some((span) => within(d, span))).toBe(false);
        expect(b.volumeMl).toBeLessThanOrEqual(p.making.largestMl);
        expect(b.serves.length).toBeGreaterThan(0);
      }
    });
  });

  test("shells never run out, and are counted for every batch", () => {
    always((p, plan) => {
      const { perWeek } = p.shells;
      let usedG = 0;
      for (const b of plan.batches) {
        usedG += b.shellG;
        if (perWeek === undefined) continue;
        const shells = p.shells.inHand + (perWeek * daysBetween(today, b.startOn)) / 7;
        expect(usedG).toBeLessThanOrEqual(shells * p.shells.gPerShell + 1e-9);
      }
      expect(plan.shells.shellG).toBeCloseTo(usedG, 6);
      if (perWeek === undefined) expect(plan.shells.shortage).toBeUndefined();
      const { saveFrom, shortage } = plan.shells;
      if (saveFrom !== undefined) expect(saveFrom >= today).toBe(true);
      if (shortage?.neededFrom !== undefined) expect(shortage.neededFrom < today).toBe(true);
      const forShells = plan.shortages.filter((s) => s.reason === "shells");
      expect(shortage?.lostMl ?? 0).toBe(sum(forShells.map((s) => s.ml)));
    });
  });

  test("the order in which needs, bottles and days away are given does not matter", () => {
    always((p, plan) => {
      const turned = {
        ...p,
        needs: [...p.needs].reverse(),
        bottles: [...p.bottles].reverse(),
        away: [...p.away].reverse(),
      };
      expect(planStock(turned)).toEqual(plan);
      expect(planStock(p)).toEqual(plan);
    });
  });

  test("more left in bottles of one strength never means more batches", () => {
    const batchesWith = (p: MakingProblem, moreMl: number): number => {
      const bottles = p.bottles.map((b) => {
        return { ...b, leftMl: b.leftMl + moreMl, strengthGPerL: 18.4 };
      });
      return planStock({ ...p, shells: uncounted, bottles }).batches.length;
    };
    fc.assert(
      fc.property(anyProblem, (p) => {
        expect(batchesWith(p, 50)).toBeLessThanOrEqual(batchesWith(p, 0));
      }),
    );
  });
});
