import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import { routes } from "../../src/garden/garden.js";
import { mended } from "../../src/legible.js";
import type { Published } from "../../src/published/published.js";
import { isPublished, readRecord, recordLines } from "../../src/published/record.js";
import { aPublished, aPublishedBatch, aPublishedRound } from "../support/a-published.js";

const aDay = fc.integer({ min: -30_000, max: 60_000 }).map((n) => addDays(day("2027-01-01"), n));
const text = fc.string({ minLength: 1, unit: "binary" }).map(mended);
const amount = fc.double({ min: 0, max: 1e8, noNaN: true }).map((n) => n + 0);
const told = { day: aDay, first: aDay };
const maybe = <T>(key: string, of: fc.Arbitrary<T>) =>
  fc.option(of, { nil: undefined }).map((one) => (one === undefined ? {} : { [key]: one }));

const mix = fc.record({
  bed: text,
  route: fc.constantFrom(...routes),
  fed: fc.array(fc.record({ planting: text, crop: text, waterL: amount }), { maxLength: 3 }),
  pours: fc.array(
    fc.tuple(fc.record({ ml: amount }), maybe("batch", text)).map(([a, b]) => ({ ...a, ...b })),
    { maxLength: 2 },
  ),
});
const batch = fc
  .tuple(
    fc.record({
      id: text,
      number: fc.maxSafeNat(),
      first: aDay,
      volumeMl: amount,
      shellsOut: aDay,
      acidIn: aDay,
      made: aDay,
    }),
    maybe("withdrawn", fc.constant(true as const)),
  )
  .map(([a, b]) => ({ ...a, ...b }));
const moved = fc
  .tuple(
    fc.record({
      from: aDay,
      harm: fc.oneof(
        fc.record({ kind: fc.constant("rain" as const), on: aDay, mm: amount }),
        fc.record({ kind: fc.constant("heat" as const), on: aDay, maxC: amount, limitC: amount }),
      ),
    }),
    maybe("part", fc.constant(true as const)),
  )
  .map(([a, b]) => ({ ...a, ...b }));
const round = fc
  .tuple(fc.record({ ...told, mixes: fc.array(mix, { maxLength: 2 }) }), maybe("moved", moved))
  .map(([a, b]) => ({ ...a, ...b }));
const published: fc.Arbitrary<Published> = fc
  .tuple(
    fc.record({
      rounds: fc.array(round, { maxLength: 4 }),
      feeds: fc.array(fc.record({ ...told, feed: text }), { maxLength: 3 }),
      batches: fc.uniqueArray(batch, { maxLength: 3, selector: ({ id }) => id }),
    }),
    maybe("shells", fc.record(told)),
  )
  .map(([a, b]) => ({ ...a, ...b }));

/** As text keeps it: a negative zero has no sign. */
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

test("what is written is read again as it was, a line each", () => {
  fc.assert(
    fc.property(published, (state) => {
      const lines = recordLines(state);
      const { rounds, feeds, batches, shells } = state;
      const count = rounds.length + feeds.length + batches.length + (shells === undefined ? 0 : 1);
      expect(lines).toHaveLength(count);
      for (const line of lines) expect(line.text).not.toMatch(/[\r\n]/);
      expect(plain(readRecord(lines))).toEqual(plain(state));
      expect(isPublished(plain(state))).toBe(true);
    }),
  );
});

describe("a damaged line", () => {
  const rain = { kind: "rain", on: "2027-06-04", mm: 20 };
  const state = aPublished({
    rounds: [aPublishedRound("2027-06-05")],
    feeds: [{ feed: "nettle", day: day("2027-06-06"), first: day("2027-03-01") }],
    batches: [aPublishedBatch("2027-06-01")],
    shells: { day: day("2027-04-01"), first: day("2027-03-01") },
  });
  const lines = recordLines(state);

  test("is seen, wherever it is cut off", () => {
    for (const [i, line] of lines.entries())
      for (let length = 0; length < line.text.length; length++) {
        const cut = lines.with(i, { ...line, text: line.text.slice(0, length) });
        expect(readRecord(cut)).toBeUndefined();
      }
  });

  test("is seen where a value that it must have is gone", () => {
    for (const [i, line] of lines.entries())
      for (const key of Object.keys(JSON.parse(line.text) as object)) {
        const rest = { ...(JSON.parse(line.text) as object), [key]: undefined };
        const without = lines.with(i, { ...line, text: JSON.stringify(rest) });
        expect({ key, read: readRecord(without) }).toEqual({ key, read: undefined });
      }
  });

  test("is seen where a batch is told of twice", () => {
    const twice = { ...state, batches: [...state.batches, ...state.batches] };
    expect(readRecord(recordLines(twice))).toBeUndefined();
    expect(isPublished(plain(twice))).toBe(false);
  });

  test.each([
    ["a day that is none", "round", { day: "2027-02-30" }],
    ["mixes that are no list", "round", { mixes: {} }],
    ["another route", "round", { mixes: [{ bed: "b", route: "air", fed: [], pours: [] }] }],
    [
      "an amount below nothing",
      "round",
      { mixes: [{ bed: "b", route: "drench", fed: [], pours: [{ ml: -1 }] }] },
    ],
    ["a move from nowhere", "round", { moved: { harm: rain } }],
    [
      "a harm that is none",
      "round",
      { moved: { from: "2027-06-04", harm: { ...rain, kind: "hail" } } },
    ],
    [
      "rain without an amount",
      "round",
      { moved: { from: "2027-06-04", harm: { ...rain, mm: "20" } } },
    ],
    ["a part that is none", "round", { moved: { from: "2027-06-04", harm: rain, part: false } }],
    ["a number that is not whole", "batch", { number: 1.5 }],
    ["a withdrawal that is none", "batch", { withdrawn: false }],
    ["an empty name", "feed", { feed: "" }],
  ] as const)("is seen where it has %s", (_, kind, differs) => {
    const wrong = lines.map((line) =>
      line.kind === kind
        ? { kind, text: JSON.stringify({ ...(JSON.parse(line.text) as object), ...differs }) }
        : line,
    );
    expect(readRecord(wrong)).toBeUndefined();
  });
});

test.each([null, [], "x", {}, { rounds: [], feeds: [] }, { rounds: [1], feeds: [], batches: [] }])(
  "%j is no published state",
  (value) => {
    expect(isPublished(value)).toBe(false);
  },
);
