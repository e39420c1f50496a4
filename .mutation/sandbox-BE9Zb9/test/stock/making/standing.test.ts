// @ts-nocheck
import { describe, expect, test } from "vitest";
import { type Day, day } from "../../../src/dates.js";
import { nextNumbers, standingBatches } from "../../../src/stock/making/standing.js";
import { aGarden, type GardenDiffers } from "../../support/a-garden.js";
import { aPublished, aPublishedBatch } from "../../support/a-published.js";

/** Shells out on 1 June, acid in on 3 June, bottled on 5 June. */
const june = aPublishedBatch("2027-06-05");
const way = { dryDays: 2, reactionDays: 2 };

function standing(
  today: string,
  differs: GardenDiffers = {},
  told: readonly ReturnType<typeof aPublishedBatch>[] = [june],
) {
  return standingBatches(aGarden(differs), aPublished({ batches: told }), way, day(today));
}
const listed = (batch: object): GardenDiffers => ({
  stock: { batches: [{ volume: "1 L", ...batch }] },
});
const away = (from: string, to: string): GardenDiffers => ({ feeding: { away: [{ from, to }] } });

test("nothing published and nothing listed: nothing stands", () => {
  const nothing = { taken: [], underWay: [], toBegin: [], guessed: [] };
  expect(standingBatches(aGarden(), undefined, way, day("2027-06-01"))).toMatchObject(nothing);
});

describe("a published batch of which the garden file is silent", () => {
  const inDays = { startOn: "2027-06-01", acidOn: "2027-06-03", readyOn: "2027-06-05" };

  test("is to be begun until its first day", () => {
    expect(standing("2027-05-31")).toMatchObject({ underWay: [], toBegin: [june] });
  });

  test("comes by its day, whatever its number", () => {
    const first = { ...aPublishedBatch("2027-07-05"), number: 1 };
    const second = { ...june, number: 2 };
    expect(standing("2027-05-01", {}, [first, second]).toBegin).toEqual([second, first]);
  });

  test.each(["2027-06-01", "2027-06-02", "2027-06-04", "2027-06-05"])(
    "is under way on %s, on its published days",
    (today) => {
      const { taken, underWay, toBegin } = standing(today);
      expect(underWay).toEqual([{ id: june.id, number: 1, volumeMl: 1000, ...inDays }]);
      expect([taken, toBegin]).toEqual([[], []]);
    },
  );

  test("is in its bottles from the day after it was to be bottled", () => {
    expect(standing("2027-06-06")).toMatchObject({
      taken: [{ id: june.id, made: "2027-06-05", volumeMl: 1000, leftMl: 1000, strained: "mesh" }],
      underWay: [],
      toBegin: [],
    });
  });

  test("is not begun where silence does not count, save on the day itself", () => {
    const silent = { unlogged: "not-given" };
    expect(standing("2027-06-01", silent).underWay).toHaveLength(1);
    expect(standing("2027-06-02", silent)).toMatchObject({ underWay: [], toBegin: [june] });
  });

  test("is not begun where nobody was there on its first day", () => {
    expect(standing("2027-06-02", away("2027-06-01", "2027-06-01"))).toMatchObject({
      underWay: [],
      toBegin: [june],
    });
  });

  test("goes on late where nobody is there for a later step", () => {
    const { underWay } = standing("2027-06-04", away("2027-06-03", "2027-06-06"));
    expect(underWay).toMatchObject([
      { startOn: "2027-06-01", acidOn: "2027-06-07", readyOn: "2027-06-09" },
    ]);
  });

  test("that was withdrawn is neither begun nor to be begun", () => {
    const withdrawn = { ...june, withdrawn: true as const };
    expect(standing("2027-06-03", {}, [withdrawn])).toMatchObject({ underWay: [], toBegin: [] });
  });
});

describe("a listed batch that is begun", () => {
  const begun = listed({ id: june.id, shells_out: "2027-06-02" });

  test("late goes on late, by the drying and reacting it needs, under its number", () => {
    expect(standing("2027-06-02", begun).underWay).toMatchObject([
      {
        id: june.id,
        number: 1,
        startOn: "2027-06-02",
        acidOn: "2027-06-04",
        readyOn: "2027-06-06",
      },
    ]);
    expect(standing("2027-06-02", begun).toBegin).toEqual([]);
  });

  test("early keeps the published days to come", () => {
    const early = listed({ id: june.id, shells_out: "2027-05-30" });
    expect(standing("2027-05-31", early).underWay).toMatchObject([
      { startOn: "2027-05-30", acidOn: "2027-06-03", readyOn: "2027-06-05" },
    ]);
  });

  test("under another name is the published one where it says so, by id or by number", () => {
    for (const planned of [june.id, "1"]) {
      const own = listed({ id: "jar", planned, shells_out: "2027-06-01" });
      const { underWay, toBegin } = standing("2027-06-02", own);
      expect(underWay).toMatchObject([{ id: "jar", number: 1 }]);
      expect(toBegin).toEqual([]);
    }
  });

  test("and was never published has a number that none had", () => {
    const own = listed({ id: "jar", shells_out: "2027-05-20" });
    const { underWay, toBegin } = standing("2027-05-20", own);
    expect(underWay).toMatchObject([{ id: "jar", number: 2, acidOn: "2027-05-22" }]);
    expect(toBegin).toEqual([june]);
  });
});

describe("a listed batch that is bottled", () => {
  const bottled = (made: string, differs: object = {}) => listed({ id: "B1", made, ...differs });

  test.each(["2027-05-22", "2027-06-05", "2027-06-19"])(
    "on %s stands for the published one, and that is a guess",
    (made) => {
      expect(standing("2027-06-19", bottled(made))).toMatchObject({
        taken: [],
        underWay: [],
        toBegin: [],
        guessed: [{ id: "B1", published: june }],
      });
    },
  );

  test.each(["2027-05-21", "2027-06-20"])("on %s is too far from it", (made) => {
    const { taken, guessed } = standing("2027-06-20", bottled(made));
    expect(guessed).toEqual([]);
    expect(taken).toMatchObject([{ id: june.id }]);
  });

  test("before the batch was published is another one", () => {
    const late = { ...june, first: day("2027-06-01") };
    expect(standing("2027-06-10", bottled("2027-06-01"), [late]).guessed).toEqual([]);
    expect(standing("2027-06-10", bottled("2027-06-02"), [late]).guessed).toHaveLength(1);
  });

  test("stands for the one it names, whatever its day, and that is no guess", () => {
    const other = aPublishedBatch("2027-07-05", { number: 2 });
    const { guessed, toBegin, taken } = standing(
      "2027-06-10",
      bottled("2027-06-04", { planned: other.id }),
      [june, other],
    );
    expect([guessed, toBegin]).toEqual([[], []]);
    expect(taken).toMatchObject([{ id: june.id }]);
  });

  test("stands for the nearest of two, one listed batch each", () => {
    const other = aPublishedBatch("2027-06-12", { number: 2 });
    const two = {
      stock: {
        batches: [
          { id: "B1", made: "2027-06-10", volume: "1 L" },
          { id: "B2", made: "2027-06-11", volume: "1 L" },
        ],
      },
    };
    const { guessed } = standing("2027-06-20", two, [june, other]);
    expect(guessed.map(({ id, published }) => [id, published.number])).toEqual([
      ["B1", 2],
      ["B2", 1],
    ]);
  });

  test("under the id of the published one is that one, and no guess", () => {
    const { taken, guessed } = standing("2027-06-10", listed({ id: june.id, made: "2027-06-07" }));
    expect([taken, guessed]).toEqual([[], []]);
  });
});

test.each([
  ["never begun", { missed: "2027-06-01" }],
  ["thrown away", { shells_out: "2027-06-01", thrown_away: "2027-06-02" }],
])("a published batch that was %s is neither under way nor to be begun", (_, batch) => {
  expect(standing("2027-06-03", listed({ id: june.id, ...batch }))).toMatchObject({
    taken: [],
    underWay: [],
    toBegin: [],
  });
});

test("numbers go on after the highest that was ever drawn", () => {
  const draw = nextNumbers([{ number: 4 }, { number: 2 }]);
  expect([draw(), draw()]).toEqual([5, 6]);
  expect(nextNumbers([])()).toBe(1);
});

test("several under way come in the order of their bottling", () => {
  const later: Day = day("2027-06-08");
  const two = [aPublishedBatch(later, { number: 2, shellsOut: day("2027-06-01") }), june];
  expect(standing("2027-06-04", {}, two).underWay.map(({ number }) => number)).toEqual([1, 2]);
});

describe("a bottle", () => {
  test("can be poured from on the days on which it was there, as far as is known", () => {
    const { canPour } = standing("2027-06-30", {
      stock: {
        batches: [
          {
            id: "own",
            planned: june.id,
            made: "2027-06-20",
            thrown_away: "2027-06-25",
            volume: "1 L",
          },
          { id: "never", missed: "2027-06-10", volume: "1 L" },
        ],
      },
    });
    const days = ["2027-06-19", "2027-06-20", "2027-06-25", "2027-06-26"].map((one) => day(one));
    for (const id of ["own", june.id])
      expect(days.map((one) => canPour(id, one))).toEqual([false, true, true, false]);
    expect(days.some((one) => canPour("never", one))).toBe(false);
    expect(canPour("a bottle that nobody told of", day("2027-06-19"))).toBe(true);
  });
});
