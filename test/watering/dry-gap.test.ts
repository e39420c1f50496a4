/** The longest time that a bed is without water. */
import { expect, test } from "vitest";
import { day, type DaySpan, type Weekday } from "../../src/dates.js";
import { isLongDry, longestDryGap } from "../../src/watering/dry-gap.js";
import type { DryGap } from "../../src/watering/watering.js";
import { aPlace, bed, wateringFactors } from "./a-watered-bed.js";

const june: DaySpan = { from: day("2027-06-01"), to: day("2027-06-30") };

interface Case {
  readonly days?: readonly Weekday[];
  readonly away?: readonly DaySpan[];
  readonly rounds?: readonly string[];
  readonly rain?: Readonly<Record<string, number>>;
  readonly cover?: "glass" | "fleece";
  readonly growing?: readonly DaySpan[];
  readonly rained?: readonly DaySpan[];
}

function gap({ days = ["tue", "fri"], away = [], rounds = [], ...more }: Case): DryGap | undefined {
  const garden = { watering: { days }, feeding: { away } } as never;
  const rain = Object.entries(more.rain ?? {}).map(([on, rainMm]) => [
    on,
    { minC: 10, maxC: 20, rainMm },
  ]);
  return longestDryGap(more.growing ?? [june], {
    garden,
    bed: bed(more.cover === undefined ? {} : { cover: { kind: more.cover } }),
    rounds: new Set(rounds.map(day)),
    rained: more.rained ?? [],
    place: aPlace({ days: Object.fromEntries(rain) as never }),
    factors: wateringFactors,
  });
}

test("lies between watering days, the first of equal ones", () => {
  expect(gap({})).toEqual({ from: "2027-06-05", to: "2027-06-07", days: 3, isAway: false });
});

test("is longer for one who is away, and says so", () => {
  const away = [{ from: day("2027-06-11"), to: day("2027-06-20") }];
  // Watered on Tuesday 8 and on Tuesday 22.
  expect(gap({ away })).toEqual({ from: "2027-06-09", to: "2027-06-21", days: 13, isAway: true });
});

test("is not laid on a time away that takes no watering day", () => {
  const away = [{ from: day("2027-06-05"), to: day("2027-06-06") }];
  expect(gap({ away })).toMatchObject({ days: 3, isAway: false });
});

test("ends with a round, and with rain that wets, and not with less", () => {
  const days = [] as const;
  expect(gap({ days })?.days).toBe(30);
  expect(gap({ days, rounds: ["2027-06-21"] })?.days).toBe(20);
  expect(gap({ days, rain: { "2027-06-21": 5 } })?.days).toBe(20);
  expect(gap({ days, rain: { "2027-06-21": 4.9 } })?.days).toBe(30);
});

test("is broken by days on which the bed asks for no water", () => {
  const rained = [{ from: day("2027-06-07"), to: day("2027-06-20") }];
  expect(gap({ days: [], rained })).toMatchObject({ from: "2027-06-21", days: 10 });
});

test("of a week or less is none to warn of", () => {
  expect([7, 8].map((days) => isLongDry({ days }))).toEqual([false, true]);
});

test("goes on under glass whatever falls on it, not under fleece", () => {
  const rain = { "2027-06-21": 30 };
  expect(gap({ days: [], rain, cover: "glass" })?.days).toBe(30);
  expect(gap({ days: [], rain, cover: "fleece" })?.days).toBe(20);
});

test("counts no day on which nothing grows, and joins what overlaps", () => {
  const early = { from: day("2027-06-01"), to: day("2027-06-06") };
  const late = { from: day("2027-06-20"), to: day("2027-06-22") };
  expect(gap({ days: [], growing: [late, early] })).toMatchObject({ from: early.from, days: 6 });
  const over = { from: day("2027-06-05"), to: day("2027-06-12") };
  expect(gap({ days: [], growing: [over, early] })).toMatchObject({ days: 12 });
});

test("is none where nothing grows, or every day is watered", () => {
  expect(gap({ growing: [] })).toBeUndefined();
  expect(gap({ days: ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] })).toBeUndefined();
});
