// @ts-nocheck
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { addDays, day } from "../../../src/dates.js";
import type { BatchInHand } from "../../../src/garden/garden.js";
import { bottlesInHand, type Taken } from "../../../src/stock/ledger/ledger-log.js";
import type { MakingRules } from "../../../src/stock/making-rules.js";

const rules = parse(
  readFileSync(new URL("../../../src/stock/making.yaml", import.meta.url), "utf8"),
) as MakingRules;
const today = day("2027-07-01");

function batch(
  id: string,
  made: string,
  leftMl: number,
  more: Partial<BatchInHand> = {},
): BatchInHand {
  return {
    id,
    made: day(made),
    volumeMl: 1000,
    leftMl,
    acid: "citric",
    keep: "fridge",
    path: ["stock", "batches", 0],
    ...more,
  };
}
/** Written in the log. */
function given(on: string, ml: number, more: Partial<Taken> = {}): Taken {
  return { day: day(on), ml, path: ["log", 0], ...more };
}
/** Published, and its day is past. */
function asPublished(on: string, ml: number, batch?: string): Taken {
  return { day: day(on), ml, ...(batch === undefined ? {} : { batch }) };
}
const left = (batches: BatchInHand[], log: Taken[]): Record<string, number> =>
  Object.fromEntries(
    bottlesInHand(batches, log, today, rules, () => 18).bottles.map((b) => [b.id, b.leftMl]),
  );

describe("a bottle thrown away", () => {
  const gone = batch("B1", "2027-05-10", 500, { thrownAway: day("2027-06-20") });

  test("holds nothing from that day on, and was good the day before", () => {
    const { bottles } = bottlesInHand([gone], [], today, rules, () => 18);
    expect(bottles).toMatchObject([{ leftMl: 0, useBy: "2027-06-19" }]);
    expect(bottlesInHand([gone], [], day("2027-06-19"), rules, () => 18).bottles).toMatchObject([
      { leftMl: 500 },
    ]);
  });

  test("gave what was poured before, and gives nothing after", () => {
    const over = (on: string): number =>
      bottlesInHand([gone], [given(on, 30, { batch: "B1" })], today, rules, () => 18).findings
        .length;
    expect(over("2027-06-20")).toBe(0);
    expect(over("2027-06-21")).toBe(1);
    const other = batch("B2", "2027-06-01", 100);
    expect(left([gone, other], [given("2027-06-25", 30)])).toEqual({ B1: 0, B2: 70 });
  });
});

describe("bottles in hand today", () => {
  test("have the grower's use-by day, or the usual keeping time of where they stand", () => {
    const { bottles } = bottlesInHand(
      [
        batch("fridge", "2027-06-01", 100),
        batch("shelf", "2027-06-01", 100, { keep: "shelf" }),
        batch("own", "2027-06-01", 100, { useBy: day("2027-06-20") }),
      ],
      [],
      today,
      rules,
      (b) => (b.id === "own" ? 5 : 18),
    );
    expect(bottles).toEqual([
      { id: "shelf", readyOn: "2027-06-01", useBy: "2027-06-15", leftMl: 100, strengthGPerL: 18 },
      { id: "own", readyOn: "2027-06-01", useBy: "2027-06-20", leftMl: 100, strengthGPerL: 5 },
      { id: "fridge", readyOn: "2027-06-01", useBy: "2027-08-30", leftMl: 100, strengthGPerL: 18 },
    ]);
  });

  test("hold less by every log entry that names them", () => {
    const log = [
      given("2027-06-05", 30, { batch: "B1" }),
      given("2027-06-09", 45, { batch: "B1" }),
      given("2027-06-09", 20, { batch: "B2" }),
    ];
    expect(left([batch("B1", "2027-06-01", 600), batch("B2", "2027-06-01", 100)], log)).toEqual({
      B1: 525,
      B2: 80,
    });
  });

  test("hold less only by entries after the day they were measured", () => {
    const log = ["2027-06-05", "2027-06-09", "2027-06-10"].map((on) =>
      given(on, 30, { batch: "B1" }),
    );
    expect(left([batch("B1", "2027-06-01", 600, { leftOn: day("2027-06-09") })], log)).toEqual({
      B1: 570,
    });
  });

  test("an entry without a batch was poured from the bottle then in turn, and on into the next", () => {
    const batches = [
      batch("new", "2027-06-01", 500),
      batch("old", "2027-05-01", 40),
      batch("past", "2027-01-01", 300),
      batch("later", "2027-06-20", 300, { keep: "shelf" }),
    ];
    expect(left(batches, [given("2027-06-05", 100)])).toEqual({
      past: 300,
      later: 300,
      old: 0,
      new: 440,
    });
  });

  test("an entry without a batch changes nothing when the bottle in turn was measured since", () => {
    const batches = [
      batch("old", "2027-05-01", 40, { leftOn: day("2027-06-10") }),
      batch("new", "2027-06-01", 500),
    ];
    expect(left(batches, [given("2027-06-05", 100)])).toEqual({ old: 40, new: 500 });
  });

  test("what comes from a batch that is not listed changes nothing", () => {
    const log = [given("2027-06-05", 30, { batch: "B0" }), asPublished("2027-06-05", 30, "B0")];
    expect(left([batch("B1", "2027-06-01", 600)], log)).toEqual({ B1: 600 });
  });

  test("an entry that gives more than its batch held is found, and the bottle is empty", () => {
    const entry = given("2027-06-05", 130.5, { batch: "B1", path: ["log", 7] });
    const { bottles, findings } = bottlesInHand(
      [batch("B1", "2027-06-01", 100)],
      [entry],
      today,
      rules,
      () => 18,
    );
    expect(bottles[0]?.leftMl).toBe(0);
    expect(findings).toMatchObject([
      {
        code: "log-over-batch",
        path: ["log", 7, "stock"],
        message: "the log gives 30.5 mL more from batch B1 than was left in it",
      },
    ]);
  });

  test("entries in tenths empty a bottle to nothing, not to the last bits of a double", () => {
    const log = [10.1, 10.1, 29.8].map((ml, i) => given(`2027-06-0${i + 4}`, ml, { batch: "B1" }));
    const { bottles, emptied, findings } = bottlesInHand(
      [batch("B1", "2027-06-01", 50)],
      log,
      today,
      rules,
      () => 18,
    );
    expect(bottles[0]?.leftMl).toBe(0);
    expect([emptied, findings]).toEqual([[], []]);
  });

  test.each([
    ["2 mL over", 50, [52], 2],
    ["1 % over, where that is more", 990, [1000], 10],
    ["more than either", 50, [52.01], "found"],
    ["a little over again and again", 50, [51.5, 1.5], "found"],
  ] as const)("an entry that gives %s: of %d mL %j", (_, leftMl, amounts, expected) => {
    const log = amounts.map((ml, i) => given(`2027-06-0${i + 4}`, ml, { batch: "B1" }));
    const { bottles, emptied, findings } = bottlesInHand(
      [batch("B1", "2027-06-01", leftMl)],
      log,
      today,
      rules,
      () => 18,
    );
    expect(bottles[0]?.leftMl).toBe(0);
    if (expected === "found") expect(findings.map(({ code }) => code)).toEqual(["log-over-batch"]);
    else {
      expect(findings).toEqual([]);
      expect(emptied).toMatchObject([
        { taken: { day: "2027-06-04" }, batch: "B1", overMl: expected },
      ]);
    }
  });

  describe("what was given as published", () => {
    const [before, on, after] = ["2027-06-08", "2027-06-09", "2027-06-10"].map((one) =>
      asPublished(one, 30, "B1"),
    ) as [Taken, Taken, Taken];
    const whole = { made: "2027-06-09", leftMl: 1000 };

    test("comes off a bottle without `left`", () => {
      const bottle = batch("B1", whole.made, whole.leftMl);
      expect(left([bottle], [on, after])).toEqual({ B1: 940 });
    });

    test("comes off as one amount, whatever shares it went in", () => {
      const shares = [1, 1, 1].map(() => asPublished("2027-06-10", 50 / 3, "B1"));
      expect(left([batch("B1", whole.made, 1000)], shares)).toEqual({ B1: 950 });
    });

    test("comes off a measured bottle from the day it was measured on", () => {
      const bottle = batch("B1", "2027-06-01", 600, { leftOn: day("2027-06-09") });
      expect(left([bottle], [before, on, after])).toEqual({ B1: 540 });
    });

    test("never comes off one that was measured on a day nobody knows", () => {
      expect(left([batch("B1", "2027-06-01", 600)], [before, on, after])).toEqual({ B1: 600 });
    });

    test("stops at zero with a note, and is never refused", () => {
      const bottle = batch("B1", "2027-06-01", 40, { leftOn: day("2027-06-01") });
      const { bottles, emptied, findings } = bottlesInHand(
        [bottle],
        [before, on],
        today,
        rules,
        () => 18,
      );
      expect(bottles[0]?.leftMl).toBe(0);
      expect(findings).toEqual([]);
      expect(emptied).toMatchObject([{ taken: { day: "2027-06-09" }, batch: "B1", overMl: 20 }]);
    });
  });

  test("the log takes off what it gives, whatever the order of its entries", () => {
    const entries = fc.array(
      fc.record({ after: fc.integer({ min: 0, max: 29 }), ml: fc.integer({ min: 1, max: 60 }) }),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(entries, (list) => {
        const log = list.map((e) => given(addDays(day("2027-06-01"), e.after), e.ml));
        const batches = [batch("a", "2027-06-01", 500), batch("b", "2027-06-01", 400)];
        const total = list.reduce((sum, e) => sum + e.ml, 0);
        const after = left(batches, log);
        expect((after.a ?? 0) + (after.b ?? 0)).toBe(900 - total);
        expect(left(batches, [...log].reverse())).toEqual(after);
      }),
    );
  });
});
