import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../../src/dates.js";
import type { ShellSupply } from "../../../src/stock/making-problem.js";
import {
  missingShells,
  saveFrom,
  shellsBy,
  shellsFor,
  shellsSinceLastBatch,
  volumeByShells,
} from "../../../src/stock/making/shells.js";

const today = day("2027-05-01");
const supply: ShellSupply = { perWeek: 7, inHand: 0, gPerShell: 5, gPerL: 100 };
const use = (
  startOn: string,
  volumeMl: number,
): { startOn: ReturnType<typeof day>; volumeMl: number } => {
  return { startOn: day(startOn), volumeMl };
};

describe("shells", () => {
  test("a batch takes whole eggs", () => {
    expect(shellsFor(1000, supply)).toEqual({ shellG: 100, eggs: 20 });
    expect(shellsFor(510, supply)).toEqual({ shellG: 51, eggs: 11 });
    expect(shellsFor(0, supply)).toEqual({ shellG: 0, eggs: 0 });
  });

  test("come in week by week, and are counted on the morning of a day", () => {
    const tenAWeek = { ...supply, perWeek: 10, inHand: 3 };
    expect(
      ["2027-05-01", "2027-05-02", "2027-05-08", "2027-05-15"]
        .map(day)
        .map((d) => shellsBy(d, today, tenAWeek)),
    ).toEqual([3, 4, 13, 23]);
    expect(shellsBy(day("2027-04-01"), today, tenAWeek)).toBe(3);
  });

  test("are saved from the latest day that still gives enough by the start", () => {
    expect(saveFrom([use("2027-06-01", 1000)], supply)).toBe("2027-05-12");
    expect(saveFrom([use("2027-06-01", 1000)], { ...supply, inHand: 15 })).toBe("2027-05-27");
    expect(saveFrom([use("2027-06-01", 1000)], { ...supply, inHand: 20 })).toBeUndefined();
    expect(saveFrom([use("2027-06-01", 1000)], { ...supply, perWeek: 0 })).toBeUndefined();
    expect(saveFrom([], supply)).toBeUndefined();
    // A shell in a thousand years: the day would lie before all days that can be told.
    expect(saveFrom([use("2027-06-01", 1000)], { ...supply, perWeek: 1e-7 })).toBeUndefined();
  });

  test("a later batch can ask for earlier saving than the first", () => {
    const uses = [use("2027-06-20", 2000), use("2027-06-01", 500)];
    expect(saveFrom(uses.slice(1), supply)).toBe("2027-05-22");
    expect(saveFrom(uses, supply)).toBe("2027-05-01");
  });

  test("missing are as many as the worst batch lacks when saving begins today", () => {
    expect(missingShells([use("2027-05-11", 1000)], today, supply)).toBe(10);
    expect(missingShells([use("2027-05-11", 500), use("2027-05-13", 500)], today, supply)).toBe(8);
    expect(missingShells([use("2027-05-11", 500)], today, supply)).toBe(0);
    const uncounted = { inHand: 0, gPerShell: 5, gPerL: 100 };
    expect(missingShells([use("2027-05-11", 1000)], today, uncounted)).toBe(0);
  });

  test("the day to save from is enough, and a day later is not; volume by shells agrees", () => {
    fc.assert(
      fc.property(
        fc.record({
          perWeek: fc.integer({ min: 1, max: 40 }).map((n) => n / 2),
          inHand: fc.integer({ min: 0, max: 20 }),
          gPerShell: fc.constantFrom(5, 5.28, 6.1),
          gPerL: fc.constantFrom(90, 98.7, 110),
        }),
        fc.array(
          fc.record({
            after: fc.integer({ min: 0, max: 200 }),
            volumeMl: fc.integer({ min: 1, max: 2000 }),
          }),
          { minLength: 1, maxLength: 6 },
        ),
        (s, list) => {
          const uses = list.map((u) => ({
            startOn: addDays(today, u.after),
            volumeMl: u.volumeMl,
          }));
          const enough = (from: ReturnType<typeof day>): boolean =>
            missingShells(uses, from, s) === 0;
          const from = saveFrom(uses, s);
          if (from === undefined) expect(enough(addDays(today, 1000))).toBe(true);
          else expect([enough(from), enough(addDays(from, 1))]).toEqual([true, false]);
          const starts = uses.map((u) => u.startOn);
          const fits = starts.every((start) => {
            const ml = uses
              .filter((u) => u.startOn <= start)
              .reduce((sum, u) => sum + u.volumeMl, 0);
            return ml <= volumeByShells(start, today, s);
          });
          expect(fits).toBe(enough(today));
        },
      ),
    );
  });

  test("not counted, those since the latest batch was begun are taken to be in hand", () => {
    const batches = [
      { made: day("2027-04-01") },
      { made: day("2027-04-21") },
      { made: day("2027-05-09") },
    ];
    expect(shellsSinceLastBatch(7, batches, 4, today)).toBe(14);
    expect(shellsSinceLastBatch(7, [], 4, today)).toBe(0);
  });
});
