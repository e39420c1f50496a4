// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays, day, dayFromNumber, dayNumber, within } from "../../../src/dates.js";
import { batchSlots, firstDayThere } from "../../../src/stock/making/batches-days.js";

const today = day("2027-06-01");
const making = { dryDays: 2, reactionDays: 2, longestStandDays: 14 };
const told = (slots: ReturnType<typeof batchSlots>): string[] =>
  slots.map((s) => [s.start, s.acid, s.ready].map((n) => dayFromNumber(n).slice(5)).join(" "));

describe("the days of a batch", () => {
  test("the first is ready once shells begun today are dry and have reacted", () => {
    expect(told(batchSlots({ today, last: day("2027-06-06") }, [], making))).toEqual([
      "06-01 06-03 06-05",
      "06-02 06-04 06-06",
    ]);
  });

  test("no visit falls on a day away; drying and reacting go on meanwhile", () => {
    const away = [{ from: day("2027-06-04"), to: day("2027-06-08") }];
    expect(told(batchSlots({ today, last: day("2027-06-11") }, away, making))).toEqual([
      "06-01 06-03 06-09",
      "06-01 06-03 06-10",
      "06-03 06-09 06-11",
    ]);
  });

  test("an open jar does not stand longer than it may", () => {
    const away = [{ from: day("2027-06-04"), to: day("2027-06-20") }];
    expect(told(batchSlots({ today, last: day("2027-06-23") }, away, making))).toEqual([
      "06-03 06-21 06-23",
    ]);
  });

  test("the latest timing for each ready day is found, as trying all shows", () => {
    const span = fc
      .tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 9 }))
      .map(([from, length]) => ({ from: addDays(today, from), to: addDays(today, from + length) }));
    const ways = fc.record({
      dryDays: fc.integer({ min: 0, max: 3 }),
      reactionDays: fc.integer({ min: 0, max: 8 }),
      longestStandDays: fc.integer({ min: 8, max: 12 }),
    });
    fc.assert(
      fc.property(fc.array(span, { maxLength: 4 }), ways, (away, way) => {
        const first = dayNumber(today);
        const there = Array.from({ length: 35 }, (_, i) => first + i).filter(
          (n) => !away.some((a) => within(dayFromNumber(n), a)),
        );
        const expected = there.flatMap((ready) => {
          const timings = there.flatMap((acid) =>
            there
              .filter(
                (start) =>
                  acid - start >= way.dryDays &&
                  ready - acid >= way.reactionDays &&
                  ready - acid <= way.longestStandDays,
              )
              .map((start) => ({ start, acid, ready })),
          );
          timings.sort((a, b) => b.start - a.start || b.acid - a.acid);
          return timings.slice(0, 1);
        });
        expect(batchSlots({ today, last: dayFromNumber(first + 34) }, away, way)).toEqual(expected);
      }),
    );
  });

  test("the first day there skips days away that follow on each other", () => {
    const next = firstDayThere([
      { from: day("2027-06-03"), to: day("2027-06-05") },
      { from: day("2027-06-06"), to: day("2027-06-06") },
    ]);
    expect(next(day("2027-06-02"))).toBe("2027-06-02");
    expect(next(day("2027-06-03"))).toBe("2027-06-07");
  });
});
