import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import type { BatchInHand } from "../../src/garden/index.js";
import { checkBatches } from "../../src/stock/ledger-check.js";

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
const found = (more: Partial<BatchInHand>): string[] =>
  checkBatches([{ ...sound, ...more }], today).map((f) => `${f.code} ${f.path.join(".")}`);

describe("batches in hand that cannot be", () => {
  test("a sound batch has no findings, nor has one made and measured today, full, used by today", () => {
    expect(found({})).toEqual([]);
    expect(found({ made: today, leftOn: today, leftMl: 1000, useBy: today })).toEqual([]);
    expect(found({ leftMl: 0 })).toEqual([]);
  });
  test.each([
    ["made in the future", { made: day("2027-06-02") }, "batch-in-future", "made"],
    ["nothing made", { volumeMl: 0, leftMl: 0 }, "batch-volume", "volume"],
    ["less than nothing left", { leftMl: -1 }, "batch-left-negative", "left"],
    ["left that is no number", { leftMl: NaN }, "batch-left-negative", "left"],
    ["more left than made", { leftMl: 1001 }, "batch-left-over-volume", "left"],
    ["use-by before made", { useBy: day("2027-05-19") }, "batch-use-by-before-made", "use_by"],
    ["measured before made", { leftOn: day("2027-05-19") }, "batch-left-on", "left_on"],
    ["measured in the future", { leftOn: day("2027-06-02") }, "batch-left-on", "left_on"],
    ["no strength", { strengthGPerL: 0 }, "batch-strength", "strength"],
  ])("%s", (_, more, code, key) => {
    expect(found(more)).toEqual([`${code} stock.batches.3.${key}`]);
  });
  test("a name used twice is found at the second", () => {
    const second = { ...sound, path: ["stock", "batches", 4] };
    expect(checkBatches([sound, second], today)).toMatchObject([
      { code: "duplicate-batch", path: ["stock", "batches", 4, "id"] },
    ]);
  });
  test("all that is wrong is told at once, each with a mend", () => {
    const findings = checkBatches(
      [{ ...sound, made: day("2027-07-01"), leftMl: 2000, useBy: day("2027-06-02") }],
      today,
    );
    expect(findings.map((f) => f.code)).toEqual([
      "batch-in-future",
      "batch-left-over-volume",
      "batch-use-by-before-made",
    ]);
    for (const f of findings) expect(f.mend).not.toBe("");
  });
});
