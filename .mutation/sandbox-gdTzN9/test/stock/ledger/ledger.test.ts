// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { day, type Day } from "../../../src/dates.js";
import {
  bottleChanges,
  bottlesInOrder,
  closeBooks,
  doseMl,
  drawDown,
  ledgerMl,
  ledgerSum,
  needsInOrder,
} from "../../../src/stock/ledger/ledger.js";
import type { DoseRule, StockBottle, StockNeed } from "../../../src/stock/making-problem.js";

const need = (id: string, on: string, calciumMg: number, mostMl = 1000): StockNeed => {
  return { id, day: day(on), calciumMg, mostMl };
};
const bottle = (
  id: string,
  readyOn: string,
  useBy: string,
  leftMl: number,
  strengthGPerL = 10,
): StockBottle => {
  return { id, readyOn: day(readyOn), useBy: day(useBy), leftMl, strengthGPerL };
};
const poured = (bottles: StockBottle[], needs: StockNeed[]): string[] =>
  drawDown(bottlesInOrder(bottles), needsInOrder(needs), doseMl).draws.map(
    (d) => `${d.need} ${d.batch} ${d.ml}`,
  );

describe("a dose", () => {
  test("is the calcium over the strength, in whole mL", () => {
    expect(doseMl(need("a", "2027-06-01", 460), 18.4)).toBe(25);
    expect(doseMl(need("a", "2027-06-01", 460), 9.2)).toBe(50);
    expect(doseMl(need("a", "2027-06-01", 454), 18)).toBe(25);
  });
  test("never passes the most the rule allows, however weak the bottle", () => {
    expect(doseMl(need("a", "2027-06-01", 460, 40.8), 0.18)).toBe(40);
    expect(doseMl(need("a", "2027-06-01", 460, 40), 0)).toBe(40);
  });
  test("is at least 1 mL where calcium is wanted and nothing where it is not", () => {
    expect(doseMl(need("a", "2027-06-01", 1), 18)).toBe(1);
    expect(doseMl(need("a", "2027-06-01", 0), 18)).toBe(0);
    expect(doseMl(need("a", "2027-06-01", 10, 0), 18)).toBe(0);
  });
});

test("the ledger counts hundredths, halves up, the last bits of a double set aside", () => {
  expect([2.404, 2.405, 1.005, 0.1 + 0.2, 50 - 10.1 - 10.1].map(ledgerMl)).toEqual([
    2.4, 2.41, 1.01, 0.3, 29.8,
  ]);
  expect(ledgerSum([10.1, 10.1, 29.8])).toBe(50);
  expect(ledgerSum([])).toBe(0);
});

test("a further bottle brings the calcium that is still open, within the most the rule allows", () => {
  const asked = need("n", "2027-06-01", 460, 40);
  const weak = { ml: 10, strengthGPerL: 1 };
  expect(doseMl(asked, 18.4, [weak])).toBe(24);
  expect(doseMl(asked, 2, [weak])).toBe(30);
  expect(doseMl(asked, 18.4, [weak, { ml: 24, strengthGPerL: 18.4 }])).toBe(0);
});

describe("pouring", () => {
  test("takes the bottle with the earliest use-by first, ties by id", () => {
    const bottles = [
      bottle("late", "2027-05-01", "2027-08-01", 500),
      bottle("b", "2027-05-20", "2027-07-01", 500),
      bottle("a", "2027-05-25", "2027-07-01", 500),
    ];
    expect(poured(bottles, [need("n", "2027-06-01", 100)])).toEqual(["n a 10"]);
  });

  test("uses a bottle on its use-by day and not after", () => {
    const bottles = [bottle("a", "2027-05-01", "2027-06-02", 500)];
    const needs = ["2027-06-01", "2027-06-02", "2027-06-03"].map((on) => need(on, on, 100));
    expect(poured(bottles, needs)).toEqual(["2027-06-01 a 10", "2027-06-02 a 10"]);
    expect(drawDown(bottles, needs, doseMl).open).toEqual([{ need: needs[2], before: [] }]);
  });

  test("uses a bottle from its ready day and not before", () => {
    const bottles = [bottle("a", "2027-06-02", "2027-07-02", 500)];
    const needs = ["2027-06-01", "2027-06-02"].map((on) => need(on, on, 100));
    expect(poured(bottles, needs)).toEqual(["2027-06-02 a 10"]);
  });

  test("takes the rest of a feeding from the next bottle, in mL of that bottle's strength", () => {
    const bottles = [
      bottle("weak", "2027-05-01", "2027-07-01", 10, 5),
      bottle("strong", "2027-05-01", "2027-08-01", 500, 20),
    ];
    // 400 mg: 80 mL of the weak. 10 mL of it are an eighth; the rest is 7/8 of 20 mL of the strong.
    expect(poured(bottles, [need("n", "2027-06-01", 400)])).toEqual(["n weak 10", "n strong 18"]);
  });

  test("counts hundredths of a mL, and a bottle below nothing as empty", () => {
    const bottles = [
      bottle("a", "2027-05-01", "2027-07-01", 7.9),
      bottle("b", "2027-05-01", "2027-07-02", -3),
    ];
    expect(poured(bottles, [need("n", "2027-06-01", 100)])).toEqual(["n a 7.9"]);
  });

  test("follows the caller's own rule for mL", () => {
    const drawn = drawDown(
      [bottle("a", "2027-05-01", "2027-07-01", 100)],
      [need("n", "2027-06-01", 100)],
      () => 33,
    );
    expect(drawn.draws).toMatchObject([{ ml: 33, calciumMg: 330 }]);
  });
});

test("a change of bottle names the feeding, both bottles and their strengths", () => {
  const bottles = [
    bottle("a", "2027-05-01", "2027-07-01", 15),
    bottle("b", "2027-05-01", "2027-08-01", 100, 20),
  ];
  const needs = ["2027-06-01", "2027-06-05", "2027-06-09"].map((on) => need(on, on, 100));
  const toB = { day: "2027-06-05", need: "2027-06-05", to: "b", strengthGPerL: 20 };
  expect(bottleChanges(drawDown(bottles, needs, doseMl).draws)).toEqual([
    { day: "2027-06-01", need: "2027-06-01", to: "a", strengthGPerL: 10 },
    { ...toB, from: "a", wasGPerL: 10 },
  ]);
  const ofB = drawDown(bottles.slice(1), needs.slice(1), doseMl).draws;
  const last = { id: "z", strengthGPerL: 12 };
  expect(bottleChanges(ofB, last)).toEqual([{ ...toB, from: "z", wasGPerL: 12 }]);
  expect(bottleChanges(ofB, { ...last, id: "b" })).toEqual([]);
});

describe("the books", () => {
  const season = { from: day("2027-03-01"), to: day("2027-10-31") };
  const today = day("2027-06-01");
  const sameDay = (d: Day): Day => d;
  test("what is left on the use-by day is thrown away; a bottle that keeps longer stays", () => {
    const bottles = [
      bottle("old", "2027-05-01", "2027-07-01", 100),
      bottle("lasts", "2027-05-01", "2027-11-01", 50),
      bottle("past", "2027-01-01", "2027-04-01", 20),
      bottle("empty", "2027-05-01", "2027-07-01", 0),
    ];
    const { draws } = drawDown(bottles, [need("n", "2027-06-05", 300)], doseMl);
    const books = closeBooks(bottles, [], draws, { today, season }, sameDay);
    expect(books.account).toEqual([
      line("old", 100, 30, 70, 0),
      line("lasts", 50, 0, 0, 50),
      line("past", 20, 0, 20, 0),
      line("empty", 0, 0, 0, 0),
    ]);
    expect(books.discards).toEqual([
      { batch: "past", useUpBy: "2027-04-01", doOn: "2027-04-01", ml: 20 },
      { batch: "old", useUpBy: "2027-07-01", doOn: "2027-07-01", ml: 70 },
    ]);
  });
  test("a bottle whose use-by day is the last of the season is thrown away that day", () => {
    const bottles = [bottle("a", "2027-05-01", "2027-10-31", 100)];
    const [account] = closeBooks(bottles, [], [], { today, season }, sameDay).account;
    expect(account).toMatchObject({ thrownAwayMl: 100, closingMl: 0 });
  });
  test("throwing away waits until the grower is back", () => {
    const bottles = [bottle("a", "2027-05-01", "2027-07-12", 100)];
    const back = (): Day => day("2027-07-25");
    expect(closeBooks(bottles, [], [], { today, season }, back).discards).toEqual([
      { batch: "a", useUpBy: "2027-07-12", doOn: "2027-07-25", ml: 100 },
    ]);
  });
  function line(
    batch: string,
    openingMl: number,
    givenMl: number,
    thrownAwayMl: number,
    closingMl: number,
  ): object {
    return { batch, planned: false, openingMl, madeMl: 0, givenMl, thrownAwayMl, closingMl };
  }
});

test("bottles of one strength give exactly what is asked, however a feeding is split", () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 30 }),
      fc.integer({ min: 1, max: 997 }),
      (lefts, wanted) => {
        const bottles = lefts.map((ml, i) => bottle(`b${i}`, "2027-05-01", "2027-08-01", ml));
        const rest: DoseRule = (_need, _strength, before) =>
          wanted - before.reduce((sum, dose) => sum + dose.ml, 0);
        const asked = need("n", "2027-06-01", 1);
        const { draws, open } = drawDown(bottles, [asked], rest);
        const given = draws.reduce((sum, d) => sum + d.ml, 0);
        const held = lefts.reduce((sum, ml) => sum + ml, 0);
        expect(given).toBe(Math.min(wanted, held));
        expect(open.map((o) => rest(o.need, 10, o.before))).toEqual(
          wanted > held ? [wanted - held] : [],
        );
      },
    ),
  );
});
