import fc from "fast-check";
import { expect, test } from "vitest";
import { secondText } from "../src/second.js";

test("a moment is told to the second that it lies in, whatever was asked before", () => {
  expect(secondText(Date.parse("2027-06-01T05:59:59.999Z"))).toBe("2027-06-01T05:59:59Z");
  expect(secondText(Date.parse("2027-06-01T06:00:00.000Z"))).toBe("2027-06-01T06:00:00Z");
  const ms = fc.integer({ min: 0, max: Date.parse("2200-01-01") });
  fc.assert(
    fc.property(fc.array(ms), (moments) => {
      for (const at of moments)
        expect(secondText(at)).toBe(`${new Date(at).toISOString().slice(0, 19)}Z`);
    }),
  );
});
