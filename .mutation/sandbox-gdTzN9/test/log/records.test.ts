// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import {
  dayOfFile,
  futureRecords,
  gardenOn,
  keepsLog,
  unknownBatches,
} from "../../src/log/records.js";
import { aGarden } from "../support/a-garden.js";

const batch = { id: "B1", made: "2027-05-10", volume: "500 mL", left: "120 mL" };
const garden = aGarden({
  stock: { batches: [{ ...batch, left_on: "2027-06-20" }] },
  log: [
    { on: "2027-06-12", planting: "toms", stock: "30 mL" },
    { on: "2027-06-26", planting: "toms", stock: "30 mL" },
  ],
  signs: [{ on: "2027-06-24", planting: "toms", sign: "blossom-end-rot" }],
});

describe("the day a file speaks of", () => {
  test("is the latest of all that it wrote down", () => {
    expect(dayOfFile(garden)).toBe("2027-06-26");
    expect(dayOfFile({ ...garden, log: [] })).toBe("2027-06-24");
    expect(dayOfFile({ ...garden, log: [], signs: [] })).toBe("2027-06-20");
  });

  test("lies well before the season where nothing is written down", () => {
    const fresh = aGarden();
    expect(dayOfFile(fresh)).toBe(addDays(fresh.season.from, -60));
  });
});

describe("the garden on an earlier day", () => {
  test("lacks what was given, seen and measured later", () => {
    const then = gardenOn(garden, day("2027-06-15"));
    expect(then.log.map(({ on }) => on)).toEqual(["2027-06-12"]);
    expect(then.signs).toEqual([]);
    expect(then.stock.batches).toMatchObject([{ id: "B1", leftMl: 500 }]);
    expect(then.stock.batches[0]).not.toHaveProperty("leftOn");
  });

  test("has what was measured by then, and no bottle made later", () => {
    expect(gardenOn(garden, day("2027-06-20")).stock.batches).toMatchObject([{ leftMl: 120 }]);
    expect(gardenOn(garden, day("2027-05-09")).stock.batches).toEqual([]);
  });
});

describe("a batch on an earlier day", () => {
  const volume = "1 L";
  const listed = aGarden({
    stock: {
      batches: [
        {
          id: "B1",
          shells_out: "2027-05-07",
          acid_in: "2027-05-08",
          made: "2027-05-10",
          thrown_away: "2027-07-05",
          volume,
        },
        { id: "B2", acid_in: "2027-06-02", volume },
        { id: "B3", missed: "2027-06-03", volume },
      ],
    },
  });

  test("is as far as it had come", () => {
    const on = (text: string): unknown => {
      const { batches, begun, dropped } = gardenOn(listed, day(text)).stock;
      return [batches, begun, dropped].map((list) => list.map(({ id }) => id).join(" "));
    };
    expect(on("2027-05-06")).toEqual(["", "", ""]);
    expect(on("2027-05-07")).toEqual(["", "B1", ""]);
    expect(on("2027-06-02")).toEqual(["B1", "B2", ""]);
    expect(on("2027-06-03")).toEqual(["B1", "B2", "B3"]);
    expect(gardenOn(listed, day("2027-05-07")).stock.begun[0]).not.toHaveProperty("acidIn");
    expect(gardenOn(listed, day("2027-07-04")).stock.batches[0]).not.toHaveProperty("thrownAway");
  });

  test("counts for the day the file speaks of", () => {
    expect(dayOfFile(listed)).toBe("2027-07-05");
    const { begun, dropped } = listed.stock;
    const without = (stock: object): string =>
      dayOfFile({ ...listed, stock: { ...listed.stock, batches: [], ...stock } });
    expect(without({ dropped: [] })).toBe(begun[0]?.acidIn);
    expect(without({ begun: [] })).toBe(dropped[0]?.on);
  });
});

test("a batch that is not listed is warned of, with what may be meant", () => {
  const volume = "1 L";
  const poured = aGarden({
    stock: {
      batches: [
        { id: "B10", made: "2027-05-10", volume },
        { id: "B20", acid_in: "2027-05-10", volume },
        { id: "lost", missed: "2027-05-10", volume },
      ],
    },
    log: ["B10", "B11", "B20", "lost"].map((batch) => ({ on: "2027-06-12", stock: "9 mL", batch })),
  });
  expect(unknownBatches(poured, undefined)).toMatchObject([
    { code: "batch-unknown", day: "2027-06-12", mend: "did you mean `B10`?" },
    { message: "the log of Sat 12 Jun pours from batch lost, which was never bottled" },
  ]);
});

test("what cannot have happened yet is found with its place", () => {
  expect(futureRecords(garden, day("2027-06-26"))).toEqual([]);
  expect(futureRecords(garden, day("2027-06-23"))).toMatchObject([
    { code: "log-in-future", path: ["log", 1, "on"] },
    { code: "sign-in-future", path: ["signs", 0, "on"] },
  ]);
});

test("an entry for another feed alone keeps no log of calcium", () => {
  const feeds = [{ name: "seaweed", days: ["wed"], rate: "5 mL per L" }];
  const log = [{ on: "2027-06-12", feed: "seaweed" }];
  expect(keepsLog(aGarden({ feeds, log }))).toBe(false);
  expect(keepsLog(garden)).toBe(true);
});
