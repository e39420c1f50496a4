// @ts-nocheck
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  anchorAt,
  fontPx,
  type Label,
  roomFrom,
} from "../../../src/outputs/picture/thinned-labels.js";
import { widthEm } from "../../../src/outputs/text-width.js";

const label = (share: number, first = false): Label => {
  return { text: "28", share, anchor: anchorAt("28", share), first, kind: "strong" };
};
const days = fc
  .uniqueArray(fc.integer({ min: 0, max: 244 }), { minLength: 1, maxLength: 40 })
  .map((list) => list.sort((a, b) => a - b).map((n) => label((n + 0.5) / 245)));

test("numbers never run into each other, and there are as many as fit or more with more room", () => {
  fc.assert(
    fc.property(days, (labels) => {
      let before = 0;
      for (const plotPx of [300, 500, 800, 1600]) {
        const from = roomFrom(labels, { kind: "file", plotPx });
        const shown = labels.filter((_, i) => from[i] !== undefined);
        const ends = shown.map(({ text, share, anchor }) => {
          const width = widthEm(text) * fontPx;
          const start = share * plotPx - { start: 0, middle: width / 2, end: width }[anchor];
          return [start, start + width] as const;
        });
        for (const [i, [start, end]] of ends.entries()) {
          expect(start).toBeGreaterThanOrEqual(ends[i - 1]?.[1] ?? -0.5);
          expect(end).toBeLessThanOrEqual(plotPx + 0.5);
        }
        expect(shown.length).toBeGreaterThanOrEqual(before);
        before = shown.length;
      }
    }),
    { seed: 12, numRuns: 100 },
  );
});

test("the next round's number goes before its neighbours", () => {
  const close = [label(0.5), label(0.51, true), label(0.52)];
  expect(roomFrom(close, { kind: "file", plotPx: 300 })).toEqual([undefined, 0, undefined]);
});

test("a number left out on a narrow screen comes where there is room", () => {
  const [first, second] = roomFrom([label(0.5), label(0.55)], { kind: "page" });
  expect(first).toBe(0);
  expect(second).toBeGreaterThan(0);
});
