/** A forecast that says something else each morning: rounds move once at most, and keep their windows. */
// @ts-nocheck

import { beforeAll, describe, expect, test } from "vitest";
import { addDays, day, type Day, eachDay } from "../../src/dates.js";
import { planGarden } from "../../src/plan-garden.js";
import { type Published, type PublishedRound } from "../../src/published/published.js";
import type { Plan } from "../../src/season/season-plan.js";
import { loadTables } from "../../src/tables.js";
import { type Dice, dice } from "../days/random-problem.js";
import { gardenText, referenceBottle } from "../support/a-garden.js";
import { fedOf } from "./a-live-garden.js";

const means = {
  max: [7, 8, 10, 13, 17, 20, 22, 22, 19, 15, 10, 8],
  min: [2, 2, 3, 5, 8, 11, 13, 13, 11, 8, 5, 3],
};
const plantings = ["toms", "cukes", "apple", "chilis"];

function gardenWith(warmth: "on" | "off"): string {
  return gardenText({
    ...referenceBottle,
    warmth,
    location: { latitude: 51.5 },
    climate: { source: "a test", temperature: "C", ...means },
    weather: { forecast: "next.csv" },
    beds: [
      {
        id: "south",
        plantings: [
          { id: "toms", crop: "tomato", transplanted: "2027-05-01", water: "6 L" },
          { id: "cukes", crop: "cucumber", transplanted: "2027-05-01", water: "6 L" },
        ],
      },
      { id: "yard", plantings: [{ id: "apple", crop: "apple", bloom: "2027-05-01" }] },
      {
        id: "house",
        cover: "glass",
        plantings: [{ id: "chilis", crop: "chili", transplanted: "2027-04-25", water: "6 L" }],
      },
    ],
  });
}

/** Ten days from today on; rain and heat on about a fourth of them each. */
function forecastOf(today: Day, roll: Dice): string {
  const rows = [...eachDay({ from: today, to: addDays(today, 9) })].map(
    (on) => `${on},12,${roll(1, 4) === 1 ? 34 : 21},${roll(1, 4) === 1 ? roll(5, 45) : 0}`,
  );
  return ["date,tmin_c,tmax_c,rain_mm", ...rows, ""].join("\n");
}

const noForecast = "date,tmin_c,tmax_c\n";

function planOf(text: string, today: Day, forecast: string, published?: Published): Plan {
  const plan = planGarden(text, loadTables(), {
    today,
    weather: { forecast },
    ...(published && { published }),
  });
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return plan.value;
}

interface Morning {
  readonly today: Day;
  readonly before: Published;
  readonly plan: Plan;
}

function seasonOf(text: string, seed: number): Morning[] {
  const roll = dice(seed);
  let before = planOf(text, day("2027-04-20"), noForecast).published;
  return [...eachDay({ from: day("2027-05-15"), to: day("2027-07-15") })].map((today) => {
    const plan = planOf(text, today, forecastOf(today, roll), before);
    const morning = { today, before, plan };
    before = plan.published;
    return morning;
  });
}

const daysOf = (rounds: readonly PublishedRound[]): Day[] => rounds.map((round) => round.day);

describe("where stages stay on the calendar", () => {
  const seasons = [1, 3];
  let mornings: Morning[] = [];
  beforeAll(() => {
    mornings = seasons.flatMap((seed) => seasonOf(gardenWith("off"), seed));
  });

  test("some rounds move, and some are warned of instead", () => {
    const moves = mornings.flatMap(({ today, plan }) =>
      plan.published.rounds.filter(({ moved, first }) => moved && first === today),
    );
    const warned = mornings.flatMap(({ plan }) => plan.warnings.map(({ code }) => code));
    expect(moves.length).toBeGreaterThan(5);
    expect(new Set(warned)).toEqual(new Set(["rain-forecast", "heat-forecast"]));
  });

  test("no round of today or the past moves, and none comes to it", () => {
    for (const { today, before, plan } of mornings) {
      const upToToday = (rounds: readonly PublishedRound[]) =>
        daysOf(rounds).filter((on) => on <= today);
      expect(upToToday(plan.published.rounds), today).toEqual(upToToday(before.rounds));
    }
  });

  test("a round that has moved stays, and says why until its day", () => {
    for (const { today, before, plan } of mornings)
      for (const round of before.rounds.filter(({ moved, day: on }) => moved && on >= today)) {
        const now = plan.published.rounds.find((one) => one.day === round.day);
        expect(now?.moved, `${today}: ${round.day}`).toEqual(round.moved);
        const notes = plan.notes.filter((note) => note.day === round.day);
        expect(notes.map(({ code }) => code)).toEqual(["weather"]);
      }
  });

  test("what moves was told, stood on one of the next seven days, moves to one of them, and is first told there today", () => {
    for (const { today, before, plan } of mornings) {
      const fresh = plan.published.rounds.filter(
        (round) => !daysOf(before.rounds).includes(round.day),
      );
      for (const round of fresh) {
        const from = round.moved?.from;
        const was = before.rounds.find((one) => one.day === from);
        expect(was, `${today}: ${round.day}`).toMatchObject({ day: from });
        expect(was?.moved).toBeUndefined();
        expect(from && today < from && from <= addDays(today, 7)).toBe(true);
        expect(round.day <= addDays(today, 7)).toBe(true);
        expect(round.first).toBe(today);
      }
    }
  });

  test("no round comes or goes, and each feeding stays in its window", () => {
    const usual = planOf(gardenWith("off"), day("2027-04-20"), noForecast);
    for (const { plan } of mornings) {
      expect(plan.rounds.length).toBeLessThanOrEqual(usual.rounds.length);
      for (const planting of plantings) {
        const fed = fedOf(plan, planting);
        expect(fed.length).toBe(fedOf(usual, planting).length);
        expect(fed.filter(({ feeding }) => !feeding.inWindow)).toEqual([]);
      }
    }
  });

  test("without forecast rows nothing changes", () => {
    const text = gardenWith("off");
    const { published, rounds } = planOf(text, day("2027-04-20"), noForecast);
    const days = rounds.map((round) => round.day);
    for (const today of ["2027-05-20", "2027-06-02", "2027-06-20"].map(day)) {
      const plan = planOf(text, today, noForecast, published);
      expect(plan.rounds.map((round) => round.day)).toEqual(days);
      expect(plan.published).toEqual(published);
    }
  });
});

test("where they follow warmth, none of these feedings moves on the three days after today", () => {
  let threatened = 0;
  for (const { today, before, plan } of seasonOf(gardenWith("on"), 1)) {
    const isNear = (on: Day | undefined): boolean =>
      on !== undefined && today < on && on <= addDays(today, 3);
    for (const { day: on, mixes } of before.rounds.filter((round) => isNear(round.day)))
      for (const { planting } of mixes.flatMap((mix) => mix.fed).filter(followsWarmth)) {
        const days = fedOf(plan, planting).map((fed) => fed.day);
        expect(days, `${today}: ${planting}`).toContain(on);
      }
    threatened += plan.warnings.filter(
      ({ code, day: on }) => code === "rain-forecast" && isNear(on),
    ).length;
  }
  expect(threatened).toBeGreaterThan(2);
});

/** The apple's stages are counted from the day on which its bloom was seen. */
function followsWarmth({ planting }: { readonly planting: string }): boolean {
  return planting !== "apple";
}
