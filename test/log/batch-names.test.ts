import { describe, expect, test } from "vitest";
import type { Batch, GardenFile } from "../../src/compiled/garden-file.js";
import { day } from "../../src/dates.js";
import {
  batchNamed,
  type DoneToBatch,
  type KnownBatch,
  knownBatches,
} from "../../src/log/batch-names.js";
import type { Published } from "../../src/published/index.js";

const known = (id: string, number: number): KnownBatch => ({
  id,
  number,
  volumeMl: 500,
  shellsOut: day("2027-06-09"),
  acidIn: day("2027-06-10"),
  made: day("2027-06-12"),
});
const plans = [known("batch-2027-06-12", 1), known("batch-2027-07-12", 2)];
const listed = (id: string, planned?: string | number): Batch => ({
  id,
  made: "2027-06-12",
  volume: "500 mL",
  ...(planned === undefined ? {} : { planned }),
});
function idsOf(name: string, ...batches: Batch[]): [string | undefined, string | undefined] {
  const file = { stock: { batches } } as unknown as GardenFile;
  const found = batchNamed(name, file, plans);
  return [found.listed?.id, found.known?.id];
}

describe("the batch of a name", () => {
  test.each(["batch-2027-07-12", "2", "Batch 2", "batch #2", " 2 "])(
    "%j is that of the plan",
    (name) => {
      expect(idsOf(name)).toEqual([undefined, "batch-2027-07-12"]);
    },
  );

  test.each([
    ["2", listed("jar", 2)],
    ["2", listed("jar", "batch-2027-07-12")],
    ["batch-2027-07-12", listed("jar", 2)],
    ["jar", listed("jar", "batch-2027-07-12")],
    ["batch 2", listed("batch-2027-07-12")],
  ])("%j is the one of the file that stands for it, %j", (name, batch) => {
    expect(idsOf(name, listed("B1"), batch)).toEqual([batch.id, "batch-2027-07-12"]);
  });

  test("is the one of the file by its id, whatever number it looks like", () => {
    expect(idsOf("2", listed("2"))).toEqual(["2", undefined]);
  });

  test.each(["9", "Batch 9", "batch-9"])(
    "%j is one of the file that no plan has any more",
    (name) => {
      expect(idsOf(name, listed("B1"), listed("batch-9"))).toEqual(["batch-9", undefined]);
    },
  );

  test("that nothing bears is none", () => {
    expect(idsOf("B9", listed("B1"))).toEqual([undefined, undefined]);
    expect(idsOf("undefined", listed("B1"))).toEqual([undefined, undefined]);
  });
});

test("of plans that draw one id for several batches, the one that fits what was done is meant", () => {
  const made = (on: string): { published: Published } => ({
    published: {
      rounds: [],
      feeds: [],
      batches: [{ ...known("batch-1", 1), first: day("2027-05-01"), made: day(on) }],
    },
  });
  const told = [made("2027-06-13"), made("2027-05-30")];
  const madeOf = (done: DoneToBatch, on: string): string | undefined =>
    knownBatches(told, done, day(on))[0]?.made;
  expect(madeOf("poured", "2027-06-12")).toBe("2027-05-30");
  expect(madeOf("poured", "2027-05-29")).toBe("2027-05-30");
  expect(madeOf("made", "2027-06-12")).toBe("2027-06-13");
  expect(madeOf("made", "2027-05-31")).toBe("2027-05-30");
});
