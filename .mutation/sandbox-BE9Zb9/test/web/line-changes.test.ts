// @ts-nocheck
import { expect, test } from "vitest";
import { lineChanges } from "../../src/web/line-changes.js";

test("lines of one text alone are marked, with two lines around them", () => {
  const [theirs, mine] = ["a\nb\nc\nd\ne\nf\ng\n", "a\nb\nc\nd\nE\nf\ng\n"];
  expect(lineChanges(theirs, mine)).toBe("  ...\n  c\n  d\n− e\n+ E\n  f\n  g");
});

test("changes far apart leave out what lies between", () => {
  const middle = Array.from({ length: 9 }, (_, i) => `m${i}`).join("\n");
  expect(lineChanges(`a\n${middle}\nz\n`, `A\n${middle}\nZ\n`)).toBe(
    "− a\n+ A\n  m0\n  m1\n  ...\n  m7\n  m8\n− z\n+ Z",
  );
});
