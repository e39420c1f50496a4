// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { isAsSeen, standingOf, type Told } from "../../src/ticks/standing.js";
import type { Ticked } from "../../src/ticks/tick.js";
import { aGarden } from "../support/a-garden.js";

const planting = (id: string): object => ({
  ...{ id, crop: "tomato", plants: 3, transplanted: "2027-05-20", water: "2 L per plant" },
});
const beds = [
  { id: "south", name: "South bed", plantings: [planting("toms"), planting("more")] },
  { id: "north", name: "North bed", plantings: [planting("late")] },
];
const onSat = "2027-06-12";
const mixOf = (bed: string): Told["rounds"][number]["mixes"][number] => ({
  ...{ bed, route: "drench", fed: [], pours: [] },
});
const told: Told = {
  rounds: [onSat, "2027-06-26"].map((one) => ({
    day: day(one),
    first: day("2027-05-01"),
    mixes: [mixOf("south"), mixOf("north")],
  })),
  feeds: [{ day: day(onSat), first: day("2027-05-01"), feed: "nettle" }],
  batches: [
    {
      ...{ id: "batch-2", number: 2, first: day("2027-05-01"), volumeMl: 1000 },
      ...{ shellsOut: day("2027-05-02"), acidIn: day("2027-05-04"), made: day("2027-05-20") },
    },
  ],
};

function roundOf(...ids: string[]): Ticked {
  return { kind: "round", day: day(onSat), beds: ids, entries: [] };
}

function standing(what: Ticked, differs: object = {}): ReturnType<typeof standingOf> {
  const feeds = [{ name: "nettle", every: "14 days", rate: "5 mL per L" }];
  return standingOf(aGarden({ beds, feeds, ...differs }), what, told);
}

function logged(what: Ticked, ...log: object[]): ReturnType<typeof standingOf> {
  return standing(what, { log: log.map((entry) => ({ on: onSat, ...entry })) });
}

describe("what is told of a round", () => {
  test.each<[object[], string | undefined]>([
    [[], undefined],
    [
      [{ planting: "toms", stock: "30 mL", batch: "B1" }],
      "given on Sat 12 Jun, 30 mL from batch B1",
    ],
    [
      [
        { planting: "toms", stock: "30 mL" },
        { planting: "more", stock: "12.5 mL" },
      ],
      "given on Sat 12 Jun, 42.5 mL",
    ],
    [[{ on: "2027-06-13", round: onSat, bed: "south" }], "given on Sun 13 Jun"],
    [[{ on: "2027-06-14", bed: "south" }], "given on Mon 14 Jun"],
    [[{ missed: true }], "missed"],
    [[{ on: "2027-06-21", bed: "south" }], undefined],
    [[{ round: "2027-06-26", bed: "south" }], undefined],
    [[{ feed: "nettle" }], undefined],
  ])("%j: %s", (log, words) => {
    expect(logged(roundOf("south"), ...log).told).toBe(words);
  });

  test("beds of which the file says different things are named", () => {
    const log = [
      { planting: "toms", stock: "30 mL" },
      { planting: "late", missed: true },
    ];
    expect(logged(roundOf("south", "north"), ...log).told).toBe(
      "South bed: given on Sat 12 Jun, 30 mL; North bed: missed",
    );
  });

  test("another feed stands in the place of a bed", () => {
    expect(logged(roundOf("feed:nettle"), { feed: "nettle" }).told).toBe("given on Sat 12 Jun");
  });
});

describe("a tick finds the thing as its page showed it", () => {
  const tick = (what: Ticked, seen: string): Parameters<typeof isAsSeen>[0] => ({
    ...{ id: "", seen, what },
  });
  const page = logged(roundOf("south", "north")).seen;

  test("while another bed of the round was ticked, and another round", () => {
    const now = logged(
      roundOf("south"),
      { planting: "late", stock: "9 mL" },
      { on: "2027-06-26", planting: "toms" },
    );
    expect(isAsSeen(tick(roundOf("south"), page), now)).toBe(true);
  });

  test("though the page showed another bed of it as done", () => {
    const inPart = logged(roundOf("south", "north"), { planting: "late", stock: "9 mL" }).seen;
    const now = logged(roundOf("south"), { planting: "late", stock: "9 mL" });
    expect(isAsSeen(tick(roundOf("south"), inPart), now)).toBe(true);
  });

  test.each([{ planting: "toms", stock: "30 mL" }, { missed: true }, { bed: "south" }])(
    "but not after %j",
    (entry) => {
      const now = logged(roundOf("south"), entry);
      expect(isAsSeen(tick(roundOf("south"), page), now)).toBe(false);
    },
  );

  test("but not where what it showed was corrected", () => {
    const before = logged(roundOf("south"), { planting: "toms", stock: "30 mL" });
    const now = logged(roundOf("south"), { planting: "toms", stock: "31 mL" });
    expect(isAsSeen(tick(roundOf("south"), before.seen), now)).toBe(false);
    expect(isAsSeen(tick(roundOf("south"), before.seen), before)).toBe(true);
  });
});

describe("a batch", () => {
  const listed = (batch: object): object => ({ stock: { batches: [{ volume: "1 L", ...batch }] } });
  const step = (key: "made" | "acid_in" | "missed", batch = "batch-2"): Ticked => ({
    ...{ kind: "step", batch, step: key },
  });

  test.each<[object, string]>([
    [{ id: "batch-2" }, "batch-2"],
    [{ id: "spring", planned: 2 }, "batch-2"],
    [{ id: "spring", planned: "batch-2" }, "batch-2"],
    [{ id: "spring" }, "spring"],
  ])("%j is found as %s", (names, batch) => {
    const garden = listed({ ...names, made: "2027-05-21", volume: "0.9 L" });
    expect(standing(step("made", batch), garden).told).toBe("bottled on Fri 21 May, 900 mL");
  });

  test("that was given up is bottled no more, and the other way round", () => {
    const given = listed({ id: "batch-2", missed: "2027-05-22" });
    expect(standing(step("made"), given).told).toBe("given up on Sat 22 May");
    const made = listed({ id: "batch-2", made: "2027-05-21" });
    expect(standing(step("missed"), made).seen).not.toBe("-");
  });

  test("has each step by itself", () => {
    const made = listed({ id: "batch-2", made: "2027-05-21" });
    expect(standing(step("acid_in"), made)).toEqual({ seen: "-" });
  });

  test("of another volume stands otherwise", () => {
    const [one, other] = ["1 L", "0.9 L"].map((volume) =>
      standing(step("made"), listed({ id: "batch-2", made: "2027-05-21", volume })),
    );
    expect(one?.seen).not.toBe(other?.seen);
  });
});

test("a sign and a stage tell the day they were seen", () => {
  const sign: Ticked = { kind: "sign", planting: "toms", sign: "blossom-end-rot" };
  const stage: Ticked = { kind: "stage", planting: "toms", stage: "flowering" };
  expect(standing(sign)).toEqual({ seen: "-" });
  expect(standing(stage)).toEqual({ seen: "-" });
  const signs = [{ on: "2027-07-03", planting: "toms", sign: "Blossom end rot" }];
  expect(standing(sign, { signs }).told).toBe("seen on Sat 3 Jul");
  const [south, north] = beds;
  const seen = [{ stage: "flowering", on: onSat }];
  const withSeen = [{ ...south, plantings: [{ ...planting("toms"), seen }] }, north];
  expect(standing(stage, { beds: withSeen }).told).toBe("seen on Sat 12 Jun");
});
