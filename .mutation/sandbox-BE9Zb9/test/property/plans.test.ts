/** What holds for the plan of any valid garden. */
// @ts-nocheck

import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { stringify } from "yaml";
import { calendarText } from "../../src/calendar/calendar-text.js";
import { planEvents } from "../../src/calendar/plan-events.js";
import type { GardenFile } from "../../src/compiled/garden-file.js";
import { type Day, type DaySpan, weekdayOf, within } from "../../src/dates.js";
import { seasonSvg } from "../../src/outputs/picture/season-svg.js";
import { problemLine } from "../../src/problem.js";
import type { Plan } from "../../src/season/season-plan.js";
import { ledgerSum } from "../../src/stock/ledger/ledger.js";
import { daysFed, planFile } from "../support/a-garden.js";
import { anyGarden, anyPlannedGarden } from "../support/arbitrary-garden.js";
import { eventsIn } from "../support/ics.js";

/** Each property tries gardens of its own, the same ones each time. PROPERTY_RUNS asks for more. */
function runs(): { numRuns: number; seed: number } {
  const title = expect.getState().currentTestName ?? "";
  const seed = Array.from(title).reduce((sum, c) => (31 * sum + c.charCodeAt(0)) % 1_000_003, 0);
  return { numRuns: Number(process.env["PROPERTY_RUNS"] ?? 60), seed };
}

function planOf(garden: GardenFile): Plan {
  const text = stringify(garden);
  const plan = planFile(text);
  if (!plan.ok) throw new Error(`${plan.problems.map(problemLine).join("\n")}\n${text}`);
  return plan.value;
}

/** One property over gardens and their plans; a plan is made once and used for all that follows. */
function holds(
  gardens: fc.Arbitrary<GardenFile>,
  check: (plan: Plan, garden: GardenFile) => void,
): void {
  fc.assert(
    fc.property(gardens, (garden) => {
      check(planOf(garden), garden);
    }),
    runs(),
  );
}

const planned = (plan: Plan): Plan["rounds"] => plan.rounds.filter((round) => round.given !== true);
const mixesOf = (rounds: Plan["rounds"]): Plan["rounds"][number]["beds"][number]["mixes"] =>
  rounds.flatMap((round) => round.beds.flatMap((bed) => bed.mixes));

describe("in the plan of any valid garden", () => {
  test("every feeding lies in its window, or is warned of as late", () => {
    holds(anyGarden, (plan) => {
      for (const round of planned(plan))
        for (const { planting, window, inWindow } of mixesOf([round]).flatMap((m) => m.feedings)) {
          expect(inWindow).toBe(window.earliest <= round.day && round.day <= window.latest);
          // Never too early; late only where the plan says so.
          expect(window.earliest <= round.day).toBe(true);
          if (inWindow) continue;
          const told = [...plan.warnings, ...plan.notes].filter(
            (w) => w.planting === planting && w.day === round.day,
          );
          expect(told.map((w) => w.code)).toContainEqual(
            expect.stringMatching(/^(window-served-late|missed)$/),
          );
        }
    });
  });

  test("feedings are on allowed days of the season only, and never when the grower is away", () => {
    holds(anyGarden, (plan, garden) => {
      const days = garden.feeding?.days;
      for (const { day } of planned(plan).filter((round) => round.beds.length > 0)) {
        if (days !== undefined) expect(days).toContain(weekdayOf(day));
        expect(within(day, garden.season as DaySpan)).toBe(true);
        for (const span of garden.feeding?.away ?? [])
          expect(within(day, span as DaySpan)).toBe(false);
      }
    });
  });

  test("a planting is fed in stages that its rules feed, and only plantings told as fed are", () => {
    holds(anyPlannedGarden, (plan, garden) => {
      const written = garden.beds.flatMap((bed) => bed.plantings);
      const through = new Set(written.filter((p) => p.through !== undefined).map(({ id }) => id));
      const rules = new Map(plan.rules.map((rule) => [rule.id, rule]));
      const plantings = new Map(plan.plantings.map((planting) => [planting.id, planting]));
      for (const round of plan.rounds)
        for (const feeding of mixesOf([round]).flatMap((mix) => mix.feedings)) {
          const planting = plantings.get(feeding.planting);
          expect(planting?.fed).toBe(true);
          expect(planting?.rules).toContain(feeding.rule);
          const fedIn: readonly string[] = rules.get(feeding.rule)?.stages ?? [];
          const upToIt = planting?.stages.filter(({ from }) => from <= round.day) ?? [];
          // Through the harvest, a rule goes on in stages that it does not name, once it has begun.
          const stages = through.has(feeding.planting) ? upToIt : upToIt.slice(-1);
          expect(stages.some(({ stage }) => fedIn.includes(stage))).toBe(true);
          const span = planting?.stages.find((stage) => stage.stage === feeding.stage);
          expect(span !== undefined && within(round.day, span)).toBe(true);
        }
    });
  });

  test("the picture is at most 22 px high for each fed planting, and 300", () => {
    holds(anyPlannedGarden, (plan) => {
      const heightPx = Number(/viewBox="0 0 960 (\d+)"/.exec(seasonSvg(plan))?.[1]);
      const fed = plan.plantings.filter((planting) => planting.fed).length;
      expect(heightPx).toBeLessThanOrEqual(22 * fed + 300);
    });
  });

  test("a planting that is told as fed is fed, or warned of", () => {
    holds(anyPlannedGarden, (plan) => {
      for (const { id, fed } of plan.plantings) {
        const isWarned = plan.warnings.some((warning) => warning.planting === id);
        if (fed) expect(daysFed(plan, id).length > 0 || isWarned, id).toBe(true);
        else expect(daysFed(plan, id), id).toEqual([]);
      }
    });
  });

  test("a bed's watering days pour no more than its rounds leave of the week, and none below 0", () => {
    let poured = 0;
    holds(anyPlannedGarden, (plan, garden) => {
      for (const { weeks, days } of plan.watering ?? []) {
        for (const { from, to, waterL, roundL = 0, leftL = 0 } of weeks) {
          const those = days.filter(({ day }) => from <= day && day <= to);
          expect(leftL).toBeCloseTo(Math.max(0, waterL - roundL), 6);
          const pouredL = those.reduce((sum, one) => sum + one.waterL, 0);
          expect(pouredL).toBeLessThanOrEqual(leftL + 1e-6);
          poured += pouredL;
        }
        for (const { day, waterL } of days) {
          expect(waterL).toBeGreaterThan(0);
          expect(garden.feeding?.away?.some((span) => within(day, span as DaySpan))).not.toBe(true);
        }
      }
    });
    expect(poured).toBeGreaterThan(1000);
  });

  test("a sum of calcium has parts that are no less than 0, and a low end no higher than its high", () => {
    holds(anyPlannedGarden, ({ calcium }) => {
      for (const { need, soil, water, amendments, feed, brought } of calcium)
        for (const part of [
          need,
          soil,
          water,
          feed,
          brought,
          ...amendments.map(({ thisSeason }) => thisSeason),
        ])
          for (const range of [part?.wholeG, part?.perPlantG, part?.perM2G]) {
            if (range === undefined) continue;
            expect(range.low).toBeGreaterThanOrEqual(0);
            expect(range.high).toBeGreaterThanOrEqual(range.low);
            expect(Number.isFinite(range.high)).toBe(true);
          }
    });
  });

  test("water and stock of mixes, rounds and season are the sums of their fills", () => {
    holds(anyGarden, (plan) => {
      for (const mix of mixesOf(plan.rounds)) {
        const waterL = mix.fills.reduce((sum, fill) => sum + fill.count * fill.waterL, 0);
        const stockMl = mix.fills.reduce((sum, fill) => sum + fill.count * fill.stockMl, 0);
        expect(Math.abs(waterL - mix.waterL)).toBeLessThanOrEqual(0.1 * mix.waterL + 1e-6);
        // What the log holds stays as it was given, whatever can be measured. A jug holds no less than
        // its cans take of it, and may hold more.
        const jug = mix.fills[0]?.jug;
        if (jug !== undefined) expect(stockMl).toBeLessThanOrEqual(mix.stockMl + 0.01);
        else if (!mix.given) expect(stockMl).toBeCloseTo(mix.stockMl, 5);
        expect(mix.feedings.reduce((sum, feeding) => sum + feeding.waterL, 0)).toBeCloseTo(
          mix.waterL,
          5,
        );
      }
      for (const round of plan.rounds) {
        const mixes = mixesOf([round]);
        expect(round.stockMl).toBeCloseTo(
          mixes.reduce((sum, mix) => sum + mix.stockMl, 0),
          4,
        );
        expect(round.waterL).toBeCloseTo(
          mixes.reduce((sum, mix) => sum + mix.waterL, 0),
          4,
        );
      }
      const { totals } = plan;
      expect(totals.stockMl).toBeCloseTo(
        plan.rounds.reduce((sum, r) => sum + r.stockMl, 0),
        3,
      );
      expect(totals.waterL).toBeCloseTo(
        plan.rounds.reduce((sum, r) => sum + r.waterL, 0),
        3,
      );
      expect(totals.feedings).toBe(mixesOf(plan.rounds).flatMap((mix) => mix.feedings).length);
    });
  });

  test("the stock of each mix is within 5 % of rate times water, and what the bottles give", () => {
    holds(anyGarden, (plan) => {
      const short = new Set((plan.stock?.making.shortages ?? []).map(({ day }) => day));
      const rounds = planned(plan);
      const dayOf = new Map(rounds.flatMap((round) => mixesOf([round]).map((m) => [m, round.day])));
      for (const mix of mixesOf(rounds)) {
        // A can is measured to half a hundredth of a mL, however little it takes.
        const cans = mix.fills.reduce((sum, { count }) => sum + count, 0);
        expect(mix.exactStockMl).toBeCloseTo(mix.rateMlPerL * mix.waterL, 5);
        const takenMl = mix.fills.reduce((sum, fill) => sum + fill.count * fill.stockMl, 0);
        expect(Math.abs(takenMl - mix.exactStockMl)).toBeLessThanOrEqual(
          0.05 * mix.exactStockMl + 0.01 * cans,
        );
        const pouredMl = ledgerSum((mix.pours ?? []).map(({ ml }) => ml));
        if (short.has(dayOf.get(mix) ?? plan.today))
          expect(pouredMl).toBeLessThanOrEqual(mix.stockMl);
        else if (mix.pours !== undefined) expect(pouredMl).toBe(mix.stockMl);
      }
    });
  });

  test("no mix is stronger than its rule allows", () => {
    holds(anyPlannedGarden, (plan) => {
      const rules = new Map(plan.rules.map((rule) => [rule.id, rule]));
      for (const mix of mixesOf(plan.rounds))
        for (const { rule } of mix.feedings)
          expect(mix.rateMlPerL).toBeLessThanOrEqual(
            (rules.get(rule)?.highestRateMlPerL ?? 0) * (1 + 1e-9),
          );
    });
  });

  test("rounds go up by days, and plantings keep their order", () => {
    holds(anyGarden, (plan, garden) => {
      const days = plan.rounds.map((round) => round.day);
      expect(days).toEqual([...new Set(days)].sort());
      expect(plan.plantings.map((planting) => planting.id)).toEqual(
        garden.beds.flatMap((bed) => bed.plantings.map((planting) => planting.id)),
      );
    });
  });

  test("the plan is JSON as it stands", () => {
    holds(anyGarden, (plan) => {
      expect(JSON.parse(JSON.stringify(plan))).toEqual(plan);
      expect(JSON.stringify(plan)).not.toMatch(/NaN|Infinity|undefined|\[object/);
    });
  });
});

describe("the calendar of any valid garden", () => {
  test("is read by ical.js, event for event, with one for each round or each bed of it", () => {
    holds(anyGarden, (plan, garden) => {
      const text = calendarText(plan);
      if (!text.ok) throw new Error("no calendar");
      const events = eventsIn(text.value);
      expect(events).toHaveLength(planEvents(plan).length);
      expect(new Set(events.map((event) => event.uid)).size).toBe(events.length);
      const isOfRound = (event: (typeof events)[number]): boolean =>
        event.component.getFirstProperty("categories")?.getValues().includes("Feeding") ?? false;
      const isByBed = garden.calendar?.group === "bed";
      const feedingDays = plan.rounds.flatMap((round) =>
        isByBed ? round.beds.map(() => round.day) : round.beds.slice(0, 1).map(() => round.day),
      );
      const inCalendar = events
        .filter(isOfRound)
        .map((event) => event.startDate.toString().slice(0, 10));
      expect(inCalendar.sort()).toEqual(feedingDays.sort());
      for (const { summary } of events) expect(summary).not.toBe("");
    });
  });
});

describe("the same days come out", () => {
  test("whatever the order of beds and plantings", () => {
    const shuffled = anyPlannedGarden.chain((garden) =>
      fc
        .tuple(
          fc.shuffledSubarray(garden.beds, { minLength: garden.beds.length }),
          ...garden.beds.map((bed) =>
            fc.shuffledSubarray(bed.plantings, { minLength: bed.plantings.length }),
          ),
        )
        .map(([beds, ...plantings]) => ({
          garden,
          other: {
            ...garden,
            beds: beds.map((bed) => ({
              ...bed,
              plantings: plantings[garden.beds.indexOf(bed)] ?? [],
            })),
          },
        })),
    );
    fc.assert(
      fc.property(shuffled, ({ garden, other }) => {
        const [plan, otherPlan] = [planOf(garden), planOf(other)];
        for (const { id } of plan.plantings)
          expect(daysFed(otherPlan, id)).toEqual(daysFed(plan, id));
      }),
      runs(),
    );
  });

  const ownZone = process.env["TZ"];
  afterAll(() => {
    if (ownZone === undefined) delete process.env["TZ"];
    else process.env["TZ"] = ownZone;
  });

  test("whatever the time zone of the computer", () => {
    const offsets = new Set<number>();
    fc.assert(
      fc.property(anyGarden, (garden) => {
        const plans = ["Pacific/Kiritimati", "Pacific/Pago_Pago", "Europe/Dublin"].map((zone) => {
          process.env["TZ"] = zone;
          offsets.add(new Date(2027, 6, 1).getTimezoneOffset());
          const plan = planOf(garden);
          const calendar = calendarText(plan);
          return JSON.stringify([plan, calendar]);
        });
        expect(new Set(plans).size).toBe(1);
      }),
      { ...runs(), numRuns: runs().numRuns / 4 },
    );
    expect(offsets.size).toBe(3);
  });
});

/** Guards the generator itself: it must reach what the properties speak of. */
test("the gardens tried are fed by drench and spray, are late at times, and have logs", () => {
  const reached = new Set<string>();
  const days = new Set<Day>();
  holds(anyGarden, (plan, garden) => {
    for (const mix of mixesOf(plan.rounds)) reached.add(mix.route);
    for (const { code } of plan.warnings) reached.add(code);
    for (const round of plan.rounds) {
      if (round.given) reached.add("given");
      if (round.feeds) reached.add("other feed");
      days.add(round.day);
    }
    reached.add(garden.amounts ?? "metric");
  });
  expect([...reached]).toEqual(
    expect.arrayContaining([
      "drench",
      "foliar",
      "window-served-late",
      "window-not-served",
      "given",
      "other feed",
      "us",
      "imperial",
    ]),
  );
  expect(days.size).toBeGreaterThan(100);
});
