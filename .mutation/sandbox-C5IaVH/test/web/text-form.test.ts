// @ts-nocheck
import fc from "fast-check";
import { expect, test } from "vitest";
import { inFormOf, shownText } from "../../src/web/text-form.js";

test("a file that was only looked at keeps its bytes, whatever its line ends", () => {
  const raw = fc.array(fc.constantFrom("a", "b: 1", "", "\n", "\r\n", "\r"), { maxLength: 20 });
  fc.assert(
    fc.property(raw, fc.boolean(), (parts, isMarked) => {
      const text = (isMarked ? "\ufeff" : "") + parts.join("");
      expect(inFormOf(text, shownText(text))).toBe(text);
    }),
    { seed: 14, numRuns: 2000 },
  );
});

test("what is saved reads as what was written", () => {
  const lines = fc.array(fc.constantFrom("a", "b: 1", ""), { maxLength: 12 });
  const end = fc.constantFrom("\n", "\r\n", "\r");
  fc.assert(
    fc.property(lines, end, lines, (before, lineEnd, after) => {
      const text = after.join("\n");
      expect(shownText(inFormOf(before.join(lineEnd), text))).toBe(text);
    }),
    { seed: 14, numRuns: 2000 },
  );
});

test("new lines end as most lines of the file do, the others as they did", () => {
  const raw = "\ufeffa: 1\r\nb: 2\nc: 3\r\n";
  expect(inFormOf(raw, "a: 1\nb: 2\nnew: 5\nc: 3\n")).toBe(
    "\ufeffa: 1\r\nb: 2\nnew: 5\r\nc: 3\r\n",
  );
  expect(inFormOf(raw, "a: 1\nb: 2\nc: 3\nd: 4")).toBe("\ufeffa: 1\r\nb: 2\nc: 3\r\nd: 4");
});
