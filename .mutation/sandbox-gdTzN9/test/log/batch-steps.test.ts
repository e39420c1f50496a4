// @ts-nocheck
import { describe, expect, test } from "vitest";
import type { Batch } from "../../src/compiled/garden-file.js";
import { day } from "../../src/dates.js";
import { bottling, type StepDone, stepEdits, undoEdit } from "../../src/log/batch-steps.js";

const known = {
  id: "batch-2027-06-12",
  number: 1,
  volumeMl: 500,
  shellsOut: day("2027-06-09"),
  acidIn: day("2027-06-10"),
  made: day("2027-06-12"),
};
const done = (step: StepDone["step"], on: string, more: Partial<StepDone> = {}): StepDone => ({
  step,
  on: day(on),
  isDayNamed: false,
  ...more,
});
const listed = (days: Partial<Batch>): Batch => ({ id: "B1", volume: "500 mL", ...days });

describe("a step of a batch that only the plan has", () => {
  test("lists it, with the planned days of the steps before that lie before", () => {
    expect(stepEdits(known.id, { known }, done("made", "2027-06-11"), "metric")?.edits).toEqual([
      {
        kind: "list-batch",
        batch: {
          id: known.id,
          shells_out: "2027-06-09",
          acid_in: "2027-06-10",
          made: "2027-06-11",
          volume: "500 mL",
        },
      },
    ]);
    expect(stepEdits(known.id, { known }, done("acid_in", "2027-06-08"), "metric")?.edits).toEqual([
      {
        kind: "list-batch",
        batch: { id: known.id, acid_in: "2027-06-08", volume: "500 mL" },
      },
    ]);
  });

  test("has the volume that it really makes", () => {
    const step = done("made", "2027-06-12", { volume: "480 mL" });
    expect(stepEdits(known.id, { known }, step, "metric")?.edits).toMatchObject([
      { batch: { volume: "480 mL" } },
    ]);
  });

  test("of a batch that nobody knows needs a volume", () => {
    expect(stepEdits("mine", {}, done("made", "2027-06-12"), "metric")).toBeUndefined();
  });
});

test("a step that is written is written no more, unless its day is named", () => {
  const batch = { listed: listed({ made: "2027-06-12" }) };
  expect(stepEdits("B1", batch, done("made", "2027-06-14"), "metric")).toEqual({
    id: "B1",
    edits: [],
    writtenOn: "2027-06-12",
  });
  const named = done("made", "2027-06-14", { isDayNamed: true });
  expect(stepEdits("B1", batch, named, "metric")?.edits).toMatchObject([
    { key: "made", value: "2027-06-14" },
  ]);
});

describe("pouring", () => {
  test("from a batch of the plan lists its bottle, made by then", () => {
    const made = (on: string): unknown => bottling({ known }, day(on), 1, "metric").edits;
    expect(made("2027-06-20")).toMatchObject([{ batch: { made: "2027-06-12" } }]);
    expect(made("2027-06-11")).toMatchObject([{ batch: { made: "2027-06-11" } }]);
  });

  test("before the acid can be done makes no bottle", () => {
    const on = day("2027-06-11");
    const tooSoon = { edits: [], notBefore: "2027-06-12" };
    expect(bottling({ known }, on, 2, "metric")).toEqual(tooSoon);
    expect(bottling({ listed: listed({ acid_in: "2027-06-10" }) }, on, 2, "metric")).toEqual(
      tooSoon,
    );
    const early = listed({ acid_in: "2027-06-09" });
    expect(bottling({ listed: early, known }, on, 2, "metric").edits).toMatchObject([
      { value: on },
    ]);
  });

  test("from one under way is its bottling, and from a bottle is no news", () => {
    const begun = listed({ acid_in: "2027-06-10" });
    expect(bottling({ listed: begun, known }, day("2027-06-20"), 2, "metric").edits).toEqual([
      { kind: "set-in-batch", id: "B1", key: "made", value: "2027-06-12" },
    ]);
    expect(
      bottling({ listed: listed({ made: "2027-06-12" }) }, day("2027-06-20"), 2, "metric").edits,
    ).toEqual([]);
    expect(
      bottling({ listed: listed({ missed: "2027-06-12" }) }, day("2027-06-20"), 2, "metric").edits,
    ).toEqual([]);
    expect(bottling({}, day("2027-06-20"), 2, "metric").edits).toEqual([]);
  });
});

test("the last step is taken back, and the batch with its only one", () => {
  expect(undoEdit(listed({ acid_in: "2027-06-10", thrown_away: "2027-06-11" }))).toEqual({
    edit: { kind: "set-in-batch", id: "B1", key: "thrown_away" },
    step: "thrown_away",
  });
  expect(undoEdit(listed({ made: "2027-06-12" })).edit).toEqual({ kind: "unlist-batch", id: "B1" });
});
