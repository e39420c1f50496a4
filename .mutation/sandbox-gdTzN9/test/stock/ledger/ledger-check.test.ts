// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../../src/dates.js";
import type { BatchInHand } from "../../../src/garden/garden.js";
import { checkBatches } from "../../../src/stock/ledger/ledger-log.js";

const today = day("2027-06-01");
const sound: BatchInHand = {
  id: "B1",
  made: day("2027-05-20"),
  volumeMl: 1000,
  leftMl: 600,
  acid: "citric",
  keep: "fridge",
  path: ["stock", "batches", 3],
};
const listed = (
  differs: Partial<Parameters<typeof checkBatches>[0]>,
): Parameters<typeof checkBatches>[0] => ({ batches: [], begun: [], dropped: [], ...differs });
const found = (more: Partial<BatchInHand>): string[] =>
  checkBatches(listed({ batches: [{ ...sound, ...more }] }), today).map(
    (f) => `${f.code} ${f.path.join(".")}`,
  );

describe("batches in hand that cannot be", () => {
  test("a sound batch has no findings, nor has one made and measured today, full, used by today", () => {
    expect(found({})).toEqual([]);
    expect(found({ made: today, leftOn: today, leftMl: 1000, useBy: today })).toEqual([]);
    expect(found({ leftMl: 0 })).toEqual([]);
  });
  test.each([
    ["made in the future", { made: day("2027-06-02") }, "batch-in-future", "made"],
    [
      "thrown away in the future",
      { thrownAway: day("2027-06-02") },
      "batch-in-future",
      "thrown_away",
    ],
    ["measured before made", { leftOn: day("2027-05-19") }, "batch-left-on", "left_on"],
    ["measured in the future", { leftOn: day("2027-06-02") }, "batch-left-on", "left_on"],
  ])("%s", (_, more, code, key) => {
    expect(found(more)).toEqual([`${code} stock.batches.3.${key}`]);
  });
  test("all that is wrong is told at once, each with a mend", () => {
    const wrong = { ...sound, made: day("2027-07-01"), leftOn: day("2027-06-02") };
    const batches = [wrong, sound, { ...wrong, path: ["stock", "batches", 5] }];
    const findings = checkBatches(listed({ batches }), today);
    expect(findings.map((f) => `${f.code} ${f.path[2]}`)).toEqual([
      "batch-in-future 3",
      "batch-in-future 5",
      "batch-left-on 3",
      "batch-left-on 5",
    ]);
    for (const f of findings) expect(f.mend).not.toBe("");
  });
});

test("a batch under way, or given up, on a day to come is found with its place", () => {
  const path = ["stock", "batches", 0];
  const tomorrow = day("2027-06-02");
  const { volumeMl, acid, keep } = sound;
  const found = checkBatches(
    listed({
      begun: [{ id: "B2", shellsOut: today, acidIn: tomorrow, volumeMl, acid, keep, path }],
      dropped: [
        { id: "B3", on: tomorrow, how: "missed", path },
        { id: "B4", on: tomorrow, how: "thrown-away", path },
        { id: "B5", on: today, how: "missed", path },
      ],
    }),
    today,
  );
  expect(found.map((f) => `${f.code} ${f.path.at(-1)}`)).toEqual([
    "batch-in-future acid_in",
    "batch-in-future missed",
    "batch-in-future thrown_away",
  ]);
});
