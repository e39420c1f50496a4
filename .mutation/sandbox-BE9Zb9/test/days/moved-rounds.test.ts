/** Rounds that a forecast moves, and those that stay. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { addDays, type Day, day, eachDay } from "../../src/dates.js";
import { chooseDays } from "../../src/days/choose-days.js";
import type { FeedingCourse } from "../../src/days/courses.js";
import { movedByForecast, threatenedRounds } from "../../src/days/moved-rounds.js";
import type { Course, Schedule } from "../../src/days/schedule-problem.js";
import type { Published } from "../../src/published/published.js";
import { aPlanting } from "../support/a-garden.js";
import { aPublished, aPublishedRound } from "../support/a-published.js";

const today = day("2027-06-07");
const inDays = (days: number): Day => addDays(today, days);

/** Fed twice, within ten days of the first day and then every 10 to 18 days. */
function aCourse(id: string, first: number, differs: Partial<Course> = {}): FeedingCourse {
  return {
    planting: aPlanting({ id }),
    route: "drench",
    course: {
      id: `${id}/drench`,
      first: { earliest: inDays(first - 3), latest: inDays(first + 3) },
      phases: [{ from: today, shortestDays: 10, targetDays: 14, longestDays: 18 }],
      feedings: 2,
      coverTo: inDays(40),
      ...differs,
    },
    spans: [],
  };
}

/** Each course on its days, as if they had been chosen. */
function chosen(...fed: readonly (readonly [FeedingCourse, ...number[]])[]): Schedule {
  const courses = fed.map(([one, ...days]) => ({ ...one.course, heldDays: days.map(inDays) }));
  const allowedDays = [...eachDay({ from: today, to: inDays(60) })];
  return chooseDays({ allowedDays, courses });
}

interface Differs {
  readonly badDays?: readonly number[];
  /** By id of the planting; all unless given. */
  readonly harms?: readonly string[];
  readonly allowed?: readonly number[];
  readonly held?: readonly string[];
  readonly published?: Published;
}

function moved(schedule: Schedule, courses: readonly FeedingCourse[], differs: Differs) {
  const { badDays = [], harms, held = [], published, allowed } = differs;
  return movedByForecast(schedule, courses, {
    harmOf: ({ planting }, on) =>
      badDays.map(inDays).includes(on) && harms?.includes(planting.id) !== false
        ? { kind: "rain", on, mm: 20 }
        : undefined,
    allowed: allowed?.map(inDays) ?? [...eachDay({ from: today, to: inDays(60) })],
    held,
    published,
    today,
  });
}

/** From which day to which, in days from today. */
function movesOf(
  fed: readonly (readonly [FeedingCourse, ...number[]])[],
  differs: Differs,
): (readonly [string, string])[] {
  const courses = fed.map(([one]) => one);
  const { moves } = moved(chosen(...fed), courses, differs);
  return moves.map(({ to, moved: { from } }) => [from, to]);
}

const toms = aCourse("toms", 4);
const chilis = aCourse("chilis", 4);
const from4to = (to: number) => [[inDays(4), inDays(to)]];

describe("a round on a day of harm", () => {
  test("moves to the nearest day without, of two to the later", () => {
    expect(movesOf([[toms, 4, 18]], { badDays: [4] })).toEqual(from4to(5));
    expect(movesOf([[toms, 4, 18]], { badDays: [4, 5] })).toEqual(from4to(3));
    expect(movesOf([[toms, 4, 18]], { badDays: [4, 5, 3] })).toEqual(from4to(6));
  });

  test("moves to an allowed day, none that the course avoids", () => {
    const differs = { badDays: [4], allowed: [1, 4, 6, 18] };
    expect(movesOf([[toms, 4, 18]], differs)).toEqual(from4to(6));
    const avoiding = aCourse("toms", 4, { avoidDays: [inDays(6)] });
    expect(movesOf([[avoiding, 4, 18]], differs)).toEqual(from4to(1));
  });

  test("moves alone: the gaps to the feedings before and after it stay what they may be", () => {
    expect(movesOf([[toms, 4, 14]], { badDays: [4], allowed: [3, 4, 5, 14] })).toEqual(from4to(3));
    expect(movesOf([[toms, 4, 22]], { badDays: [4], allowed: [3, 4, 5, 22] })).toEqual(from4to(5));
    expect(movesOf([[toms, 4, 22]], { badDays: [4], allowed: [3, 4, 22] })).toEqual([]);
    const after = aCourse("toms", 4, { lastFed: inDays(-14) });
    expect(movesOf([[after, 4, 18]], { badDays: [4], allowed: [4, 5, 18] })).toEqual([]);
  });

  test("takes its feedings and their windows with it", () => {
    const { schedule } = moved(chosen([toms, 4, 18]), [toms], { badDays: [4] });
    expect(schedule.feedings.map((one) => [one.day, one.window.latest])).toEqual([
      [inDays(5), inDays(7)],
      [inDays(18), inDays(23)],
    ]);
  });

  test("moves whole to a day of its own, with what no harm meets", () => {
    const fed = [
      [toms, 4, 18],
      [chilis, 4, 18],
    ] as const;
    const { schedule, moves } = moved(chosen(...fed), [toms, chilis], {
      badDays: [4],
      harms: ["toms"],
    });
    expect(schedule.feedings.filter((one) => one.day === inDays(5))).toHaveLength(2);
    expect(moves.map(({ moved: { part } }) => part)).toEqual([undefined]);
  });

  test("moves to another round's day with what is harmed alone, and says that it is a part", () => {
    const kale = aCourse("kale", 6);
    const fed = [
      [toms, 4, 18],
      [chilis, 4, 18],
      [kale, 6, 20],
    ] as const;
    const differs = { badDays: [4], harms: ["toms"], allowed: [4, 6, 18, 20] };
    const { schedule, moves } = moved(chosen(...fed), [toms, chilis, kale], differs);
    const first = schedule.feedings.slice(0, 3);
    expect(first.map(({ course, day: on }) => [course, on])).toEqual([
      ["chilis/drench", inDays(4)],
      ["kale/drench", inDays(6)],
      ["toms/drench", inDays(6)],
    ]);
    expect(moves[0]?.moved.part).toBe(true);
  });
});

describe("a round stays", () => {
  test("where nothing harms it", () => {
    const schedule = chosen([toms, 4, 18]);
    expect(moved(schedule, [toms], { badDays: [3, 5] })).toEqual({ schedule, moves: [] });
  });

  test("today, and eight days after it", () => {
    expect(movesOf([[aCourse("toms", 0), 0, 14]], { badDays: [0] })).toEqual([]);
    expect(movesOf([[aCourse("toms", 8), 8, 22]], { badDays: [8] })).toEqual([]);
  });

  test("where only today or a day after the seven would do", () => {
    expect(movesOf([[aCourse("toms", 1), 1, 15]], { badDays: [1], allowed: [0, 1] })).toEqual([]);
    expect(movesOf([[aCourse("toms", 7), 7, 21]], { badDays: [7], allowed: [7, 8] })).toEqual([]);
  });

  test("that a forecast has moved already, and none comes to its day", () => {
    const moved = { from: inDays(6), harm: { kind: "rain", on: inDays(6), mm: 20 } } as const;
    const published = aPublished({ rounds: [aPublishedRound(inDays(4), { moved })] });
    expect(movesOf([[toms, 4, 18]], { badDays: [4], published })).toEqual([]);
    const kale = aCourse("kale", 5);
    const fed = [
      [toms, 4, 18],
      [kale, 5, 19],
    ] as const;
    expect(movesOf(fed, { badDays: [5], allowed: [4, 5, 18, 19], published })).toEqual([]);
    expect(movesOf(fed, { badDays: [5], allowed: [4, 5, 18, 19] })).toHaveLength(1);
  });

  test("of which only the day is known", () => {
    const published = aPublished({ rounds: [aPublishedRound(inDays(4), { mixes: [] })] });
    expect(movesOf([[toms, 4, 18]], { badDays: [4], published })).toEqual([]);
  });

  test("on the three days after today where its stages follow the weather, and none comes to them", () => {
    const held = ["toms"];
    const early = aCourse("toms", 3);
    expect(movesOf([[early, 3, 17]], { badDays: [3], held })).toEqual([]);
    expect(movesOf([[early, 3, 17]], { badDays: [3] })).toHaveLength(1);
    expect(movesOf([[toms, 4, 18]], { badDays: [4], held })).toEqual(from4to(5));
    expect(movesOf([[toms, 4, 18]], { badDays: [4, 5], held })).toEqual(from4to(6));
  });
});

test("a round that stays is threatened, today's too, with the worst of each kind of harm", () => {
  const schedule = chosen([toms, 4, 18], [chilis, 4, 18], [aCourse("kale", 0), 0, 14]);
  const courses = [toms, chilis, aCourse("kale", 0)];
  const told = threatenedRounds(
    schedule,
    courses,
    ({ planting }, on) =>
      planting.id === "kale"
        ? { kind: "heat", on, maxC: 31, limitC: 27 }
        : { kind: "rain", on, mm: planting.id === "toms" ? 13 : 20 },
    today,
  );
  expect(
    told.map(({ day: on, harm, courses: met, all }) => [on, harm, met.length, all.length]),
  ).toEqual([
    [today, { kind: "heat", on: today, maxC: 31, limitC: 27 }, 1, 1],
    [inDays(4), { kind: "rain", on: inDays(4), mm: 20 }, 2, 2],
  ]);
});
