/** Which days a bed is watered on, and how its week is shared among them. */
// @ts-nocheck

import fc from "fast-check";
import { expect, test } from "vitest";
import { addDays, day, type Day, type DaySpan, weekdays, within } from "../../src/dates.js";
import type { Bed, Garden } from "../../src/garden/garden.js";
import { loadTables } from "../../src/tables.js";
import type { WateringWeek } from "../../src/watering/index.js";
import { wateringDays } from "../../src/watering/index.js";
import { placeWeather } from "../support/a-place.js";

const factors = loadTables().wateringFactors;
const means = { maxC: Array<number>(12).fill(20), minC: Array<number>(12).fill(10) };

/** 2027-06-07 is a Monday. */
const week: WateringWeek = {
  from: day("2027-06-07"),
  to: day("2027-06-13"),
  waterL: 96,
  roundL: 12,
  leftL: 84,
};
const summer = [{ from: day("2027-05-01"), to: day("2027-09-01") }];

interface Differs {
  readonly week?: Partial<WateringWeek>;
  readonly days?: Garden["watering"]["days"];
  readonly away?: readonly DaySpan[];
  readonly rainMm?: Readonly<Record<string, number>>;
  readonly cover?: NonNullable<Bed["cover"]>;
  readonly growing?: readonly DaySpan[];
  /** The rain is of what was seen. */
  readonly isSeen?: boolean;
  readonly by?: "weather" | "amount";
}

function watered({ days = ["tue", "fri"], away = [], rainMm = {}, ...differs }: Differs = {}) {
  const { isSeen = true, by = "weather", growing = summer } = differs;
  const kind = isSeen
    ? ({ from: "seen", isRainSeen: true } as const)
    : ({ from: "forecast" } as const);
  const told = Object.entries(rainMm).map(
    ([on, mm]) => [day(on), { minC: 10, maxC: 20, rainMm: mm, ...kind }] as const,
  );
  const garden = {
    watering: { days, inCalendar: false, remindersMinBefore: [] },
    feeding: { days: [], durationMin: 30, away },
  };
  const bed = differs.cover === undefined ? {} : { cover: differs.cover };
  const place = placeWeather(means, told);
  const weeks = [{ ...week, ...differs.week }];
  return wateringDays({ by, weeks }, growing, { garden, bed, place, factors }).map(
    ({ day: on, waterL }) => `${on} ${waterL}`,
  );
}

const tuesday = "2027-06-08";
const friday = "2027-06-11";

test("what the rounds leave of a week is shared evenly by its watering days", () => {
  expect(watered()).toEqual([`${tuesday} 42`, `${friday} 42`]);
});

test("on a day of rain nothing is poured; the others bring the week's, from which seen rain came off", () => {
  expect(watered({ rainMm: { [tuesday]: 5 } })).toEqual([`${friday} 84`]);
  expect(watered({ rainMm: { [tuesday]: 4.9 } })).toHaveLength(2);
});

test("rain that came off no week takes its day's part with it", () => {
  const rainMm = { [tuesday]: 5 };
  expect(watered({ rainMm, isSeen: false })).toEqual([`${friday} 42`]);
  expect(watered({ rainMm, by: "amount" })).toEqual([`${friday} 42`]);
  expect(watered({ rainMm, by: "amount", isSeen: false })).toEqual([`${friday} 42`]);
});

test.each([
  ["glass", 2],
  ["tunnel", 2],
  ["fleece", 1],
] as const)("rain does not reach a bed under %s", (kind, count) => {
  expect(watered({ rainMm: { [tuesday]: 9 }, cover: { kind } })).toHaveLength(count);
});

test("rain reaches a bed on days on which its roof is off", () => {
  const cover = { kind: "glass", to: day("2027-06-09") } as const;
  expect(watered({ rainMm: { [tuesday]: 9, [friday]: 9 }, cover })).toEqual([`${tuesday} 84`]);
});

test("nobody waters while away, nor where nothing grows", () => {
  const away = [{ from: day("2027-06-10"), to: day("2027-06-20") }];
  expect(watered({ away })).toEqual([`${tuesday} 84`]);
  expect(watered({ growing: [{ from: day("2027-06-09"), to: day("2027-07-01") }] })).toEqual([
    `${friday} 84`,
  ]);
});

test("a week whose watering days are all rained off or away has none", () => {
  const away = [{ from: day("2027-06-10"), to: day("2027-06-20") }];
  expect(watered({ away, rainMm: { [tuesday]: 20 } })).toEqual([]);
});

test("a week of which rain and rounds leave nothing has none", () => {
  expect(watered({ week: { leftL: 0 } })).toEqual([]);
});

test("the days of a week bring what is left of it, or nothing, whatever the weather", () => {
  const someDay = fc.integer({ min: 0, max: 6 }).map((n) => addDays(week.from, n));
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.constantFrom(...weekdays), { minLength: 1 }),
      fc.array(fc.tuple(someDay, fc.double({ min: 0, max: 30, noNaN: true }))),
      fc.array(someDay.map((d: Day) => ({ from: d, to: addDays(d, 1) }))),
      fc.double({ min: 0, max: 500, noNaN: true }),
      (days, rain, away, leftL) => {
        const those = watered({ days, away, rainMm: Object.fromEntries(rain), week: { leftL } });
        const sumL = those.reduce((sum, line) => sum + Number(line.split(" ")[1]), 0);
        if (those.length > 0) expect(sumL).toBeCloseTo(leftL, 6);
        for (const line of those) {
          const on = day(line.slice(0, 10));
          expect(away.some((span) => within(on, span))).toBe(false);
        }
      },
    ),
  );
});
