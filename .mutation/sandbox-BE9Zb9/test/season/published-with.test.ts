// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import type { Published } from "../../src/published/published.js";
import { publishedWith } from "../../src/season/published-with.js";
import type { Round } from "../../src/season/season-plan.js";
import type { StockPlan } from "../../src/stock/making-problem.js";
import { aBedRound, aFeeding, aMix, anOtherFeed, aRound } from "../support/a-plan.js";
import {
  aPublished,
  aPublishedBatch,
  aPublishedMix,
  aPublishedRound,
} from "../support/a-published.js";
import { aBatch, aSeasonStock } from "../support/a-stock.js";

const today = day("2027-06-12");
const early = "2027-03-01";

function withPlan(
  earlier: Published | undefined,
  rounds: readonly Round[],
  making: Partial<StockPlan> = {},
): Published {
  return publishedWith(
    earlier,
    rounds,
    aSeasonStock(making).making,
    { early: [], moves: [] },
    today,
  );
}

describe("a round to come", () => {
  test("is told first today, or on the day on which it was first told", () => {
    const told = aPublished({ rounds: [aPublishedRound("2027-06-19")] });
    const { rounds } = withPlan(told, [
      aRound({ day: day("2027-06-19") }),
      aRound({ day: day("2027-06-26") }),
    ]);
    expect(rounds.map((round) => [round.day, round.first])).toEqual([
      ["2027-06-19", early],
      ["2027-06-26", today],
    ]);
  });

  test("that the forecast moved to its day says so from then on, and is first told there today", () => {
    const moved = {
      from: day("2027-06-16"),
      harm: { kind: "rain", on: day("2027-06-17"), mm: 20 },
    } as const;
    const onto = [aRound({ day: day("2027-06-19") })];
    const stock = aSeasonStock().making;
    const moves = [{ to: day("2027-06-19"), moved }];
    const told = aPublished({ rounds: [aPublishedRound("2027-06-16")] });
    const then = publishedWith(told, onto, stock, { early: [], moves }, today);
    expect(then.rounds).toMatchObject([{ day: "2027-06-19", first: today, moved }]);
    const next = publishedWith(then, onto, stock, { early: [], moves: [] }, addDays(today, 1));
    expect(next.rounds).toMatchObject([{ day: "2027-06-19", first: today, moved }]);
  });

  test("has its plantings, their water, and what each bottle gives; from none, what is missing", () => {
    const mix = aMix({ pours: [{ batch: "B1", ml: 40 }] as never, stockMl: 55 });
    const { rounds } = withPlan(undefined, [aRound({ beds: [aBedRound({ mixes: [mix] })] })]);
    expect(rounds).toEqual([
      {
        day: today,
        first: today,
        mixes: [
          aPublishedMix({
            pours: [
              { batch: "B1", ml: 40 },
              { ml: 15, missing: true },
            ],
          }),
        ],
      },
    ]);
  });

  test("that is no longer planned is no longer told", () => {
    const told = aPublished({ rounds: [aPublishedRound("2027-06-19")] });
    expect(withPlan(told, []).rounds).toEqual([]);
  });
});

describe("a round of the past", () => {
  const told = aPublished({ rounds: [aPublishedRound("2027-06-05")] });

  test("stays as it was told, whatever the plan makes of it", () => {
    const given = aRound({ day: day("2027-06-05"), given: true, beds: [] });
    expect(withPlan(told, [given]).rounds).toEqual(told.rounds);
    expect(withPlan(told, []).rounds).toEqual(told.rounds);
  });

  test("that nobody was told of is not told now", () => {
    const past = aRound({ day: day("2027-06-04") });
    expect(withPlan(undefined, [past]).rounds).toEqual([]);
    expect(withPlan(told, [past]).rounds).toEqual(told.rounds);
  });
});

describe("today's round", () => {
  const both = [aPublishedMix(), aPublishedMix({ bed: "north", fed: [fedIn("kale")] })];
  const told = aPublished({ rounds: [aPublishedRound(today, { mixes: both })] });
  function fedIn(planting: string) {
    return { planting, crop: planting, waterL: 5 };
  }

  test("keeps what the log holds of it already as it was told", () => {
    const logged = aMix({ given: true, stockMl: 7 });
    const kale = aMix({ feedings: [aFeeding({ planting: "kale", crop: "kale", waterL: 5 })] });
    const beds = [aBedRound({ mixes: [logged] }), aBedRound({ bed: "north", mixes: [kale] })];
    const { rounds } = withPlan(told, [aRound({ day: today, beds })]);
    expect(rounds[0]?.first).toBe(early);
    expect(rounds[0]?.mixes.map((mix) => mix.fed[0]?.planting)).toEqual(["kale", "toms"]);
    expect(rounds[0]?.mixes[1]).toEqual(both[0]);
  });

  test("that was written down whole stays as it was told", () => {
    const beds = [
      aBedRound({ mixes: [aMix({ given: true })] }),
      aBedRound({
        bed: "north",
        mixes: [aMix({ given: true, feedings: [aFeeding({ planting: "kale" })] })],
      }),
    ];
    expect(withPlan(told, [aRound({ day: today, beds })]).rounds).toEqual(told.rounds);
  });
});

describe("another feed", () => {
  const nettle = (on: string) =>
    aRound({ day: day(on), beds: [], feeds: [anOtherFeed({ feed: "nettle" })] });

  test("is told once a day, though several beds get it; its past stays", () => {
    const two = [anOtherFeed({ feed: "nettle" }), anOtherFeed({ feed: "nettle", bed: "north" })];
    const told = aPublished({
      feeds: ["2027-06-05", "2027-06-13"].map((on) => ({
        feed: "nettle",
        day: day(on),
        first: day(early),
      })),
    });
    const { feeds, rounds } = withPlan(told, [
      { ...nettle("2027-06-13"), feeds: two },
      nettle("2027-06-20"),
    ]);
    expect(feeds).toEqual([
      ...told.feeds,
      { feed: "nettle", day: day("2027-06-20"), first: today },
    ]);
    expect(rounds).toEqual([]);
  });
});

describe("a batch", () => {
  const july = aBatch("2027-07-10", { id: "batch-2027-07-01", number: 3 });

  test("keeps the day on which it was first told, and has the days it is planned on now", () => {
    const told = aPublishedBatch("2027-07-01", { number: 3 });
    const { batches } = withPlan(aPublished({ batches: [told] }), [], { batches: [july] });
    expect(batches).toEqual([aPublishedBatch("2027-07-10", { id: "batch-2027-07-01", number: 3 })]);
    expect(withPlan(undefined, [], { batches: [july] }).batches[0]?.first).toBe(today);
  });

  test("that is no longer planned and not begun is withdrawn, and stays in the list", () => {
    const [begun, ahead] = [aPublishedBatch("2027-06-14"), aPublishedBatch("2027-07-01")];
    const told = aPublished({ batches: [begun, { ...ahead, number: 2 }] });
    expect(withPlan(told, []).batches).toEqual([begun, { ...ahead, number: 2, withdrawn: true }]);
  });

  test("of the past stays as it was told", () => {
    const told = aPublished({ batches: [aPublishedBatch("2027-05-01")] });
    expect(withPlan(told, [], { batches: [july] }).batches.map(({ number }) => number)).toEqual([
      1, 3,
    ]);
  });
});

describe("the day from which shells are kept", () => {
  const shells = (saveFrom: string) => ({
    shells: { eggs: 12, shellG: 60, saveFrom: day(saveFrom) },
  });
  const toldFor = (on: string) => aPublished({ shells: { day: day(on), first: day(early) } });

  test("is told first today", () => {
    expect(withPlan(undefined, [], shells("2027-06-20")).shells).toEqual({
      day: "2027-06-20",
      first: today,
    });
  });

  test("stays once it has come", () => {
    for (const on of ["2027-06-01", today])
      expect(withPlan(toldFor(on), [], shells("2027-06-20")).shells).toEqual(toldFor(on).shells);
    expect(withPlan(toldFor("2027-06-01"), []).shells).toBeDefined();
  });

  test("moves before it has come, and goes where none are needed", () => {
    const next = addDays(today, 3);
    expect(withPlan(toldFor("2027-06-20"), [], shells(next)).shells?.day).toBe(next);
    expect(withPlan(toldFor("2027-06-20"), [], shells("2027-06-20")).shells?.first).toBe(early);
    expect(withPlan(toldFor("2027-06-20"), []).shells).toBeUndefined();
  });
});
